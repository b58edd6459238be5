import type { Interval, PlannedReceiver } from "../commissioning/index.js";
import type { Place } from "../venue/index.js";

/** What a receiver is expected to read, and what that rests on. */
export interface ReceiverForecast extends PlannedReceiver {
  readonly at: Place;
  readonly inSight: boolean;
  /** Where the spread of the local mean comes from: the room's fitted model, the model's own figure, or assumed. */
  readonly basis: "fitted" | "path-model" | "assumed";
  /** Of the local mean about the prediction, dB. */
  readonly sigmaDb: number;
  /** Of a fit; else null. */
  readonly freedomCount: number | null;
  /** The distance lies outside those walked. */
  readonly isExtrapolated: boolean;
  /** Where the fitted model puts the path loss of a reading that is averaged over fading, dB; null: not fitted. */
  readonly pathLossIntervalDb: Interval | null;
}
