import { censoredRegression, dot, huberRegression, leastSquares } from "../numeric/index.js";
import type { LinearFit } from "./fit-estimate.js";
import type { CheckedReadings } from "./path-loss-readings.js";

/** Below this the readings lie on the model but for rounding, dB. */
const EXACT_DB = 1e-6;

/** One row for each reading: 1, 10·log10(d/d₀) and, where it varies, the wall count. */
export function designOf(readings: CheckedReadings): number[][] {
  const { distanceM, referenceDistanceM, wallCount, hasWalls } = readings;
  return distanceM.map((each, index) => [
    1,
    10 * Math.log10(each / referenceDistanceM),
    ...(hasWalls ? [wallCount[index]!] : []),
  ]);
}

/** Ordinary least squares over the readings that were heard; null where the columns depend on each other. */
export function leastSquaresFit(design: readonly number[][], readings: CheckedReadings): LinearFit | null {
  const isHeard = (_: unknown, index: number): boolean => readings.censored[index] !== true;
  const fit = leastSquares(design.filter(isHeard), readings.lossDb.filter(isHeard));
  if (fit === null) return null;
  const freedom = fit.residuals.length - fit.coefficients.length;
  const variance = dot(fit.residuals, fit.residuals) / freedom;
  const covariance = fit.unscaledCovariance.map((row) => row.map((each) => each * variance));
  return { coefficients: fit.coefficients, covariance, sigmaDb: Math.sqrt(variance) };
}

/**
 * Greatest likelihood with the readings that were not heard as such; variances enlarged by n/(n − p), as least
 * squares does. Where what was heard lies on a model exactly, and the rest agrees, it is that model.
 * @param heard what least squares makes of the readings that were heard
 */
export function censoredFit(
  design: readonly number[][],
  readings: CheckedReadings,
  heard: LinearFit,
): LinearFit | null {
  const { lossDb, censored } = readings;
  if (heard.sigmaDb < EXACT_DB) {
    const agrees = design.every(
      (row, index) => censored[index] !== true || dot(row, heard.coefficients) > lossDb[index]! - EXACT_DB,
    );
    if (agrees) return heard;
  }
  const fit = censoredRegression(design, lossDb, censored);
  if (fit === null) return null;
  const enlarged = design.length / (design.length - fit.coefficients.length);
  const covariance = fit.covariance.map((row) => row.map((each) => each * enlarged));
  return { coefficients: fit.coefficients, covariance, sigmaDb: fit.sigma * Math.sqrt(enlarged) };
}

/** Huber's fit with its residuals; null where there is none. */
export function robustFit(
  design: readonly number[][],
  readings: CheckedReadings,
): (LinearFit & { readonly residualDb: readonly number[] }) | null {
  const fit = huberRegression(design, readings.lossDb, readings.censored);
  if (fit === null || fit.sigma < EXACT_DB) return null;
  const { coefficients, covariance, sigma, residuals } = fit;
  return { coefficients, covariance, sigmaDb: sigma, residualDb: residuals };
}
