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
        .filter(([, turnRatio]) => turnRatio > 1e-15)
        .map(([turnMw, turnRatio]): [number, number] => [powerMw + turnMw, shareRatio * turnRatio]),
    );
  }
  return states.map(([powerMw, shareRatio]) => ({ totalDbm: 10 * Math.log10(powerMw), shareRatio }));
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
