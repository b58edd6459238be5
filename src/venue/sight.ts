import { fadeAllowanceDb, referenceFadeLaw } from "../propagation/index.js";
import type { FadeLaw } from "../propagation/index.js";

/** How links are to be held against fading. */
export interface FadeTerms {
  /** Of a receiver in sight of its transmitter; Rician, K = 6 dB, unless given. */
  readonly fadeLaw?: FadeLaw | undefined;
  /** Of a receiver whose transmitter is hidden; Rayleigh unless given. */
  readonly hiddenFadeLaw?: FadeLaw | undefined;
  /** Share of receiver positions to hold, 0..1 exclusive; 0.99 unless given. */
  readonly reliability?: number | undefined;
}

/** Fade allowances of both cases. */
export interface FadeAllowances {
  readonly inSightDb: number;
  readonly hiddenDb: number;
}

/**
 * Walls and floors that together take this much or more hide the transmitter: the direct wave no longer
 * stands out of the echoes (assumed; half the power).
 */
export const HIDDEN_FROM_LOSS_DB = 3;

/**
 * @returns the allowances of both cases, dB
 * @throws {ArgumentError} as `fadeAllowanceDb`
 * @example fadeAllowances({ reliability: 0.99 }).hiddenDb; // => 19.97819425120579
 */
export function fadeAllowances(terms: FadeTerms): FadeAllowances {
  const { fadeLaw = referenceFadeLaw, hiddenFadeLaw = { law: "rayleigh" }, reliability = 0.99 } = terms;
  return {
    inSightDb: fadeAllowanceDb({ ...fadeLaw, reliability }),
    hiddenDb: fadeAllowanceDb({ ...hiddenFadeLaw, reliability }),
  };
}

/**
 * Whether a receiver sees its transmitter: as the crew says, else by what stands between.
 * @param saidInSight what the venue file says of the transmitter; null: nothing
 * @param obstacleLossDb walls and floors on the path, dB
 * @returns is it taken as seen?
 * @example isInSight(null, 2.9); // => true
 */
export function isInSight(saidInSight: boolean | null, obstacleLossDb: number): boolean {
  return saidInSight ?? obstacleLossDb < HIDDEN_FROM_LOSS_DB;
}
