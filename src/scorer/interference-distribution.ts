import { ArgumentError, requireFinite } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { contributorMw } from "./contention.js";
import type { Contributor } from "./contention.js";
import type { Sums } from "./sums.js";

/**
 * Interference plus receiver noise in one receiver channel, as a distribution over time: independent
 * groups, each idle or with one of its emitters on, above a rest that is always there.
 */
export interface InterferenceDistribution {
  /** Noise and whatever is always on, dBm. */
  readonly restDbm: number;
  /** Groups, each strongest emitter first; within one group at most one emitter is on at a time. */
  readonly groups: readonly (readonly Contributor[])[];
}

/**
 * Describes what is on the air in one channel. Stations of one Wi-Fi channel that cannot hear each other
 * may overlap in truth: that limit is the model's.
 * @param restDbm noise floor plus always-on power, dBm
 * @param groups contention groups with their `onRatio` (see `takeTurns`), independent of each other
 * @throws {ArgumentError} when the rest is not finite or the shares of a group exceed one
 * @example interferenceDistribution(-104, []).groups.length; // => 0
 */
export function interferenceDistribution(
  restDbm: number,
  groups: readonly (readonly Contributor[])[],
): InterferenceDistribution {
  requireFinite("restDbm", restDbm);
  for (const group of groups) {
    const onRatio = busyRatio(group);
    if (!(onRatio <= 1 + SLACK))
      throw new ArgumentError("groups", "shares of time that sum to at most 1", onRatio);
  }
  return { restDbm, groups };
}

/** Groups as states, the one with the loudest emitter first; groups that never speak are left out. */
export function statesLoudestFirst(distribution: InterferenceDistribution): Sums[] {
  return distribution.groups
    .map(groupStates)
    .filter((states) => loudestMw(states) > 0)
    .sort((a, b) => loudestMw(b) - loudestMw(a));
}

/** @returns the highest power of a group's states, mW; 0 when it has none */
export function loudestMw({ valueMw }: Sums): number {
  return valueMw[valueMw.length - 1] ?? 0;
}

/** States of a group in rising order, idle among them, those without any time left out. */
function groupStates(group: readonly Contributor[]): Sums {
  const valueMw: number[] = [];
  const shareRatio: number[] = [];
  const idleRatio = 1 - busyRatio(group);
  if (idleRatio > LEAST_SHARE) {
    valueMw.push(0);
    shareRatio.push(idleRatio);
  }
  for (let index = group.length - 1; index >= 0; index--) {
    const contributor = group[index]!;
    if (contributor.onRatio <= 0) continue;
    const powerMw = contributorMw(contributor);
    const last = valueMw.length - 1;
    if (last >= 0 && powerMw <= valueMw[last]!) shareRatio[last] = shareRatio[last]! + contributor.onRatio;
    else {
      valueMw.push(powerMw);
      shareRatio.push(contributor.onRatio);
    }
  }
  return { valueMw: Float64Array.from(valueMw), shareRatio: Float64Array.from(shareRatio) };
}

/** A share of time below this is the noise of subtracting doubles. */
const LEAST_SHARE = 1e-15;

function busyRatio(group: readonly Contributor[]): number {
  return group.reduce((sum, { onRatio }) => sum + onRatio, 0);
}
