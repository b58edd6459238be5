import { SLACK, toMw } from "../units/index.js";
import { contributorMw } from "./contention.js";
import type { InterferenceDistribution } from "./interference-distribution.js";

/**
 * For each group, the share of time in which one of its harmful emitters is on: those that alone, with the
 * noise, take the wanted signal below the required C/I.
 * @param ceilingDbm wanted level − required C/I, dBm, compared with a slack of 1e-9 dB
 * @returns 0..1 for each group that has a harmful emitter with any airtime
 * @example harmfulShares(interferenceDistribution(-104, []), -70); // => []
 */
export function harmfulShares(distribution: InterferenceDistribution, ceilingDbm: number): number[] {
  const restMw = toMw(distribution.restDbm);
  const ceilingMw = toMw(ceilingDbm + SLACK);
  return distribution.groups
    .map((group) =>
      group
        .filter((contributor) => restMw + contributorMw(contributor) > ceilingMw)
        .reduce((sum, { onRatio }) => sum + onRatio, 0),
    )
    .filter((share) => share > 0);
}
