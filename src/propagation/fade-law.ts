import { ArgumentError, requirePositive } from "../issues/index.js";

/**
 * How the level is spread over receiver positions, and what a margin counts from:
 * - `rayleigh`: no line of sight; from the mean power
 * - `rician`: line of sight plus scatter; from the mean total power
 * - `lognormal`: shadowing; from the median of the local mean
 * - `rayleigh-lognormal`: both; from the median of the local mean
 */
export type FadeLawName = "rayleigh" | "rician" | "lognormal" | "rayleigh-lognormal";

/** A fade law with its parameter; a parameter that the law doesn't have is not looked at. */
export interface FadeLaw {
  readonly law: FadeLawName;
  /** Rician: direct over scattered power, dB, at most 40. 0 dB is K = 1, not Rayleigh. */
  readonly kDb?: number | undefined;
  /** Log-normal laws: standard deviation, dB, > 0. */
  readonly sigmaDb?: number | undefined;
}

/** The reference receiver's law: in sight of the transmitter, K = 6 dB (assumed). */
export const referenceFadeLaw: FadeLaw = { law: "rician", kDb: 6 };

/** Above this a Rician channel hardly fades, and the sum behind it grows without end. */
const GREATEST_K_DB = 40;

/** @throws {ArgumentError} unless K is given, finite and at most 40 dB */
export function requiredKDb(law: FadeLaw): number {
  const { kDb } = law;
  if (kDb === undefined || !Number.isFinite(kDb) || kDb > GREATEST_K_DB)
    throw new ArgumentError("kDb", `a finite number of dB up to ${GREATEST_K_DB}`, kDb);
  return kDb;
}

/** @throws {ArgumentError} unless σ is given, finite and > 0 */
export function requiredSigmaDb(law: FadeLaw): number {
  const sigmaDb = law.sigmaDb ?? NaN;
  requirePositive("sigmaDb", sigmaDb);
  return sigmaDb;
}

/**
 * The law in words.
 * @returns words for a report
 * @example fadeLawWords({ law: "rician", kDb: 6 }); // => "Rician, K = 6 dB (in sight of the transmitter)"
 */
export function fadeLawWords(law: FadeLaw): string {
  switch (law.law) {
    case "rayleigh":
      return "Rayleigh (out of sight of the transmitter)";
    case "rician":
      return `Rician, K = ${requiredKDb(law)} dB (in sight of the transmitter)`;
    case "lognormal":
      return `log-normal, sigma = ${requiredSigmaDb(law)} dB (shadowing only)`;
    case "rayleigh-lognormal":
      return `Rayleigh and log-normal, sigma = ${requiredSigmaDb(law)} dB`;
  }
}
