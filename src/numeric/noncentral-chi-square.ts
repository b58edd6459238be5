import { requireNonNegative } from "../issues/index.js";
import { poissonMass } from "./poisson-mass.js";

/**
 * Noncentral χ² with two degrees of freedom, probability below `x`; with λ = a² and x = b² it is
 * 1 − Q₁(a, b), Marcum's function. Computed as P(N > M) for independent Poisson counts N of mean x/2 and
 * M of mean λ/2: a sum of positive terms, so the lower tail keeps its digits (relative error below 1e-12).
 * @param x value of the variable, ≥ 0
 * @param noncentrality λ, ≥ 0
 * @throws {ArgumentError} when an argument is not finite and ≥ 0
 * @source Johnson, Kotz, Balakrishnan, Continuous Univariate Distributions 2, ch. 29 (Poisson mixture), from memory
 * @example noncentralChiSquareCdf(0, 4); // => 0
 */
export function noncentralChiSquareCdf(x: number, noncentrality: number): number {
  requireNonNegative("x", x);
  requireNonNegative("noncentrality", noncentrality);
  const distance = Math.sqrt(x) - Math.sqrt(noncentrality);
  if (distance > SURE_DISTANCE) return 1;
  const last = x + noncentrality + 100; // where the terms have long been falling
  let below = 0; // P(M < n)
  let sum = 0;
  for (let n = 1; n < last; n++) {
    below += poissonMass(n - 1, noncentrality / 2);
    const term = poissonMass(n, x / 2) * below;
    sum += term;
    if (sum > 0 && term < 1e-18 * sum) break;
  }
  return Math.min(1, sum);
}

// Q₁(a, b) ≤ e^(−(b−a)²/2) for b > a: below 1e-18 from here on.
const SURE_DISTANCE = 9.2;
