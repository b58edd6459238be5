import { requireFinite } from "../issues/index.js";
import { SLACK, toMw } from "../units/index.js";
import { loudestMw, statesLoudestFirst } from "./interference-distribution.js";
import type { InterferenceDistribution } from "./interference-distribution.js";
import { addIndependent, countAtOrBelow, cumulativeShares, mergedUpwards, NOTHING } from "./sums.js";
import type { Sums } from "./sums.js";

/** Beyond so many undecided sums they are merged upwards by 1e-7 of themselves: never optimistic. */
const MOST_OPEN = 1_000_000;

/**
 * Clear air: the share of time in which interference plus noise is at or below a ceiling, exact. Group by
 * group, loudest first, a sum that no further group can lift over the ceiling is counted clear at once and
 * one that is already over it is dropped; only what lies between is carried on.
 * @param ceilingDbm wanted level − required C/I, dBm, compared with a slack of 1e-9 dB
 * @returns 0..1
 * @throws {ArgumentError} when the ceiling is not finite
 * @example clearAirRatio(interferenceDistribution(-104, []), -70); // => 1
 */
export function clearAirRatio(distribution: InterferenceDistribution, ceilingDbm: number): number {
  requireFinite("ceilingDbm", ceilingDbm);
  const restMw = toMw(distribution.restDbm);
  const budgetMw = toMw(ceilingDbm + SLACK) - restMw;
  if (budgetMw < 0) return 0;
  const groups = statesLoudestFirst(distribution);
  let laterMw = groups.reduce((sum, group) => sum + loudestMw(group), 0);
  if (laterMw <= budgetMw) return 1;
  let clear = 0;
  let open = NOTHING;
  for (const [index, group] of groups.entries()) {
    laterMw = index === groups.length - 1 ? 0 : laterMw - loudestMw(group);
    const settledMw = budgetMw - laterMw * (1 + 1e-12);
    clear += shareAtOrBelow(open, group, settledMw);
    open = addIndependent(open, group, settledMw, budgetMw);
    if (open.valueMw.length > MOST_OPEN) open = mergedUpwards(open, restMw, 1e-7);
  }
  return Math.min(1, clear);
}

/** P(a + state ≤ limit). */
function shareAtOrBelow(sums: Sums, states: Sums, limitMw: number): number {
  const cumulative = cumulativeShares(sums);
  let share = 0;
  for (let index = 0; index < states.valueMw.length; index++) {
    const fitting = countAtOrBelow(sums.valueMw, limitMw - states.valueMw[index]!);
    share += states.shareRatio[index]! * cumulative[fitting]!;
  }
  return share;
}
