import { ArgumentError } from "../issues/index.js";

/**
 * Standard normal distribution, probability above `x`: Q(x) = ∫ₓ^∞ e^(−t²/2) dt / √(2π).
 * Near zero by the Taylor series of Φ, whose terms are all positive; further out by Laplace's continued
 * fraction. Relative error below 1e-14 wherever Q(x) is a normal double (x < 37).
 * @param x in standard deviations; ±Infinity allowed
 * @throws {ArgumentError} when x is NaN
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.11 and 26.2.14
 * @example normalTail(0); // => 0.5
 */
export function normalTail(x: number): number {
  if (Number.isNaN(x)) throw new ArgumentError("x", "a number", x);
  if (x < 0) return 1 - normalTail(-x);
  return x < SERIES_BELOW ? 0.5 - density(x) * seriesSum(x) : density(x) / continuedFraction(x);
}

/**
 * Standard normal distribution, probability below `x`: Φ(x) = Q(−x), accurate in the lower tail.
 * @param x in standard deviations; ±Infinity allowed
 * @throws {ArgumentError} when x is NaN
 * @example normalCdf(0); // => 0.5
 */
export function normalCdf(x: number): number {
  return normalTail(-x);
}

const SERIES_BELOW = 1.5;
const CONTINUED_FRACTION_DEPTH = 160; // enough for 1e-16 at SERIES_BELOW, more than enough beyond

/** e^(−x²/2)/√(2π), with x split so that the rounding of x² doesn't spoil the exponent. */
function density(x: number): number {
  if (x > 40) return 0;
  const coarse = Math.round(x * 16) / 16;
  const rest = (x - coarse) * (x + coarse);
  return (Math.exp(-0.5 * coarse * coarse) * Math.exp(-0.5 * rest)) / Math.sqrt(2 * Math.PI);
}

/** Σ x^(2n+1) / (1·3·…·(2n+1)). */
function seriesSum(x: number): number {
  let term = x;
  let sum = x;
  for (let odd = 3; term > sum * 1e-17; odd += 2) {
    term *= (x * x) / odd;
    sum += term;
  }
  return sum;
}

/** x + 1/(x + 2/(x + 3/(x + …))), from the far end. */
function continuedFraction(x: number): number {
  let value = x + Math.sqrt(CONTINUED_FRACTION_DEPTH);
  for (let k = CONTINUED_FRACTION_DEPTH; k > 0; k--) value = x + k / value;
  return value;
}
