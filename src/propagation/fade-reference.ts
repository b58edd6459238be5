import { fadeMarginDb } from "./fade-allowance.js";
import type { FadeLaw } from "./fade-law.js";
import { requiredSigmaDb } from "./fade-law.js";

/** What a law's margins count from: the mean power, or the median of the local means. */
export type FadeReference = "mean" | "median";

/**
 * The level that a law's margins and allowances count from.
 * @returns `mean`: the power averaged over positions; `median`: the median of the local means
 * @example fadeReference({ law: "rician", kDb: 6 }); // => "mean"
 */
export function fadeReference({ law }: FadeLaw): FadeReference {
  return law === "rayleigh" || law === "rician" ? "mean" : "median";
}

/**
 * The median position below (+) the law's reference level: at half of all positions the level is lower.
 * @returns dB; Rayleigh −10·log10(ln 2) = 1.59, log-normal 0
 * @throws {ArgumentError} for a parameter missing or out of range
 * @source moments of each law, textbook
 * @validity as the law's own
 * @example referenceOverMedianDb({ law: "rayleigh" }); // => 1.591745389548616
 */
export function referenceOverMedianDb(law: FadeLaw): number {
  return fadeMarginDb({ ...law, outageRatio: 0.5 });
}

/**
 * The mean power over the median of all positions, to turn one reference into the other: a margin counted
 * from the mean is one counted from the median plus this. Rayleigh −10·log10(ln 2); log-normal
 * σ²·ln 10/20, the mean of a quantity that is normal in dB; Rician and Rayleigh × log-normal from their
 * own median.
 * @returns dB, ≥ 0
 * @throws {ArgumentError} for a parameter missing or out of range
 * @source textbook: J. D. Parsons, The Mobile Radio Propagation Channel, ch. 5-6 (from memory)
 * @validity as the law's own
 * @example meanOverMedianDb({ law: "lognormal", sigmaDb: 8 }); // => 7.368272297580946
 */
export function meanOverMedianDb(law: FadeLaw): number {
  return referenceOverMedianDb(law) + meanOverReferenceDb(law);
}

/** A log-normal local mean averages σ²·ln 10/20 dB above its median; the Rayleigh part adds nothing to a mean. */
function meanOverReferenceDb(law: FadeLaw): number {
  return fadeReference(law) === "mean" ? 0 : (requiredSigmaDb(law) ** 2 * Math.LN10) / 20;
}
