import { requireFinite } from "../issues/index.js";
import { ratioToDb } from "../units/index.js";
import { requireShape } from "./shape.js";
import type { Shape, ShapePoint } from "./shape.js";

/**
 * The share of an emitter's power that a receiver takes in: ∫ S(f)·H(f) df with S normalised to unit total
 * power, both straight lines in dB between breakpoints, so that every piece integrates in closed form.
 * @param emitter transmit spectrum
 * @param receiver selectivity, 0 dB in its passband
 * @param offsetMhz receiver centre − emitter centre, MHz
 * @returns dB, ≤ 0 for a selectivity ≤ 0 dB; -Infinity where the two don't meet
 * @throws {ArgumentError} when a shape has no width or the offset is not finite
 * @source closed form of an exponential's integral; no grid
 * @validity exact for the shapes given; what a real transmitter radiates lies at or below its mask
 * @example spectralOverlapDb(brickWall(20), brickWall(2), 0); // => -10
 */
export function spectralOverlapDb(emitter: Shape, receiver: Shape, offsetMhz: number): number {
  return overlapDbByOffset(emitter, receiver)(offsetMhz);
}

/**
 * `spectralOverlapDb` of two shapes that meet at many offsets: they are checked and normalised once.
 * @throws {ArgumentError} when a shape has no width; the function returned, when its offset is not finite
 * @example overlapDbByOffset(brickWall(20), brickWall(2))(0); // => -10
 */
export function overlapDbByOffset(emitter: Shape, receiver: Shape): (offsetMhz: number) => number {
  requireShape("emitter", emitter);
  requireShape("receiver", receiver);
  const spectrum = toppedOut(emitter);
  const spectrumPower = totalPower({ points: spectrum });
  return (offsetMhz) => {
    requireFinite("offsetMhz", offsetMhz);
    return ratioToDb(overlapIntegral(spectrum, receiver.points, offsetMhz) / spectrumPower);
  };
}

/**
 * ∫ of a shape over all frequencies, in units of (0 dBr) · MHz.
 * @returns power, in units of 0 dBr · MHz
 * @source integral of an exponential, in closed form
 * @validity exact for the points given
 * @example totalPower(brickWall(20)); // => 20
 */
export function totalPower(shape: Shape): number {
  let total = 0;
  const { points } = shape;
  for (let index = 1; index < points.length; index++) {
    const start = points[index - 1]!;
    const end = points[index]!;
    total += pieceIntegral(end[0] - start[0], start[1], end[1]);
  }
  return total;
}

/** Both lists of points in rising order; `offsetMhz` moves the receiver. */
function overlapIntegral(
  emitter: readonly ShapePoint[],
  receiver: readonly ShapePoint[],
  offsetMhz: number,
): number {
  let total = 0;
  let e = 1;
  let r = 1;
  while (e < emitter.length && r < receiver.length) {
    const emitterEndMhz = emitter[e]![0];
    const receiverEndMhz = receiver[r]![0] + offsetMhz;
    const startMhz = Math.max(emitter[e - 1]![0], receiver[r - 1]![0] + offsetMhz);
    const endMhz = Math.min(emitterEndMhz, receiverEndMhz);
    if (endMhz > startMhz) {
      const startDb = levelAt(emitter, e, startMhz) + levelAt(receiver, r, startMhz - offsetMhz);
      const endDb = levelAt(emitter, e, endMhz) + levelAt(receiver, r, endMhz - offsetMhz);
      total += pieceIntegral(endMhz - startMhz, startDb, endDb);
    }
    if (emitterEndMhz <= receiverEndMhz) e++;
    else r++;
  }
  return total;
}

/** Level on the straight line that ends at point `end`, dB. */
function levelAt(points: readonly ShapePoint[], end: number, offsetMhz: number): number {
  const from = points[end - 1]!;
  const to = points[end]!;
  if (from[1] === to[1]) return from[1];
  return from[1] + ((offsetMhz - from[0]) / (to[0] - from[0])) * (to[1] - from[1]);
}

/**
 * ∫ of 10^(L/10) over a width where L runs straight from one level to another: w·(P₁ − P₀)/ln(P₁/P₀), and as
 * w·10^(mean/10)·sinh(u)/u where the two are near.
 */
function pieceIntegral(widthMhz: number, startDb: number, endDb: number): number {
  const u = (Math.LN10 / 20) * (endDb - startDb);
  if (Math.abs(u) > 1) return (widthMhz * (10 ** (endDb / 10) - 10 ** (startDb / 10))) / (2 * u);
  const middle = widthMhz * 10 ** ((startDb + endDb) / 20);
  return middle * (Math.abs(u) < 1e-4 ? 1 + (u * u) / 6 : Math.sinh(u) / u);
}

/** The shape with its top at 0 dBr: only its form counts, and a form far below 0 dBr must not vanish. */
function toppedOut({ points }: Shape): readonly ShapePoint[] {
  const topDbr = points.reduce((top, [, levelDbr]) => Math.max(top, levelDbr), -Infinity);
  return topDbr === 0 ? points : points.map(([offsetMhz, levelDbr]) => [offsetMhz, levelDbr - topDbr]);
}
