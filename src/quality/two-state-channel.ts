import { requirePositive, requireRatio } from "../issues/index.js";
import { SLACK } from "../units/index.js";

/** A channel that is clear and harmful by turns, both stretches of exponential length. */
export interface TwoStateChannel {
  /** Share of time in the harmful state, 0..1. */
  readonly harmfulRatio: number;
  /** Mean length of a harmful stretch, ms. */
  readonly harmfulMs: number;
  /** Mean length of a clear stretch, ms; Infinity where nothing harms, 0 where it never is clear. */
  readonly clearMs: number;
}

/**
 * The two-state channel (Gilbert's) that stands for the contention groups' bursts. Each group alone has bursts of
 * mean b and gaps of mean b·(1 − a)/a, so the stretches in which at least one is on have the share
 * A₀ = 1 − Π(1 − a) and the mean b·(A₀/(1 − A₀)) / Σ a/(1 − a), which is b for one group. The channel keeps that
 * mean and is harmful for 1 − clear air: combinations that are harmful only jointly count as more such stretches.
 * @returns shares and mean lengths
 * @throws {ArgumentError} when a share is not in 0..1 or the burst not > 0
 * @source E. N. Gilbert, Bell Syst. Tech. J. 39 (1960) 1253–1265, with a clear state free of loss and a harmful one
 *   of nothing else; the union of independent alternating processes (clear stretches stay exponential)
 * @validity exponential bursts, where {@link transmissionSuccessRatio} takes any; exact for one group
 * @example twoStateChannel({ clearAirRatio: 0.8, harmfulRatios: [0.2], burstMs: 2 }); // => {
 * //   harmfulRatio: 0.2, harmfulMs: 2, clearMs: 8 }
 */
export function twoStateChannel(terms: {
  readonly clearAirRatio: number;
  readonly harmfulRatios: readonly number[];
  readonly burstMs: number;
}): TwoStateChannel {
  const { clearAirRatio, harmfulRatios, burstMs } = terms;
  requireRatio("clearAirRatio", clearAirRatio);
  requirePositive("burstMs", burstMs);
  for (const ratio of harmfulRatios) requireRatio("harmfulRatios", ratio);
  const idleRatio = harmfulRatios.reduce((idle, ratio) => idle * (1 - ratio), 1);
  const clearRatio = Math.min(clearAirRatio, idleRatio);
  if (clearRatio <= 0 || harmfulRatios.some((ratio) => ratio >= 1 - SLACK))
    return { harmfulRatio: 1, harmfulMs: Infinity, clearMs: 0 };
  const onsets = harmfulRatios.reduce((sum, ratio) => sum + ratio / (1 - ratio), 0);
  const harmfulMs = burstMs * (onsets > 0 ? (1 - idleRatio) / idleRatio / onsets : 1);
  return {
    harmfulRatio: 1 - clearRatio,
    harmfulMs,
    clearMs: (harmfulMs * clearRatio) / (1 - clearRatio),
  };
}
