import { requireRatio } from "../issues/index.js";
import { SLACK, toDbm, toMw } from "../units/index.js";
import { contributorMw } from "./contention.js";
import { loudestMw, statesLoudestFirst } from "./interference-distribution.js";
import type { InterferenceDistribution } from "./interference-distribution.js";
import { addIndependent, countAtOrBelow, cumulativeShares, mergedUpwards, NOTHING } from "./sums.js";
import type { Sums } from "./sums.js";

/** A list of sums longer than this is merged upwards. */
const LONGEST_LIST = 8192;
/** How far one merger may move a total, as a share of it (0.0022 dB); 50 of them stay below 0.11 dB. */
const MERGE_RATIO = 5e-4;

/**
 * The level of interference plus noise that is exceeded for no more than a share of time: the smallest
 * attainable level x with P(total > x) ≤ q, compared with a slack of 1e-9; q = 0 is the loudest emitter of
 * every group.
 * @param busyShareRatio q, 0..1
 * @returns dBm; exact while the states fit two lists of 8192 sums, beyond that never below the exact level
 * and, with up to 50 groups, within 0.11 dB of it
 * @throws {ArgumentError} when q is not in 0..1
 * @example exceededLevelDbm(interferenceDistribution(-104, []), 0.01); // => -104
 */
export function exceededLevelDbm(distribution: InterferenceDistribution, busyShareRatio: number): number {
  requireRatio("busyShareRatio", busyShareRatio);
  const restMw = toMw(distribution.restDbm);
  if (busyShareRatio === 0) {
    const loudest = distribution.groups.map((group) => Math.max(0, ...group.map(contributorMw)));
    return toDbm(loudest.reduce((sum, powerMw) => sum + powerMw, restMw));
  }
  const [strong, weak] = twoLists(statesLoudestFirst(distribution), restMw);
  const tailRatio = busyShareRatio + SLACK;
  if (weak.valueMw.length > 1) return toDbm(quantileOfSumMw(strong, weak, tailRatio, restMw));
  return toDbm(restMw + weak.valueMw[0]! + quantileMw(strong, tailRatio));
}

/** Two lists whose independent sum is the whole: the strong groups exact, the weak ones merged where long. */
function twoLists(groups: readonly Sums[], restMw: number): [strong: Sums, weak: Sums] {
  const stateCount = groups.reduce((product, { valueMw }) => product * valueMw.length, 1);
  const strongCount =
    stateCount <= LONGEST_LIST / 2 ? stateCount : Math.min(LONGEST_LIST, Math.sqrt(stateCount));
  let strong = NOTHING;
  let taken = 0;
  while (taken < groups.length && strong.valueMw.length * groups[taken]!.valueMw.length <= strongCount)
    strong = addIndependent(strong, groups[taken++]!);
  let weak = NOTHING;
  for (const group of groups.slice(taken)) {
    weak = addIndependent(weak, group);
    if (weak.valueMw.length > LONGEST_LIST) weak = mergedUpwards(weak, restMw, MERGE_RATIO);
  }
  return [strong, weak];
}

/** The smallest value whose tail is light enough. */
function quantileMw(sums: Sums, tailRatio: number): number {
  let tail = 0;
  let index = sums.valueMw.length - 1;
  while (index > 0 && tail + sums.shareRatio[index]! <= tailRatio) tail += sums.shareRatio[index--]!;
  return sums.valueMw[index]!;
}

/** The smallest attainable rest + a + b with P(a + b > x) ≤ `tailRatio`: bisected, then set on the sum below. */
function quantileOfSumMw(strong: Sums, weak: Sums, tailRatio: number, restMw: number): number {
  const cumulative = cumulativeShares(weak);
  let lowMw = restMw;
  let highMw = restMw + loudestMw(strong) + loudestMw(weak);
  while (highMw > lowMw * (1 + 1e-13)) {
    const middleMw = Math.sqrt(lowMw * highMw);
    if (middleMw <= lowMw || middleMw >= highMw) break;
    if (tailOfSum(strong, weak, cumulative, middleMw - restMw) <= tailRatio) highMw = middleMw;
    else lowMw = middleMw;
  }
  return restMw + attainableAtOrBelow(strong, weak, highMw - restMw);
}

/** P(a + b > limit), in one pass: as a rises, the b that still fit fall. */
function tailOfSum(strong: Sums, weak: Sums, weakCumulative: Float64Array, limitMw: number): number {
  const all = weakCumulative[weak.valueMw.length]!;
  let fitting = weak.valueMw.length;
  let tail = 0;
  for (let index = 0; index < strong.valueMw.length; index++) {
    const roomMw = limitMw - strong.valueMw[index]!;
    while (fitting > 0 && weak.valueMw[fitting - 1]! > roomMw) fitting--;
    tail += strong.shareRatio[index]! * (all - weakCumulative[fitting]!);
  }
  return tail;
}

/** The greatest a + b ≤ limit. */
function attainableAtOrBelow(strong: Sums, weak: Sums, limitMw: number): number {
  let bestMw = 0;
  for (const strongMw of strong.valueMw) {
    const fitting = countAtOrBelow(weak.valueMw, limitMw - strongMw);
    if (fitting > 0) bestMw = Math.max(bestMw, strongMw + weak.valueMw[fitting - 1]!);
  }
  return bestMw;
}
