/** A contention group, each item of it on for a share of time and at most one at once. */
export type StateGroup = readonly { readonly inChannelDbm: number; readonly onRatio: number }[];

/** One joint state of all groups: the total level and its share of time. */
export interface JointState {
  readonly totalDbm: number;
  readonly shareRatio: number;
}

/** The number of joint states, idle ones included. */
export function jointStateCount(groups: readonly StateGroup[]): number {
  return groups.reduce((product, group) => product * (group.length + 1), 1);
}

/** Every joint state by plain enumeration: nothing merged, nothing left out but what never happens. */
export function enumerateStates(restDbm: number, groups: readonly StateGroup[]): JointState[] {
  let states: [powerMw: number, shareRatio: number][] = [[10 ** (restDbm / 10), 1]];
  for (const group of groups) {
    const idleRatio = 1 - group.reduce((sum, { onRatio }) => sum + onRatio, 0);
    const turns: [number, number][] = [
      [0, Math.max(0, idleRatio)],
      ...group.map(({ inChannelDbm, onRatio }): [number, number] => [10 ** (inChannelDbm / 10), onRatio]),
    ];
    states = states.flatMap(([powerMw, shareRatio]) =>
      turns
        // An idle share below 1e-15 is the noise of subtracting; an emitter's own share, however small, is one.
        .filter(([, turnRatio], turn) => turnRatio > (turn === 0 ? 1e-15 : 0))
        .map(([turnMw, turnRatio]): [number, number] => [powerMw + turnMw, shareRatio * turnRatio]),
    );
  }
  return states.map(([powerMw, shareRatio]) => ({ totalDbm: 10 * Math.log10(powerMw), shareRatio }));
}

/** All sums of some groups' states, idle included, and their shares of time: every combination, unsorted. */
export function everySum(groups: readonly StateGroup[]): [powerMw: number, shareRatio: number][] {
  return groups.reduce<[number, number][]>(
    (sums, group) => {
      const idleRatio = 1 - group.reduce((sum, { onRatio }) => sum + onRatio, 0);
      const states = group.map(({ inChannelDbm, onRatio }) => [10 ** (inChannelDbm / 10), onRatio] as const);
      return sums.flatMap(([powerMw, shareRatio]) =>
        [[0, idleRatio] as const, ...states].map(([stateMw, ratio]): [number, number] => [
          powerMw + stateMw,
          shareRatio * ratio,
        ]),
      );
    },
    [[0, 1]],
  );
}

/**
 * P(total ≤ ceiling) of more states than a list could hold: the groups' sums in two halves, every pair compared.
 * @param halves what `everySum` gives for some of the groups and for the others
 */
export function pairShareAtOrBelow(
  restDbm: number,
  [some, others]: readonly [ReturnType<typeof everySum>, ReturnType<typeof everySum>],
  ceilingDbm: number,
): number {
  const ceilingMw = 10 ** ((ceilingDbm + 1e-9) / 10) - 10 ** (restDbm / 10);
  const someMw = Float64Array.from(some, ([powerMw]) => powerMw);
  let total = 0;
  for (const [otherMw, otherRatio] of others)
    for (let index = 0; index < someMw.length; index++)
      if (someMw[index]! + otherMw <= ceilingMw) total += otherRatio * some[index]![1];
  return total;
}

/** P(total ≤ ceiling), the ceiling with 1e-9 dB of slack. */
export function shareAtOrBelow(states: readonly JointState[], ceilingDbm: number): number {
  return states.reduce(
    (sum, { totalDbm, shareRatio }) => sum + (totalDbm <= ceilingDbm + 1e-9 ? shareRatio : 0),
    0,
  );
}

/** The smallest attainable x with P(total > x) ≤ q, both compared with 1e-9 of slack. */
export function quantileDbm(states: readonly JointState[], busyShareRatio: number): number {
  const rising = [...states].sort((a, b) => a.totalDbm - b.totalDbm);
  let above = 0;
  let index = rising.length - 1;
  while (index > 0 && above + rising[index]!.shareRatio <= busyShareRatio + 1e-9)
    above += rising[index--]!.shareRatio;
  return rising[index]!.totalDbm;
}
