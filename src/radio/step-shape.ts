import type { Shape, ShapePoint } from "../band/index.js";
import { mirroredShape } from "../band/index.js";
import { ArgumentError } from "../issues/index.js";

/** One step of a symmetric staircase: the level that holds out to ± the half width. */
export type ShapeStep = readonly [halfWidthMhz: number, levelDb: number];

/**
 * A symmetric staircase: `levelDb` of each step from the previous half width to its own, nothing beyond
 * the last. For a selectivity, 0 dB in the passband and minus the rejection beyond; for an emission, dBr.
 * @param steps from the centre outwards, half widths rising and > 0
 * @throws {ArgumentError} when there is no step, a half width doesn't rise, or a figure is not finite
 * @example stepShape([[0.5, 0], [1.5, -11]]).points; // => [[-1.5, -11], [-0.5, -11], [-0.5, 0], [0.5, 0], [0.5, -11], [1.5, -11]]
 */
export function stepShape(steps: readonly ShapeStep[]): Shape {
  const rightHalf: ShapePoint[] = [];
  let innerMhz = 0;
  for (const [halfWidthMhz, levelDb] of steps) {
    if (!(halfWidthMhz > innerMhz && halfWidthMhz < Infinity && Number.isFinite(levelDb)))
      throw new ArgumentError("steps", "half widths that rise from 0, finite levels", JSON.stringify(steps));
    rightHalf.push([innerMhz, levelDb], [halfWidthMhz, levelDb]);
    innerMhz = halfWidthMhz;
  }
  return mirroredShape(rightHalf);
}

/**
 * A receiver's selectivity from the C/I that it needs at each offset: the rejection of a step is the
 * co-channel C/I less the step's own.
 * @param steps half width, MHz, and the C/I needed out to it, dB; the first is the co-channel
 * @throws {ArgumentError} as {@link stepShape}
 * @example receiverSelectivity([[0.5, 11], [1.5, 0]]).points[0]; // => [-1.5, -11]
 */
export function receiverSelectivity(
  steps: readonly (readonly [halfWidthMhz: number, ciDb: number])[],
): Shape {
  const coChannelCiDb = steps[0]?.[1] ?? 0;
  return stepShape(steps.map(([halfWidthMhz, ciDb]) => [halfWidthMhz, ciDb - coChannelCiDb]));
}
