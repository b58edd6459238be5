import { requireWhole } from "../issues/index.js";
import type { FrameChain } from "./frame-chain.js";
import { moved, power, product, sum, total } from "./matrix-two.js";
import type { MatrixTwo } from "./matrix-two.js";
import { GREATEST_TRIALS } from "./longest-run.js";

/**
 * The chance that n frames over a two-state channel hold a run of k lost ones or more: Feller's recursion with the
 * channel's state carried along. y(i) is the state (a row of two) after i frames without such a run; L moves it over
 * a lost frame, K over a kept one: y(i) = y(i−1)·(L + K) − y(i−k−1)·K·L^k, and the run is complete at i for the first
 * time with chance y(i−k−1)·K·L^k·1.
 * @param chain starts in its long-run state
 * @param frameCount n, whole, 0 … 1e8
 * @param runLength k, whole, 1 … 1e8
 * @returns 0..1, relative error below 1e-9 up to n = 2e6; memory 2·(k + 1) numbers, time n
 * @throws {ArgumentError} when a count is not whole or out of range
 * @source as longestRunProbability; with L = p and K = 1 − p it is that recursion
 */
export function chainLongestRunProbability(chain: FrameChain, frameCount: number, runLength: number): number {
  requireWhole("frameCount", frameCount, 0, GREATEST_TRIALS);
  requireWhole("runLength", runLength, 1, GREATEST_TRIALS);
  if (runLength > frameCount) return 0;
  const allLost = power(chain.lost, runLength);
  // Up to n = 2k no two runs fit, and the chance of one is the expected number of them.
  const expectedRuns = expectedRunsInChain(chain, frameCount, runLength);
  if (frameCount <= 2 * runLength) return Math.min(1, expectedRuns);
  // After one run U′ ≤ n·q more are expected, q the chance in the worse state that one begins: F lies between
  // U·(1 − n·q) and U.
  const [clearRun, clearRunOn, harmfulRun, harmfulRunOn] = product(chain.kept, allLost);
  const worstChance = Math.max(clearRun + clearRunOn, harmfulRun + harmfulRunOn);
  if (frameCount * worstChance < LEAST_CHANCE) return expectedRuns;
  return firstPassage(chain, allLost, frameCount, runLength);
}

/**
 * The expected number of runs of k lost frames or more among n, k ≤ n: one may begin with the first frame,
 * the others each after a kept one.
 */
export function expectedRunsInChain(chain: FrameChain, frameCount: number, runLength: number): number {
  const allLost = power(chain.lost, runLength);
  const laterRuns = total(moved(moved(chain.start, chain.kept), allLost));
  return total(moved(chain.start, allLost)) + (frameCount - runLength) * laterRuns;
}

/** Below it a second run in the event is left out. */
const LEAST_CHANCE = 1e-11;

function firstPassage(chain: FrameChain, allLost: MatrixTwo, frameCount: number, runLength: number): number {
  const [cc, ch, hc, hh] = sum(chain.lost, chain.kept);
  const [runCc, runCh, runHc, runHh] = product(chain.kept, allLost);
  // y(i) and y(i−k−1) take the same place; before k frames no run is complete and y is the long-run state.
  const clearRing = new Float64Array(runLength + 1).fill(chain.start[0]);
  const harmfulRing = new Float64Array(runLength + 1).fill(chain.start[1]);
  const first = moved(chain.start, allLost);
  let [clear, harmful] = [chain.start[0] - first[0], chain.start[1] - first[1]];
  [clearRing[runLength], harmfulRing[runLength]] = [clear, harmful];
  let probability = total(first);
  for (let frame = runLength + 1, place = 0; frame <= frameCount; frame++) {
    const [clearBefore, harmfulBefore] = [clearRing[place]!, harmfulRing[place]!];
    const clearRun = clearBefore * runCc + harmfulBefore * runHc;
    const harmfulRun = clearBefore * runCh + harmfulBefore * runHh;
    const nextClear = clear * cc + harmful * hc - clearRun;
    harmful = clear * ch + harmful * hh - harmfulRun;
    clear = nextClear;
    probability += clearRun + harmfulRun;
    clearRing[place] = clear;
    harmfulRing[place] = harmful;
    if (place++ !== runLength) continue;
    place = 0;
    if (clear + harmful < Number.EPSILON / 4) break;
  }
  return Math.min(1, probability);
}
