import { ArgumentError, requireFinite } from "../issues/index.js";
import { noncentralChiSquareCdf, normalTail, trapezoid } from "../numeric/index.js";
import { dbToRatio } from "../units/index.js";
import type { FadeLaw } from "./fade-law.js";
import { requiredKDb, requiredSigmaDb } from "./fade-law.js";

/**
 * Share of positions at which the level lies more than `marginDb` below the law's reference (M = margin):
 * - rayleigh: 1 − exp(−10^(−M/10))
 * - rician: noncentral χ² of 2 degrees of freedom, λ = 2K, at 2·(1 + K)·10^(−M/10); that is 1 − Q₁
 * - lognormal: Q(M/σ)
 * - rayleigh-lognormal: the Rayleigh outage averaged over a local mean that is normal in dB
 * @param query the law, its parameter, and marginDb, dB, finite, of either sign
 * @returns 0..1, relative error below 1e-12 in the tail
 * @throws {ArgumentError} for an unknown law, a parameter missing or out of range, or a margin not finite
 * @source textbook forms: J. D. Parsons, The Mobile Radio Propagation Channel, ch. 5–6; Q₁ of J. I. Marcum (from memory)
 * @validity positions that differ by more than half a wavelength; one frequency
 * @example fadeOutageRatio({ law: "lognormal", sigmaDb: 8, marginDb: 0 }); // => 0.5
 */
export function fadeOutageRatio(query: FadeLaw & { readonly marginDb: number }): number {
  const { marginDb } = query;
  requireFinite("marginDb", marginDb);
  switch (query.law) {
    case "rayleigh":
      return rayleighOutage(marginDb);
    case "rician": {
      const k = dbToRatio(requiredKDb(query));
      return noncentralChiSquareCdf(Math.min(2 * (1 + k) * dbToRatio(-marginDb), Number.MAX_VALUE), 2 * k);
    }
    case "lognormal":
      return normalTail(marginDb / requiredSigmaDb(query));
    case "rayleigh-lognormal":
      return compositeOutage(marginDb, requiredSigmaDb(query));
    default:
      throw new ArgumentError("law", "rayleigh, rician, lognormal or rayleigh-lognormal", query.law);
  }
}

function rayleighOutage(marginDb: number): number {
  return -Math.expm1(-dbToRatio(-marginDb));
}

/**
 * ∫ φ(z)·rayleighOutage(M + σ·z) dz. The integrand's weight lies between z = −s (deep margins shift it by
 * s = σ·ln 10/10 standard deviations) and 0; ten standard deviations beyond, 1e-20 of it is left. The rule
 * converges like e^(−2π·d/h) with d < π/(2s), half the width of the strip in which the integrand stays small.
 */
function compositeOutage(marginDb: number, sigmaDb: number): number {
  const s = (sigmaDb * Math.LN10) / 10;
  const reach = 10;
  const intervals = Math.ceil(((s + 2 * reach) * (1 + s)) / 0.25);
  const weighted = (z: number): number => Math.exp(-0.5 * z * z) * rayleighOutage(marginDb + sigmaDb * z);
  return Math.min(1, trapezoid(weighted, -s - reach, reach, intervals) / Math.sqrt(2 * Math.PI));
}
