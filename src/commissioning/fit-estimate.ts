import { studentTTailQuantile } from "../numeric/index.js";

/** A figure's interval at the stated confidence. */
export type Interval = readonly [low: number, high: number];

/** The parameters of a log-distance model as one method gives them. */
export interface PathLossEstimate {
  /** n: the loss grows by 10·n dB per tenfold distance. */
  readonly exponent: number;
  readonly exponentInterval: Interval;
  /** Loss at the reference distance, dB. */
  readonly referenceLossDb: number;
  readonly referenceLossIntervalDb: Interval;
  /** Of one wall, dB; null where it was not fitted. */
  readonly wallLossDb: number | null;
  readonly wallLossIntervalDb: Interval | null;
  /** Standard deviation of readings about the model, dB. */
  readonly sigmaDb: number;
  /** Of reference loss, exponent and, where fitted, wall loss, in this order. */
  readonly covariance: readonly (readonly number[])[];
}

/** A fit before it is put in words: coefficients are reference loss, exponent and, where fitted, wall loss. */
export interface LinearFit {
  readonly coefficients: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly sigmaDb: number;
}

/** The estimate with its intervals: coefficient ± t·√variance. */
export function estimateOf(fit: LinearFit, freedomCount: number, confidenceRatio: number): PathLossEstimate {
  const t = studentTTailQuantile((1 - confidenceRatio) / 2, freedomCount);
  const interval = (index: number): Interval => {
    const half = t * Math.sqrt(fit.covariance[index]![index]!);
    return [fit.coefficients[index]! - half, fit.coefficients[index]! + half];
  };
  const [referenceLossDb, exponent, wallLossDb = null] = fit.coefficients;
  return {
    exponent: exponent!,
    exponentInterval: interval(1),
    referenceLossDb: referenceLossDb!,
    referenceLossIntervalDb: interval(0),
    wallLossDb,
    wallLossIntervalDb: wallLossDb === null ? null : interval(2),
    sigmaDb: fit.sigmaDb,
    covariance: fit.covariance,
  };
}
