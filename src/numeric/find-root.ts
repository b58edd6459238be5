import { ArgumentError, requireFinite, requirePositive } from "../issues/index.js";

/**
 * A root of a smooth function by false position in the Illinois form: a few evaluations where {@link bisect}
 * needs dozens. The interval always brackets the root; the search ends when two estimates in a row differ
 * by no more than `tolerance`.
 * @param target the function, finite in [low, high]
 * @param low @param high the ends of the interval; the function's signs there differ, or one is zero
 * @param tolerance in the unit of x
 * @throws {ArgumentError} when the ends or the tolerance are not finite, when the signs at the ends are
 *   equal, or when the function gives no finite number
 * @source M. Dowell, P. Jarratt, BIT 11 (1971) 168–174
 * @example findRoot((x) => 2 * x - 6, 0, 4, 1e-9); // => 3
 */
export function findRoot(
  target: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number {
  requireFinite("low", low);
  requireFinite("high", high);
  requirePositive("tolerance", tolerance);
  let [left, leftValue] = [low, finiteAt(target, low)];
  let [right, rightValue] = [high, finiteAt(target, high)];
  if (leftValue === 0) return left;
  if (rightValue === 0) return right;
  if (leftValue > 0 === rightValue > 0)
    throw new ArgumentError("target", "opposite signs at the two ends", `${leftValue} and ${rightValue}`);
  let before = NaN;
  for (;;) {
    const x = right - (rightValue * (right - left)) / (rightValue - leftValue);
    const value = finiteAt(target, x);
    if (value === 0 || Math.abs(x - before) <= tolerance) return x;
    before = x;
    // The new point replaces the end of its own sign; the other end, kept twice, counts half.
    if (value > 0 === rightValue > 0) leftValue /= 2;
    else [left, leftValue] = [right, rightValue];
    [right, rightValue] = [x, value];
  }
}

function finiteAt(target: (x: number) => number, x: number): number {
  const value = target(x);
  if (!Number.isFinite(value)) throw new ArgumentError("target", "a finite number", `${value} at ${x}`);
  return value;
}
