import { requireRatio } from "../issues/index.js";
import { SLACK, toDbm, toMw } from "../units/index.js";
import { contributorMw } from "./contention.js";
import { loudestMw, statesLoudestFirst } from "./interference-distribution.js";
import type { InterferenceDistribution } from "./interference-distribution.js";
import { addIndependent, cumulativeShares, mergedUpwards, NOTHING } from "./sums.js";
import type { Sums } from "./sums.js";
import { greatestSumAtOrBelow, shareOfSumAtOrBelow } from "./two-lists.js";

/** A list of sums longer than this is merged upwards. */
const LONGEST_LIST = 2048;
/** So few states in all are never merged, however they fall into the two lists. */
const EXACT_STATES = 262_144;
/** How far one merger may move a total, as a share of it (0.0022 dB); 50 of them stay below 0.11 dB. */
const MERGE_RATIO = 2e-4;

/**
 * The level of interference plus noise that is exceeded for no more than a share of time: the smallest
 * attainable level x with P(total > x) ≤ q, compared with a slack of 1e-9; q = 0 is the loudest emitter of
 * every group.
 * @param busyShareRatio q, 0..1
 * @returns dBm; exact up to 262,144 states and while they fit two lists of 2048 sums, beyond that never below the exact level
 * and, with up to 50 groups, within 0.09 dB of it
 * @throws {ArgumentError} when q is not in 0..1
 * @source the definition; sums over independent groups
 * @validity never optimistic; within 0.25 dB of exact where states are merged
 * @example exceededLevelDbm(interferenceDistribution(-104, []), 0.01); // => -104
 */
export function exceededLevelDbm(distribution: InterferenceDistribution, busyShareRatio: number): number {
  requireRatio("busyShareRatio", busyShareRatio);
  const restMw = toMw(distribution.restDbm);
  if (busyShareRatio === 0) {
    const loudest = distribution.groups.map((group) =>
      group.reduce((highest, contributor) => Math.max(highest, contributorMw(contributor)), 0),
    );
    return toDbm(loudest.reduce((sum, powerMw) => sum + powerMw, restMw));
  }
  const tailRatio = busyShareRatio + SLACK;
  const lists = twoLists(statesLoudestFirst(distribution), restMw, tailRatio);
  if (lists.weak.valueMw.length > 1) return toDbm(quantileOfSumMw(lists, tailRatio, restMw));
  return toDbm(restMw + lists.weak.valueMw[0]! + quantileMw(lists.strong, tailRatio));
}

/** Two lists whose independent sum is the whole: the strong groups exact, the weak ones merged where long. */
function twoLists(groups: readonly Sums[], restMw: number, tailRatio: number): TwoLists {
  const stateCount = groups.reduce((product, { valueMw }) => product * valueMw.length, 1);
  const strongCount =
    stateCount <= LONGEST_LIST / 2 ? stateCount : Math.min(LONGEST_LIST, Math.sqrt(stateCount));
  let strong = NOTHING;
  let taken = 0;
  while (taken < groups.length && strong.valueMw.length * groups[taken]!.valueMw.length <= strongCount)
    strong = addIndependent(strong, groups[taken++]!);
  // The whole exceeds its level at least as much as the strong part alone, so that is what a step is small against.
  const stepMw = MERGE_RATIO * (restMw + quantileMw(strong, tailRatio));
  let weak = NOTHING;
  let merged = false;
  for (const group of groups.slice(taken)) {
    weak = addIndependent(weak, group);
    if (weak.valueMw.length <= LONGEST_LIST || stateCount <= EXACT_STATES) continue;
    weak = mergedUpwards(weak, stepMw, MERGE_RATIO);
    merged = true;
  }
  return { strong, weak, merged };
}

interface TwoLists {
  readonly strong: Sums;
  readonly weak: Sums;
  /** Were weak sums merged upwards? */
  readonly merged: boolean;
}

/** The smallest value whose tail is light enough. */
function quantileMw(sums: Sums, tailRatio: number): number {
  let tail = 0;
  let index = sums.valueMw.length - 1;
  while (index > 0 && tail + sums.shareRatio[index]! <= tailRatio) tail += sums.shareRatio[index--]!;
  return sums.valueMw[index]!;
}

/**
 * The smallest attainable rest + a + b with P(a + b > x) ≤ `tailRatio`: bisected, then set on the greatest sum
 * below. Two sums nearer than `stepRatio` may be told as the greater.
 */
function quantileOfSumMw(lists: TwoLists, tailRatio: number, restMw: number): number {
  const { strong, weak } = lists;
  const cumulative = cumulativeShares(weak);
  const all = cumulative[weak.valueMw.length]! * cumulativeShares(strong)[strong.valueMw.length]!;
  const stepRatio = 1 + (lists.merged ? 1e-7 : 1e-13);
  const leastMw = restMw + strong.valueMw[0]! + weak.valueMw[0]!;
  // From just below the least sum to just above the greatest, so that rounding leaves neither out.
  let lowMw = leastMw * (1 - 1e-12);
  let highMw = (restMw + loudestMw(strong) + loudestMw(weak)) * (1 + 1e-12);
  while (highMw > lowMw * stepRatio) {
    const middleMw = Math.sqrt(lowMw * highMw);
    if (middleMw <= lowMw || middleMw >= highMw) break;
    if (all - shareOfSumAtOrBelow(strong, weak, cumulative, middleMw - restMw) <= tailRatio)
      highMw = middleMw;
    else lowMw = middleMw;
  }
  return Math.max(leastMw, restMw + greatestSumAtOrBelow(strong, weak, highMw - restMw));
}
