import type { StateGroup } from "./brute-force.js";

/** Distribution of a sum on an even grid of powers: `share[i]` belongs to `i · stepMw`. */
interface GridDistribution {
  readonly stepMw: number;
  readonly share: Float64Array;
}

/** Lower and upper bound of the level exceeded for no more than a share of time. */
export interface LevelBounds {
  readonly lowDbm: number;
  readonly highDbm: number;
}

/**
 * Bounds by dynamic programming over a fine even grid of powers: every state rounded down gives the one, every
 * state rounded up the other. The true level lies between.
 */
export function levelBounds(
  restDbm: number,
  groups: readonly StateGroup[],
  busyShareRatio: number,
  cellCount: number,
): LevelBounds {
  const loudestMw = groups.reduce(
    (sum, group) => sum + Math.max(0, ...group.map(({ inChannelDbm }) => 10 ** (inChannelDbm / 10))),
    0,
  );
  const stepMw = loudestMw / cellCount;
  const restMw = 10 ** (restDbm / 10);
  const [lowMw, highMw] = [Math.floor, Math.ceil].map(
    (round) =>
      restMw + quantileMw(gridSum(groups, stepMw, cellCount + groups.length + 1, round), busyShareRatio),
  );
  return { lowDbm: 10 * Math.log10(lowMw!), highDbm: 10 * Math.log10(highMw!) };
}

/** Lower and upper bound of P(rest + sum ≤ ceiling) on the same grid. */
export function clearBounds(
  restDbm: number,
  groups: readonly StateGroup[],
  ceilingDbm: number,
  cellCount: number,
): { readonly low: number; readonly high: number } {
  const budgetMw = 10 ** (ceilingDbm / 10) - 10 ** (restDbm / 10);
  const stepMw = budgetMw / cellCount;
  const shareUpTo = ({ share }: GridDistribution): number =>
    share.subarray(0, cellCount + 1).reduce((sum, value) => sum + value, 0);
  const bound = (round: (value: number) => number): number =>
    shareUpTo(gridSum(groups, stepMw, cellCount + 1, round));
  return { low: bound(Math.ceil), high: bound(Math.floor) };
}

function gridSum(
  groups: readonly StateGroup[],
  stepMw: number,
  length: number,
  round: (value: number) => number,
): GridDistribution {
  let share = new Float64Array(length);
  share[0] = 1;
  for (const group of groups) {
    const next = new Float64Array(length);
    const idleRatio = 1 - group.reduce((sum, { onRatio }) => sum + onRatio, 0);
    const turns: [cells: number, turnRatio: number][] = [
      [0, Math.max(0, idleRatio)],
      ...group.map(({ inChannelDbm, onRatio }): [number, number] => [
        round(10 ** (inChannelDbm / 10) / stepMw),
        onRatio,
      ]),
    ];
    for (const [cells, turnRatio] of turns)
      for (let index = 0; turnRatio > 0 && index + cells < length; index++)
        next[index + cells] = next[index + cells]! + share[index]! * turnRatio;
    share = next;
  }
  return { stepMw, share };
}

function quantileMw({ stepMw, share }: GridDistribution, busyShareRatio: number): number {
  let above = 0;
  let index = share.length - 1;
  while (index > 0 && above + share[index]! <= busyShareRatio) above += share[index--]!;
  return index * stepMw;
}
