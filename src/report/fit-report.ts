import type {
  FittedPathLoss,
  PathLossFit,
  PathModelRecord,
  PathPrediction,
  ReadingsImport,
  WalkLosses,
  WalkReading,
} from "../commissioning/index.js";
import type { Issue } from "../issues/index.js";
import type { RadioProfile } from "../radio/index.js";

/** What a fitted model expects at a distance. */
export interface DistancePrediction extends PathPrediction {
  readonly distanceM: number;
  /** Loss of the model that plans rest on without a fit, dB. */
  readonly defaultLossDb: number;
}

/** All that `fit` tells, in whatever form. */
export interface FitReport {
  readonly readings: ReadingsImport;
  readonly walk: WalkLosses;
  /** Readings that options took out: rows named, or another transmitter's. */
  readonly leftOut: readonly WalkReading[];
  readonly fit: PathLossFit;
  /** Least squares over the readings that were heard, where others were not; null: all were, or it is refused. */
  readonly heardOnly: FittedPathLoss | null;
  /** Null where the fit is refused. */
  readonly model: PathModelRecord | null;
  /** At the reference distance that the opening block names; null where the fit is refused. */
  readonly reference: DistancePrediction | null;
  /** Nearest first; empty where the fit is refused. */
  readonly predictions: readonly DistancePrediction[];
  readonly profile: RadioProfile;
  /** The level that a path of 0 dB would give, dBm. */
  readonly losslessDbm: number;
  /** Does the profile's enclosure stand in it? */
  readonly countsEnclosure: boolean;
  /** Level below which nothing is heard, as an option said, dBm; null: by the rows, else the lowest heard. */
  readonly floorDbm: number | null;
  /** The model that plans rest on without a fit, in words. */
  readonly defaultWords: string;
  /** Where the model was written; null: nowhere. */
  readonly modelPath: string | null;
  readonly issues: readonly Issue[];
}
