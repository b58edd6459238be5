import { ArgumentError, requireWhole } from "../issues/index.js";
import { findRoot } from "./find-root.js";
import { normalTailQuantile } from "./normal-quantile.js";

/**
 * Student's t, probability above `x`, for a whole number of degrees of freedom: the finite trigonometric sums.
 * Absolute error below 1e-13.
 * @param x in standard errors; ±Infinity allowed
 * @param freedomCount degrees of freedom, 1 … 1e6
 * @throws {ArgumentError} when x is NaN or freedomCount no such number
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4
 * @example studentTTail(1, 1); // => 0.25
 */
export function studentTTail(x: number, freedomCount: number): number {
  if (Number.isNaN(x)) throw new ArgumentError("x", "a number", x);
  requireWhole("freedomCount", freedomCount, 1, MOST_FREEDOM_COUNT);
  const angle = Math.atan(x / Math.sqrt(freedomCount));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const odd = freedomCount % 2;
  let [term, sum] = [odd === 1 ? cosine : 1, 0];
  for (let k = odd; k < freedomCount - 1; k += 2) {
    sum += term;
    term *= (cosine * cosine * (k + 1)) / (k + 2);
    if (term < 1e-18 * sum) break;
  }
  const within = odd === 1 ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
  return (1 - within) / 2;
}

/**
 * The x that Student's t exceeds with probability `tailRatio`.
 * @param tailRatio 1e-9 … 1 − 1e-9
 * @param freedomCount degrees of freedom, 1 … 1e6
 * @returns in standard errors
 * @throws {ArgumentError} when an argument is out of range
 * @source the inverse of {@link studentTTail} by root finding
 * @example studentTTailQuantile(0.25, 1); // => 1
 */
export function studentTTailQuantile(tailRatio: number, freedomCount: number): number {
  if (!(tailRatio >= 1e-9 && tailRatio <= 1 - 1e-9))
    throw new ArgumentError("tailRatio", "a number from 1e-9 to 1 − 1e-9", tailRatio);
  requireWhole("freedomCount", freedomCount, 1, MOST_FREEDOM_COUNT);
  if (tailRatio === 0.5) return 0;
  if (tailRatio > 0.5) return -studentTTailQuantile(1 - tailRatio, freedomCount);
  // In the angle of the sums the search has two ends; the normal quantile lies below.
  const low = Math.atan(normalTailQuantile(tailRatio) / Math.sqrt(freedomCount));
  const atAngle = (angle: number): number => Math.sqrt(freedomCount) * Math.tan(angle);
  const miss = (angle: number): number =>
    Math.log(Math.max(studentTTail(atAngle(angle), freedomCount), Number.MIN_VALUE) / tailRatio);
  return atAngle(findRoot(miss, low * (1 - 1e-12), Math.PI / 2, 1e-15));
}

const MOST_FREEDOM_COUNT = 1_000_000;
