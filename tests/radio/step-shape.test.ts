import { describe, expect, test } from "vitest";
import { brickWall, spectralOverlapDb } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile, receiverSelectivity, stepShape } from "../../src/radio/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";

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
  test("the GFSK profiles' C/I is the BR row of the standard's table, class by class (fixtures/reference/ci_ratios.csv)", () => {
    const rows = referenceCsv("ci_ratios.csv").filter(
      ({ phy, kind }) => phy === "BR GFSK 1M" && kind === "offset",
    );
    expect(rows.length).toBe(4);
    const { selectivity, requiredCiDb } = findProfile("raster-13");
    const coChannelDb = Number(rows[0]!["c_over_i_db"]);
    expect(requiredCiDb.value).toBe(coChannelDb + 3); // 3 dB assumed for 1 % loss of an uncoded packet
    for (const row of rows) {
      const from = Number(row["offset_mhz"]!.replace(">=", ""));
      const offsets = row["offset_mhz"]!.startsWith(">=") ? [from, 7, 30, 99] : [from];
      for (const offsetMhz of offsets) {
        const rejectionDb = spectralOverlapDb(brickWall(0.2), selectivity.value, offsetMhz);
        expect(coChannelDb + rejectionDb, `${offsetMhz} MHz`).toBeCloseTo(Number(row["c_over_i_db"]), 9);
      }
    }
  });
  test("raster-16's assumed selectivity is no looser than IEEE 802.15.4 asks: 0 dB at 5, 30 dB at 10 MHz (from memory)", () => {
    const rows = referenceCsv("ci_ratios.csv").filter(({ system }) => system === "802.15.4");
    expect(rows.length).toBe(2);
    const { selectivity, requiredCiDb } = findProfile("raster-16");
    for (const row of rows) {
      const rejectionDb = spectralOverlapDb(brickWall(1), selectivity.value, Number(row["offset_mhz"]));
      expect(requiredCiDb.value + rejectionDb).toBeLessThanOrEqual(Number(row["c_over_i_db"]));
    }
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
