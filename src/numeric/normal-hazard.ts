import { normalTail } from "./normal-tail.js";

/**
 * Standard normal hazard: density over the probability above, φ(x)/Q(x); the mean of what lies above x.
 * @param x in standard deviations, finite
 * @returns above 0; x itself, nearly, far out
 * @throws {ArgumentError} when x is NaN
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.12 for x > 35
 * @example normalHazard(0); // => 0.7978845608028654
 */
export function normalHazard(x: number): number {
  if (x > 35) return x / (1 - 1 / (x * x) + 3 / x ** 4);
  return normalDensity(x) / normalTail(x);
}

/**
 * Standard normal density.
 * @param x in standard deviations
 * @example normalDensity(0); // => 0.3989422804014327
 */
export function normalDensity(x: number): number {
  return Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
}
