import { ArgumentError } from "../issues/index.js";

/** A breakpoint: offset from the centre in MHz, level in dB relative to the top (dBr). */
export type ShapePoint = readonly [offsetMhz: number, levelDbr: number];

/**
 * A spectrum or a filter as breakpoints, straight lines in dB between them and nothing outside the
 * first and the last. Offsets never fall; two points at one offset are a step.
 */
export interface Shape {
  readonly points: readonly ShapePoint[];
}

/**
 * @returns the shape whose right half is `rightHalf` (offsets ≥ 0), mirrored to the left
 * @throws {ArgumentError} when the points are not a shape
 * @example mirroredShape([[0, 0], [9, 0], [11, -20]]).points[0]; // => [-11, -20]
 */
export function mirroredShape(rightHalf: readonly ShapePoint[]): Shape {
  const left = rightHalf
    .filter(([offsetMhz]) => offsetMhz > 0)
    .map(([offsetMhz, levelDbr]): ShapePoint => [-offsetMhz, levelDbr])
    .reverse();
  const right = rightHalf[0]?.[0] === 0 ? rightHalf.slice(1) : rightHalf;
  return requireShape("rightHalf", { points: [...left, ...right] });
}

/**
 * A brick-wall filter: 0 dB over the whole bandwidth, nothing outside.
 * @param bandwidthMhz full width, MHz, > 0
 * @throws {ArgumentError} when the bandwidth is not finite and > 0
 * @example brickWall(2).points; // => [[-1, 0], [1, 0]]
 */
export function brickWall(bandwidthMhz: number): Shape {
  if (!(bandwidthMhz > 0 && bandwidthMhz < Infinity))
    throw new ArgumentError("bandwidthMhz", "a finite number > 0", bandwidthMhz);
  return {
    points: [
      [-bandwidthMhz / 2, 0],
      [bandwidthMhz / 2, 0],
    ],
  };
}

/**
 * Checks that a shape can be used.
 * @param argument its name, for the error
 * @throws {ArgumentError} unless the shape has two or more finite points in rising order and some width.
 * @example requireShape("shape", { points: [[0, 0]] }); // => throws ArgumentError
 */
export function requireShape(argument: string, shape: Shape): Shape {
  const { points } = shape;
  const ordered = points.every(
    ([offsetMhz, levelDbr], index) =>
      Number.isFinite(offsetMhz) &&
      Number.isFinite(levelDbr) &&
      offsetMhz >= (points[index - 1]?.[0] ?? -Infinity),
  );
  const wide = points.length >= 2 && points[points.length - 1]![0] > points[0]![0];
  if (!ordered || !wide)
    throw new ArgumentError(
      argument,
      "two or more finite points in rising order of offset",
      JSON.stringify(points),
    );
  return shape;
}
