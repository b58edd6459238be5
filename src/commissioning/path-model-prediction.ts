import { ArgumentError, requireNonNegative, requirePositive } from "../issues/index.js";
import { dot, studentTTailQuantile } from "../numeric/index.js";
import type { Interval } from "./fit-estimate.js";
import { requireConfidence } from "./path-loss-readings.js";
import type { PathModelRecord } from "./path-model-record.js";

/** What a fitted model expects of one new reading. */
export interface PathPrediction {
  readonly lossDb: number;
  /** Where a new reading will lie, dB: the model's own uncertainty and the scatter about it. */
  readonly intervalDb: Interval;
  /** Standard deviation of a new reading about `lossDb`, dB. */
  readonly sigmaDb: number;
  /** Standard error of `lossDb` itself, dB. */
  readonly modelSigmaDb: number;
  /** The distance lies outside those walked. */
  readonly isExtrapolated: boolean;
}

/**
 * The loss that a fitted model expects at a distance, with the prediction interval of a new reading there:
 * L ± t·√(σ² + xᵀ·C·x), x = (1, 10·log10(d/d₀), walls).
 * @param distanceM 3-D antenna separation, m, > 0
 * @param options wallCount, ≥ 0, 0 unless given; confidenceRatio 0.5 … 0.9999, 0.95 unless given
 * @throws {ArgumentError} when an argument is out of range, or walls are named that the model has no loss for
 * @source N. R. Draper, H. Smith, Applied Regression Analysis, ch. 3 (textbook form)
 * @validity the distances walked; beyond them `isExtrapolated`, and the interval grows
 * @example
 * const fit = fitPathLoss({ distanceM: [1, 2, 4, 8, 16, 32], lossDb: [40, 49, 58, 67, 76, 85] });
 * pathModelPredictionDb(pathModelRecord(fit), 10).lossDb; // => 69.89735285398626
 */
export function pathModelPredictionDb(
  model: PathModelRecord,
  distanceM: number,
  options: { readonly wallCount?: number; readonly confidenceRatio?: number } = {},
): PathPrediction {
  const { wallCount = 0, confidenceRatio = 0.95 } = options;
  requirePositive("distanceM", distanceM);
  requireNonNegative("wallCount", wallCount);
  requireConfidence(confidenceRatio);
  if (wallCount > 0 && model.wallLossDb === null)
    throw new ArgumentError("wallCount", "0, for the model was fitted without walls", wallCount);
  const place = [1, 10 * Math.log10(distanceM / model.referenceDistanceM)];
  const parameters = [model.referenceLossDb, model.exponent];
  if (model.wallLossDb !== null) {
    place.push(wallCount);
    parameters.push(model.wallLossDb);
  }
  const variance = dot(
    place,
    model.covariance.map((row) => dot(row, place)),
  );
  const modelSigmaDb = Math.sqrt(Math.max(0, variance));
  const sigmaDb = Math.hypot(model.sigmaDb, modelSigmaDb);
  const lossDb = dot(place, parameters);
  const half = sigmaDb * studentTTailQuantile((1 - confidenceRatio) / 2, model.freedomCount);
  const [nearestM, furthestM] = model.distanceRangeM;
  return {
    lossDb,
    intervalDb: [lossDb - half, lossDb + half],
    sigmaDb,
    modelSigmaDb,
    isExtrapolated: distanceM < nearestM || distanceM > furthestM,
  };
}
