import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { brickWall, mirroredShape, requireShape } from "../../src/band/index.js";
import type { Shape, ShapePoint } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";

const shape = (...points: ShapePoint[]): Shape => ({ points });

describe("mirroredShape", () => {
  it("puts the right half to the left as well, by hand", () => {
    const half: ShapePoint[] = [
      [0, 0],
      [9, 0],
      [11, -20],
    ];
    expect(mirroredShape(half).points).toEqual([
      [-11, -20],
      [-9, 0],
      [9, 0],
      [11, -20],
    ]);
  });

  it("keeps both points of a step, in the order that rises", () => {
    const half: ShapePoint[] = [
      [0, 0],
      [1, 0],
      [1, -20],
      [2, -20],
    ];
    expect(mirroredShape(half).points).toEqual([
      [-2, -20],
      [-1, -20],
      [-1, 0],
      [1, 0],
      [1, -20],
      [2, -20],
    ]);
  });

  it("is the same seen from the other side, and a valid shape", () => {
    const half = fc
      .array(fc.tuple(fc.double({ min: 0.01, max: 100, noNaN: true }), fc.double({ min: -60, max: 0 })), {
        minLength: 1,
        maxLength: 6,
      })
      .map((points) => [...points].sort((a, b) => a[0] - b[0]).filter(([, dbr]) => Number.isFinite(dbr)))
      .filter((points) => points.length > 0);
    fc.assert(
      fc.property(half, (points) => {
        const { points: all } = mirroredShape(points);
        expect(all.map(([mhz, dbr]) => [-mhz, dbr]).reverse()).toEqual(all);
      }),
    );
  });

  it("throws where no shape comes of it", () => {
    expect(() => mirroredShape([])).toThrow(ArgumentError);
    expect(() => mirroredShape([[0, 0]])).toThrow(ArgumentError);
    expect(() =>
      mirroredShape([
        [0, 0],
        [5, 0],
        [3, -10],
      ]),
    ).toThrow(ArgumentError);
  });
});

describe("brickWall", () => {
  it("is 0 dB over the bandwidth and ends there", () => {
    expect(brickWall(1).points).toEqual([
      [-0.5, 0],
      [0.5, 0],
    ]);
  });

  it.each([0, -1, Number.NaN, Infinity])("throws for a bandwidth of %s MHz", (bandwidthMhz) => {
    expect(() => brickWall(bandwidthMhz)).toThrow(ArgumentError);
  });
});

describe("requireShape", () => {
  it("lets a shape with a step pass unchanged", () => {
    const step = shape([-1, 0], [1, 0], [1, -20], [2, -20]);
    expect(requireShape("shape", step)).toBe(step);
  });

  it.each([
    ["no points", shape()],
    ["one point", shape([0, 0])],
    ["no width", shape([1, 0], [1, -20])],
    ["falling offsets", shape([1, 0], [0, 0])],
    ["NaN", shape([0, 0], [Number.NaN, 0])],
    ["an infinite level", shape([0, 0], [1, -Infinity])],
  ])("throws for %s", (_, wrong) => {
    expect(() => requireShape("shape", wrong)).toThrow(ArgumentError);
  });
});
