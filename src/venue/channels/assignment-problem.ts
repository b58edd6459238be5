/**
 * Systems that share one band, each to be given one of its channels. Every array is indexed by system; a channel is
 * the index of its own system's list, from 0. For an assignment a the load of system r is
 * `baseMw[r][a_r] + Σ_{o≠r} couplingMw[r][o] · overlap[|a_r − a_o|]`, its interference margin
 * `wantedDbm[r] − 10·log10(load) − requiredCiDb[r]`, its value `min(capDb[r], margin) − allowanceDb[r]`.
 */
export interface AssignmentProblem {
  /** Local-mean level of each system's own signal at its weakest receiver, dBm. */
  readonly wantedDbm: readonly number[];
  readonly requiredCiDb: readonly number[];
  /** [system][channel] everything from outside the plan (noise, Wi-Fi, hop sets by their mean), mW, > 0. */
  readonly baseMw: readonly (readonly number[])[];
  /** [receiving system][other system] what the other puts into it on one and the same channel, mW, ≥ 0. */
  readonly couplingMw: readonly (readonly number[])[];
  /** [distance in channels] share of the coupling that is left; 0…1 as a rule, any number ≥ 0 is taken. */
  readonly overlap: readonly number[];
  /** No value counts for more than this: the sensitivity margin, say; Infinity where nothing caps. None by default. */
  readonly capDb?: readonly number[] | undefined;
  /** Taken off each value: the fade allowance, say. 0 by default. */
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
