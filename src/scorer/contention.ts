import { SLACK, toMw } from "../units/index.js";

/** An emitter as one receiver channel hears it. */
export interface Contributor {
  readonly emitter: string;
  /** In-channel power at the receiver, dBm; -Infinity where the two don't meet. */
  readonly inChannelDbm: number;
  /** The emitter's own airtime, reported or assumed. */
  readonly airtimeRatio: number;
  readonly airtimeAssumed: boolean;
  /** Share of time in which it is the one of its contention group that is on. */
  readonly onRatio: number;
}

/** What taking turns needs to know of an emitter. */
export type Contender = Omit<Contributor, "onRatio">;

/**
 * Strongest first: by in-channel level compared to 1e-9 dB, then by name, so that nothing depends on the
 * order in which emitters were found.
 */
export function byLevel(a: Contender, b: Contender): number {
  const aKey = Math.round(a.inChannelDbm / SLACK);
  const bKey = Math.round(b.inChannelDbm / SLACK);
  if (aKey !== bKey) return bKey - aKey;
  return a.emitter < b.emitter ? -1 : a.emitter > b.emitter ? 1 : 0;
}

/**
 * Who is on, and for how long, among emitters that hear each other and take turns. The share of time in
 * which the group is at or above its k-th level is E(k) = min(1, max(U(k), A(k))): U the greatest
 * utilisation reported among the first k, A the sum of the assumed airtimes among them. Emitter k is on for
 * E(k) − E(k−1): no source lowers another's effect, and a reported airtime stays with its reporter or a
 * louder one.
 * @param contenders emitters of one primary Wi-Fi channel, any order
 * @returns the same, strongest first, with `onRatio`; they sum to E(n) ≤ 1
 * @example const access = { emitter: "a", inChannelDbm: -50, airtimeRatio: 0.3, airtimeAssumed: true };
 * takeTurns([access, { ...access, emitter: "b", inChannelDbm: -60 }]).map(({ onRatio }) => onRatio); // => [0.3, 0.3]
 */
export function takeTurns(contenders: readonly Contender[]): Contributor[] {
  let reportedRatio = 0;
  let assumedRatio = 0;
  let busyRatio = 0;
  return [...contenders].sort(byLevel).map((contender) => {
    if (contender.airtimeAssumed) assumedRatio += contender.airtimeRatio;
    else reportedRatio = Math.max(reportedRatio, contender.airtimeRatio);
    const reachedRatio = Math.min(1, Math.max(reportedRatio, assumedRatio));
    const onRatio = reachedRatio - busyRatio;
    busyRatio = reachedRatio;
    const { emitter, inChannelDbm, airtimeRatio, airtimeAssumed } = contender;
    return { emitter, inChannelDbm, airtimeRatio, airtimeAssumed, onRatio };
  });
}

/** @returns mW; 0 for -Infinity dBm */
export function contributorMw(contributor: Contender): number {
  return toMw(contributor.inChannelDbm);
}
