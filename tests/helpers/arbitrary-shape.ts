import fc from "fast-check";
import type { Shape, ShapePoint } from "../../src/band/index.js";

const tenths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(least * 10), max: Math.round(most * 10) }).map((value) => value / 10);

/** Breakpoints on a 0.1 MHz raster within ±30 MHz, 0 … −60 dBr, steps among them. */
export const arbitraryShape: fc.Arbitrary<Shape> = fc
  .array(fc.tuple(tenths(-30, 30), tenths(-60, 0)), { minLength: 2, maxLength: 8 })
  .map((points) => ({ points: [...points].sort((a, b) => a[0] - b[0]) }))
  .filter(({ points }) => points[0]![0] < points[points.length - 1]![0]);

/** A shape that is the same on both sides of its centre. */
export const symmetricShape: fc.Arbitrary<Shape> = fc
  .array(fc.tuple(tenths(0.1, 30), tenths(-60, 0)), { minLength: 1, maxLength: 5 })
  .map((points) => {
    const right = [...points].sort((a, b) => a[0] - b[0]) as ShapePoint[];
    const left = right.map(([mhz, dbr]): ShapePoint => [-mhz, dbr]).reverse();
    return { points: [...left, ...right] };
  });
