import { ArgumentError, requireFinite } from "../issues/index.js";

/**
 * ∫ f over [from, to] by the trapezoidal rule. For a smooth function that dies away at both ends (a
 * Gaussian times something mild) the error falls exponentially with the number of intervals.
 * @param integrand the function, finite everywhere in [from, to]
 * @param intervalCount whole number ≥ 1
 * @throws {ArgumentError} when the ends are not finite or intervalCount is no whole number ≥ 1
 * @source Trefethen and Weideman, The Exponentially Convergent Trapezoidal Rule, SIAM Review 56 (2014)
 * @example trapezoid((x) => 2 * x, 0, 3, 1); // => 9
 */
export function trapezoid(
  integrand: (x: number) => number,
  from: number,
  to: number,
  intervalCount: number,
): number {
  requireFinite("from", from);
  requireFinite("to", to);
  if (!Number.isInteger(intervalCount) || intervalCount < 1)
    throw new ArgumentError("intervalCount", "a whole number ≥ 1", intervalCount);
  const step = (to - from) / intervalCount;
  let sum = (integrand(from) + integrand(to)) / 2;
  for (let index = 1; index < intervalCount; index++) sum += integrand(from + index * step);
  return sum * step;
}
