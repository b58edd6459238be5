/** What people bring, all of it assumed until measured. */
export interface CrowdFigures {
  /** Handsets that are switched on, a head. */
  readonly carriedRatio: number;
  /** Share of time that one of them is on the air. */
  readonly onAirRatio: number;
  readonly handsetEirpDbm: number;
  /** Loss of a path through the audience, dB. */
  readonly bodyLossDb: number;
  /** What a floor scan misses at trim height, dB. */
  readonly scanHeightGainDb: number;
}
