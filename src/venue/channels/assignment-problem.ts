/**
 * Systems that share one band, each to be given one of its channels. A system is judged at its receivers: one row
 * each, or one row a system where `systemOf` isn't given. A channel is the index of its own system's list, from 0.
 * For an assignment a the load of row k, of system r, is
 * `baseMw[k][a_r] + Σ_{o≠r} couplingMw[k][o] · overlap[|a_r − a_o|]`, its interference margin
 * `wantedDbm[k] − 10·log10(load) − requiredCiDb[k]`, its value `min(capDb[k], margin) − allowanceDb[k]`. The value of
 * a system is the least of its rows'.
 */
export interface AssignmentProblem {
  /** [row] local-mean level of the system's own signal at the receiver, dBm. */
  readonly wantedDbm: readonly number[];
  /** [row] */
  readonly requiredCiDb: readonly number[];
  /** [row][channel] everything from outside the plan (noise, Wi-Fi, hop sets by their mean), mW, > 0. */
  readonly baseMw: readonly (readonly number[])[];
  /** [row][other system] what the other puts into it on one and the same channel, mW, ≥ 0; its own isn't looked at. */
  readonly couplingMw: readonly (readonly number[])[];
  /** [distance in channels] share of the coupling that is left; 0…1 as a rule, any number ≥ 0 is taken. */
  readonly overlap: readonly number[];
  /** [row] the system that it belongs to, 0 … systems − 1, each with at least one; one row a system by default. */
  readonly systemOf?: readonly number[] | undefined;
  /** [row] no value counts for more than this: the sensitivity margin, say; Infinity where nothing caps. None by default. */
  readonly capDb?: readonly number[] | undefined;
  /** [row] taken off each value: the fade allowance, say. 0 by default. */
  readonly allowanceDb?: readonly number[] | undefined;
  /** [system] the channels that it may use; undefined: all of them. */
  readonly allowedChannels?: readonly (readonly number[] | undefined)[] | undefined;
  /** [system] the channel that it has and keeps; undefined: free. */
  readonly fixedChannels?: readonly (number | undefined)[] | undefined;
  /** For systems of differing profiles, instead of `overlap`: the share of o's coupling on its oChannel at r's rChannel. */
  readonly overlapOf?: OverlapOf | undefined;
}

/** Share of the coupling of system o on its channel that reaches system r on its own, ≥ 0. */
export type OverlapOf = (rIndex: number, rChannel: number, oIndex: number, oChannel: number) => number;
