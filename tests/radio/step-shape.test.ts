import { describe, expect, test } from "vitest";
import { brickWall, spectralOverlapDb } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile, receiverSelectivity, stepShape } from "../../src/radio/index.js";

describe("staircases", () => {
  test("a staircase is what its drawing says", () => {
    expect(
      stepShape([
        [0.5, 0],
        [1.5, -11],
        [4, -41],
      ]).points,
    ).toEqual([
      [-4, -41],
      [-1.5, -41],
      [-1.5, -11],
      [-0.5, -11],
      [-0.5, 0],
      [0.5, 0],
      [0.5, -11],
      [1.5, -11],
      [1.5, -41],
      [4, -41],
    ]);
  });
  test("selectivity is the co-channel C/I less each offset's: Bluetooth RF.TS p34 Table 4.6", () => {
    const table = [
      [0.5, 11],
      [1.5, 0],
      [2.5, -30],
      [100, -40],
    ] as const;
    const steps = [
      [0.5, 0],
      [1.5, -11],
      [2.5, -41],
      [100, -51],
    ] as const;
    expect(receiverSelectivity(table)).toEqual(stepShape(steps));
    expect(findProfile("raster-13").selectivity.value).toEqual(stepShape(steps));
  });
  test("a 1 MHz interferer one, two and five channels off is heard at the table's rejection", () => {
    const { selectivity } = findProfile("hop-79");
    for (const [offsetMhz, rejectionDb] of [
      [0, 0],
      [1, -11],
      [2, -41],
      [5, -51],
    ] as const)
      expect(spectralOverlapDb(brickWall(1), selectivity.value, offsetMhz)).toBeCloseTo(rejectionDb, 9);
  });
  test("throws", () => {
    const bad = [
      [],
      [[0, 0]],
      [[1, NaN]],
      [[Infinity, 0]],
      [
        [1, 0],
        [1, -3],
      ],
      [
        [2, 0],
        [1, -3],
      ],
    ];
    for (const steps of bad) expect(() => stepShape(steps as [number, number][])).toThrow(ArgumentError);
  });
});
