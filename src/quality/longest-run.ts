import { requireRatio, requireWhole } from "../issues/index.js";

/** 26 days of 44 frames a second; a recursion over more would take minutes. */
export const GREATEST_TRIALS = 1e8;

/** n independent trials of which each fails with probability p. */
export interface LongestRunTerms {
  /** n, whole, 0 … 1e8. */
  readonly trials: number;
  /** k, whole, 1 … 1e8. */
  readonly runLength: number;
  /** p, 0..1. */
  readonly failureProbability: number;
}

/**
 * The chance that n independent trials hold a run of k failures or more. With F(n) = 0 below k and F(k) = p^k,
 * F(n) = F(n−1) + (1 − p)·p^k·(1 − F(n−k−1)): the run is complete at n for the first time. Only positive terms
 * are added, compensated, so that a tiny chance keeps its digits. Up to n = 2k no two runs fit and
 * F = p^k·(1 + (n−k)·(1−p)), which is also the answer where it is too small for two runs to matter.
 * @returns 0..1, relative error below 1e-12 for k up to 1e3 and 1e-11 up to 1e4; memory k + 1 numbers, time n
 * @throws {ArgumentError} when trials or runLength is not whole or out of range, or the probability not in 0..1
 * @source W. Feller, An Introduction to Probability Theory and Its Applications I, XIII.7
 * @validity independent trials; fades and Wi-Fi bursts cluster failures: see lookInBursts
 * @example longestRunProbability({ trials: 8, runLength: 4, failureProbability: 0.5 }); // => 0.1875
 */
export function longestRunProbability({ trials, runLength, failureProbability }: LongestRunTerms): number {
  requireWhole("trials", trials, 0, GREATEST_TRIALS);
  requireWhole("runLength", runLength, 1, GREATEST_TRIALS);
  requireRatio("failureProbability", failureProbability);
  if (runLength > trials) return 0;
  const runProbability = failureProbability ** runLength;
  const firstAt = (1 - failureProbability) * runProbability;
  const expectedRuns = runProbability + (trials - runLength) * firstAt;
  // Runs apart are independent, so F lies between U − U²/2 and U, the expected number of runs.
  if (trials <= 2 * runLength || expectedRuns < Number.EPSILON / 2) return Math.min(1, expectedRuns);
  return firstPassage(trials, runLength, runProbability, firstAt);
}

/** F(n) by the recursion; F(n−k−1) and F(n) take the same place in a ring of k + 1. */
function firstPassage(trials: number, runLength: number, runProbability: number, firstAt: number): number {
  const ring = new Float64Array(runLength + 1);
  ring[runLength] = runProbability;
  let sum = runProbability;
  let lostDigits = 0;
  for (let trial = runLength + 1, place = 0; trial <= trials; trial++) {
    const term = firstAt * (1 - ring[place]!) - lostDigits;
    const next = sum + term;
    lostDigits = next - sum - term;
    sum = next;
    ring[place] = sum;
    if (place++ !== runLength) continue;
    place = 0;
    if (1 - sum < Number.EPSILON) return 1;
  }
  return Math.min(1, sum);
}
