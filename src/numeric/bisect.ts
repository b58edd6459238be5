import { ArgumentError, requireFinite, requirePositive } from "../issues/index.js";

/**
 * A root of a function by bisection: an x between `low` and `high` at which its sign changes.
 * @param target the function, never NaN
 * @param low @param high the ends of the interval; the function's signs there differ, or one is zero
 * @param tolerance half-width of the last interval, in the unit of x; rounding stops the search too
 * @throws {ArgumentError} when the ends or the tolerance are not finite, when the signs at the ends are
 *   equal, or when the function gives NaN
 * @example bisect((x) => x - 3, 0, 4, 1e-9); // => 3
 */
export function bisect(target: (x: number) => number, low: number, high: number, tolerance: number): number {
  requireFinite("low", low);
  requireFinite("high", high);
  requirePositive("tolerance", tolerance);
  const lowSign = signOf(target, low);
  const highSign = signOf(target, high);
  if (lowSign === 0) return low;
  if (highSign === 0) return high;
  if (lowSign === highSign)
    throw new ArgumentError("target", "opposite signs at the two ends", `${lowSign} at both`);
  let [left, right] = [low, high];
  for (;;) {
    const middle = left + (right - left) / 2;
    if (Math.abs(right - left) / 2 <= tolerance || middle === left || middle === right) return middle;
    const sign = signOf(target, middle);
    if (sign === 0) return middle;
    if (sign === lowSign) left = middle;
    else right = middle;
  }
}

function signOf(target: (x: number) => number, x: number): number {
  const value = target(x);
  if (Number.isNaN(value)) throw new ArgumentError("target", "a number", `NaN at ${x}`);
  return Math.sign(value);
}
