/** What a channel is judged by. */
export interface ScoreTerms {
  readonly wantedDbm: number;
  readonly requiredCiDb: number;
  /** Share of time that may be worse, 0..1. */
  readonly busyShareRatio: number;
}
