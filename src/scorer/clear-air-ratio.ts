import { requireFinite } from "../issues/index.js";
import { SLACK, toMw } from "../units/index.js";
import { loudestMw, statesLoudestFirst } from "./interference-distribution.js";
import type { InterferenceDistribution } from "./interference-distribution.js";
import { addIndependent, countAtOrBelow, cumulativeShares, mergedUpwards, NOTHING } from "./sums.js";
import type { Sums } from "./sums.js";
import { shareOfSumAtOrBelow } from "./two-lists.js";

/**
 * Clear air: the share of time in which interference plus noise is at or below a ceiling. Group by group,
 * loudest first, a sum that no further group can lift over the ceiling is counted clear at once and one that
 * is already over it is dropped; only what lies between stays open. Where that opens more sums than it
 * settles, the rest is summed in two sorted lists and each open sum looked up in them.
 * @param ceilingDbm wanted level − required C/I, dBm, compared with a slack of 1e-9 dB
 * @returns 0..1; exact, but where the states are too many for two lists (some 10^13, by the instance) open
 * sums that lie nearer than 1/131072 of what is still undecided are merged upwards: never optimistic, some 1e-5 low
 * @throws {ArgumentError} when the ceiling is NaN or +Infinity; −Infinity, no wanted level, has no clear air
 * @source the definition; sums over independent groups
 * @validity exact up to some 10^8 steps, beyond them never optimistic, some 1e-5 low
 * @example clearAirRatio(interferenceDistribution(-104, []), -70); // => 1
 */
export function clearAirRatio(distribution: InterferenceDistribution, ceilingDbm: number): number {
  if (ceilingDbm === -Infinity) return 0;
  requireFinite("ceilingDbm", ceilingDbm);
  const restMw = toMw(distribution.restDbm);
  const budgetMw = toMw(ceilingDbm + SLACK) - restMw;
  if (budgetMw < 0) return 0;
  const groups = statesLoudestFirst(distribution);
  const laterMw = groups.reduce((sum, group) => sum + loudestMw(group), 0);
  if (laterMw <= budgetMw) return 1;
  let at: Settling = { clear: 0, open: NOTHING, next: 0, laterMw };
  let cheapest = { ...at, work: listWork(at, groups) };
  // The last group settles all.
  while (at.open.valueMw.length > 0) {
    const nextWork = at.open.valueMw.length * groups[at.next]!.valueMw.length * SETTLING_WORK;
    if (nextWork > Math.min(cheapest.work, MOST_WORK)) {
      if (cheapest.work > MOST_WORK) at = { ...at, open: mergedOpen(at) };
      else return Math.min(1, cheapest.clear + shareThroughLists(cheapest, groups, budgetMw));
    }
    at = settle(at, groups, budgetMw);
    const work = listWork(at, groups);
    if (work < cheapest.work) cheapest = { ...at, work };
  }
  return Math.min(1, at.clear);
}

/** How far the groups have been taken in. */
interface Settling {
  /** Share of time that is clear whatever the later groups do. */
  readonly clear: number;
  /** Sums that later groups may or may not lift over the ceiling. */
  readonly open: Sums;
  /** The group to take in next. */
  readonly next: number;
  /** What all later groups can add together, mW. */
  readonly laterMw: number;
}

/** Steps, as counted below, that one answer may take: some tenths of a second. */
const MOST_WORK = 1e8;
/** Steps to take one group's state into one open sum, and to put one sum into a list. */
const SETTLING_WORK = 6;
const LISTING_WORK = 6;
/** The open sums are merged to about so many. */
const MERGED_COUNT = 131072;

function settle(at: Settling, groups: readonly Sums[], budgetMw: number): Settling {
  const group = groups[at.next]!;
  const laterMw = at.next === groups.length - 1 ? 0 : at.laterMw - loudestMw(group);
  const settledMw = budgetMw - laterMw * (1 + 1e-12);
  return {
    clear: at.clear + shareAtOrBelow(at.open, group, settledMw),
    open: addIndependent(at.open, group, settledMw, budgetMw),
    next: at.next + 1,
    laterMw,
  };
}

/** Steps to settle the rest in two lists: both are built, and walked once for every open sum. */
function listWork({ open, next }: Settling, groups: readonly Sums[]): number {
  const states = groups.slice(next).reduce((product, { valueMw }) => product * valueMw.length, 1);
  return 2 * Math.sqrt(states) * (open.valueMw.length + LISTING_WORK);
}

function mergedOpen({ open, laterMw }: Settling): Sums {
  return open.valueMw.length <= MERGED_COUNT ? open : mergedUpwards(open, laterMw / MERGED_COUNT, 0);
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

/** P(open + all later groups ≤ budget): the groups as two exact lists of about one length. */
function shareThroughLists({ open, next }: Settling, groups: readonly Sums[], budgetMw: number): number {
  const roomMw = budgetMw - open.valueMw[0]!;
  let shorter = NOTHING;
  let longer = NOTHING;
  for (const group of groups.slice(next)) {
    const grown = addIndependent(shorter, group, -Infinity, roomMw);
    [shorter, longer] = grown.valueMw.length > longer.valueMw.length ? [longer, grown] : [grown, longer];
  }
  const cumulative = cumulativeShares(longer);
  let share = 0;
  for (let index = 0; index < open.valueMw.length; index++) {
    const limitMw = budgetMw - open.valueMw[index]!;
    share += open.shareRatio[index]! * shareOfSumAtOrBelow(shorter, longer, cumulative, limitMw);
  }
  return share;
}
