import { ArgumentError, requirePositive } from "../issues/index.js";
import { PATH_MODEL_SCHEMA } from "../propagation/index.js";
import type { LogDistanceModel } from "../propagation/index.js";
import type { FittedPathLoss } from "./path-loss-fit.js";
import type { PathLossReadings } from "./path-loss-readings.js";

/** A fitted model as it is kept: usable wherever a log-distance model is, and it knows how far it can be trusted. */
export interface PathModelRecord extends LogDistanceModel {
  readonly schema: typeof PATH_MODEL_SCHEMA;
  readonly referenceDistanceM: number;
  readonly sigmaDb: number;
  /** Of one wall, dB; null where it was not fitted. */
  readonly wallLossDb: number | null;
  /** Where the readings were heard, m. */
  readonly distanceRangeM: readonly [nearestM: number, furthestM: number];
  readonly readingCount: number;
  readonly notHeardCount: number;
  /** Degrees of freedom of its intervals. */
  readonly freedomCount: number;
  /** Of reference loss, exponent and, where fitted, wall loss, in this order. */
  readonly covariance: readonly (readonly number[])[];
  /** At which it was walked, MHz; null where not stated. */
  readonly frequencyMhz: number | null;
  /** What the model leaves over at each reading; not given: the file has not kept it. */
  readonly residuals?: readonly PathModelResidual[] | undefined;
}

/** One reading against the model. */
export interface PathModelResidual {
  readonly distanceM: number;
  /** Measured − fitted, dB; of a reading not heard the least that it can be. */
  readonly residualDb: number;
  readonly heard: boolean;
}

/**
 * The model file of a fit.
 * @param options frequencyMhz: at which was walked; readings: those of the fit, whose residuals are kept
 * @throws {ArgumentError} when the frequency is not finite and > 0, or the readings are not as many as the fit's
 * @example pathModelRecord(fitPathLoss({ distanceM: [1, 2, 4, 8, 16, 32], lossDb: [40, 49, 58, 67, 76, 85] })).kind; // => "log-distance"
 */
export function pathModelRecord(
  fit: FittedPathLoss,
  options: { readonly frequencyMhz?: number; readonly readings?: PathLossReadings } = {},
): PathModelRecord {
  const { frequencyMhz, readings } = options;
  if (frequencyMhz !== undefined) requirePositive("frequencyMhz", frequencyMhz);
  return {
    schema: PATH_MODEL_SCHEMA,
    kind: "log-distance",
    exponent: fit.exponent,
    referenceLossDb: fit.referenceLossDb,
    referenceDistanceM: fit.referenceDistanceM,
    sigmaDb: fit.sigmaDb,
    wallLossDb: fit.wallLossDb,
    distanceRangeM: fit.distanceRangeM,
    readingCount: fit.readingCount,
    notHeardCount: fit.notHeardCount,
    freedomCount: fit.freedomCount,
    covariance: fit.covariance,
    frequencyMhz: frequencyMhz ?? null,
    ...(readings !== undefined && { residuals: residualsOf(fit, readings) }),
  };
}

function residualsOf(
  { residualDb }: FittedPathLoss,
  { distanceM, censored }: PathLossReadings,
): PathModelResidual[] {
  if (distanceM.length !== residualDb.length)
    throw new ArgumentError("readings", `the fit's ${residualDb.length}`, distanceM.length);
  return distanceM.map((each, index) => ({
    distanceM: each,
    residualDb: residualDb[index]!,
    heard: censored?.[index] !== true,
  }));
}
