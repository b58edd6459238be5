import { ArgumentError, requireNonNegative } from "../issues/index.js";
import { findRoot, normalTail, studentTTail } from "../numeric/index.js";
import { fadeMarginDb, fadeOutageRatio } from "../propagation/index.js";
import type { FadeLaw } from "../propagation/index.js";
import type { Interval } from "./fit-estimate.js";
import { requireConfidence } from "./path-loss-readings.js";

/** How surely the local mean at a place is known. */
export interface LocalMeanSpread {
  /** Standard deviation of the local mean about the prediction, dB, ≥ 0. */
  readonly sigmaDb: number;
  /** Degrees of freedom behind it, as a fit has them; null: it is known, and the spread is normal. */
  readonly freedomCount: number | null;
  /** 0.5 … 0.9999; 0.95 unless given. */
  readonly confidenceRatio?: number | undefined;
}

/**
 * Where one reading lies about the predicted local mean, dB.
 * @returns dB, about the prediction
 */
export type ReadingIntervalDb = (spread: LocalMeanSpread) => Interval;

/**
 * Where one reading at one spot lies about the local mean that was predicted: R = σ·T + F, T Student's t (normal
 * where σ is known), F the small-scale fading of a spot, both independent. The interval leaves (1 − c)/2 out at
 * either end of P(R ≤ y) = ∫ P(σ·T ≤ y − f) dF(f). As the fading counts from the mean power, the lower half is
 * the longer one.
 * @param fadeLaw of the spot: `rayleigh`, `rician`; null: a reading that was averaged over fading
 * @throws {ArgumentError} for a law with shadowing of its own, and as `fadeOutageRatio`; the function returned, when
 *   σ is not finite and ≥ 0, or the confidence or the degrees of freedom are out of range
 * @source the convolution of two independent spreads (textbook form); the fade laws as `fadeOutageRatio`
 * @validity to 0.02 dB where σ is 0 or at least 0.25 dB, else to 0.1 dB; one reading, not moved about: the median of several lies
 *   closer
 * @example readingIntervalDb({ law: "rayleigh" })({ sigmaDb: 0, freedomCount: null }); // => [-15.96573898241459, 5.668944635031615]
 */
export function readingIntervalDb(fadeLaw: FadeLaw | null): ReadingIntervalDb {
  if (fadeLaw !== null && fadeLaw.law !== "rayleigh" && fadeLaw.law !== "rician")
    throw new ArgumentError("fadeLaw", "rayleigh, rician or null", fadeLaw.law);
  const fading = fadeLaw === null ? [{ offDb: 0, share: 1 }] : cellsOf(fadeLaw);
  return ({ sigmaDb, freedomCount, confidenceRatio = 0.95 }) => {
    requireNonNegative("sigmaDb", sigmaDb);
    requireConfidence(confidenceRatio);
    const tailRatio = (1 - confidenceRatio) / 2;
    if (sigmaDb === 0)
      return fadeLaw === null ? [0, 0] : [fadeAt(fadeLaw, tailRatio), fadeAt(fadeLaw, 1 - tailRatio)];
    const above = (x: number): number =>
      freedomCount === null ? normalTail(x) : studentTTail(x, freedomCount);
    const shareBelow = (levelDb: number): number =>
      fading.reduce((sum, { offDb, share }) => sum + share * above((offDb - levelDb) / sigmaDb), 0);
    const quantile = (ratio: number): number => {
      // In log odds the share is nearly a straight line of the level.
      const miss = (levelDb: number): number => logOdds(shareBelow(levelDb)) - logOdds(ratio);
      let reachDb = 2 * sigmaDb + 8;
      while (miss(-reachDb) > 0 || miss(reachDb) < 0) reachDb *= 2;
      return findRoot(miss, -reachDb, reachDb, TOLERANCE_DB);
    };
    return [quantile(tailRatio), quantile(1 - tailRatio)];
  };
}

function logOdds(ratio: number): number {
  return Math.log(Math.max(ratio, Number.MIN_VALUE)) - Math.log(Math.max(1 - ratio, Number.MIN_VALUE));
}

const TOLERANCE_DB = 1e-7;
const CELL_DB = 0.2;
/** Cells of fewer spots than this are put together. */
const LEAST_SHARE = 1e-3;
const DEEPEST_RATIO = 1e-5;
const HIGHEST_RATIO = 1 - 1e-9;

/** Fading cut into cells of level, each with its middle and its share of spots. */
function cellsOf(law: FadeLaw): { readonly offDb: number; readonly share: number }[] {
  const fromDb = fadeAt(law, DEEPEST_RATIO);
  const cellCount = Math.ceil((fadeAt(law, HIGHEST_RATIO) - fromDb) / CELL_DB);
  const cells: { offDb: number; share: number }[] = [];
  let [below, share, weightedDb] = [0, 0, 0];
  for (let index = 0; index < cellCount; index++) {
    const topDb = fromDb + (index + 1) * CELL_DB;
    const isLast = index === cellCount - 1;
    const upTo = isLast ? 1 : fadeOutageRatio({ ...law, marginDb: -topDb });
    share += upTo - below;
    weightedDb += (upTo - below) * (topDb - CELL_DB / 2);
    below = upTo;
    if (share < LEAST_SHARE && !isLast) continue;
    if (share > 0) cells.push({ offDb: weightedDb / share, share });
    [share, weightedDb] = [0, 0];
  }
  return cells;
}

/** The level about the mean that a share of spots lies below, dB. */
function fadeAt(law: FadeLaw, outageRatio: number): number {
  return -fadeMarginDb({ ...law, outageRatio });
}
