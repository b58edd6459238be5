import { max, min } from "d3-array";
import { dot } from "../numeric/index.js";
import { estimateOf } from "./fit-estimate.js";
import type { LinearFit, PathLossEstimate } from "./fit-estimate.js";
import { censoredFit, designOf, leastSquaresFit, robustFit } from "./fit-methods.js";
import { fitOutliers } from "./fit-outliers.js";
import { NO_FIT, nonsenseExponent, refusalBefore, WALLS_NOT_SEPARABLE } from "./fit-refusal.js";
import type { FitRefusal } from "./fit-refusal.js";
import { checkedReadings } from "./path-loss-readings.js";
import type { CheckedReadings, PathLossReadings } from "./path-loss-readings.js";
import type { FitNote, FittedPathLoss, PathLossFit } from "./path-loss-fit.js";

/**
 * Log-distance model of a building from readings: L = L₀ + 10·n·log10(d/d₀) + walls·w, with intervals by
 * Student's t. Ordinary least squares; readings that were not heard enter by their likelihood, as losses above a
 * limit, never as levels. Beside it a robust fit, by which outliers are told.
 * @returns the model, or a refusal with the reason and what to measure next: fewer than 6 readings heard (7 with
 *   walls), all at one distance, a span below 3 : 1, more than half not heard, walls that follow the distance, an
 *   exponent outside 1 … 6
 * @throws {ArgumentError} when lists differ in length, a distance is not finite and > 0, a loss not finite, a wall
 *   count not finite and ≥ 0, or the confidence not from 0.5 to 0.9999
 * @source T. S. Rappaport, Wireless Communications, ch. 4 (the model); J. Tobin, Econometrica 26 (1958) 24–36
 *   (censored readings); P. J. Huber, Robust Statistics (1981) (the robust fit)
 * @validity the distances walked, this building, this crowd; readings are averages over small-scale fading
 * @example fitPathLoss({ distanceM: [1, 2, 4, 8, 16, 32], lossDb: [40, 49, 58, 67, 76, 85] }).exponent; // => 2.9897352853986263
 * @example fitPathLoss({ distanceM: [4, 5, 6, 7, 8, 9], lossDb: [50, 52, 54, 55, 56, 57] }).refusal.code; // => "short-span"
 */
export function fitPathLoss(readings: PathLossReadings): PathLossFit {
  const checked = checkedReadings(readings);
  const before = refusalBefore(checked);
  if (before !== null) return refused(before);
  const design = designOf(checked);
  const heard = leastSquaresFit(design, checked);
  if (heard === null) return refused(WALLS_NOT_SEPARABLE);
  const isCensored = checked.censored.some(Boolean);
  const fit = isCensored ? censoredFit(design, checked, heard) : heard;
  if (fit === null) return refused(NO_FIT);
  const nonsense = nonsenseExponent(fit.coefficients[1]!);
  if (nonsense !== null) return refused(nonsense);
  const sameWalls = readings.wallCount !== undefined && !checked.hasWalls;
  return fitted(checked, design, fit, sameWalls ? ["walls-not-fitted"] : []);
}

function refused(refusal: FitRefusal): PathLossFit {
  return { refusal, exponent: null, referenceLossDb: null, sigmaDb: null };
}

function fitted(
  readings: CheckedReadings,
  design: readonly number[][],
  fit: LinearFit,
  known: readonly FitNote[],
): FittedPathLoss {
  const { censored, lossDb, confidenceRatio, referenceDistanceM } = readings;
  const isHeard = (_: unknown, index: number): boolean => censored[index] !== true;
  const heardM = readings.distanceM.filter(isHeard);
  const freedomCount = heardM.length - fit.coefficients.length;
  const estimate = estimateOf(fit, freedomCount, confidenceRatio);
  const residualDb = design.map((row, index) => lossDb[index]! - dot(row, fit.coefficients));
  const heardDb = residualDb.filter(isHeard);
  const bulk = robustFit(design, readings);
  const robust = bulk === null ? null : estimateOf(bulk, freedomCount, confidenceRatio);
  const outliers = bulk === null ? [] : fitOutliers(bulk.residualDb, censored, bulk.sigmaDb, freedomCount);
  return {
    refusal: null,
    method: heardM.length < design.length ? "censored-likelihood" : "least-squares",
    ...estimate,
    referenceDistanceM,
    confidenceRatio,
    freedomCount,
    readingCount: design.length,
    notHeardCount: design.length - heardM.length,
    distanceRangeM: [min(heardM)!, max(heardM)!],
    residualDb,
    rmseDb: Math.sqrt(dot(heardDb, heardDb) / heardDb.length),
    robust,
    outliers: [...outliers].sort((a, b) => Math.abs(b.residualDb) - Math.abs(a.residualDb)),
    notes: [...known, ...notesOn(estimate, robust, design)],
  };
}

function notesOn(
  estimate: PathLossEstimate,
  robust: PathLossEstimate | null,
  designed: readonly number[][],
): FitNote[] {
  const notes: FitNote[] = [];
  const [low, high] = estimate.exponentInterval;
  if (
    robust !== null &&
    designed.some((row) => Math.abs(lossAt(row, robust) - lossAt(row, estimate)) >= DIFFERS_DB)
  )
    notes.push("robust-differs");
  if (estimate.wallLossDb !== null && estimate.wallLossDb < 0) notes.push("negative-wall-loss");
  if (estimate.sigmaDb > LARGE_SCATTER_DB) notes.push("large-scatter");
  if (high - low > WIDE_EXPONENT) notes.push("exponent-uncertain");
  return notes;
}

function lossAt([, decades]: readonly number[], { referenceLossDb, exponent }: PathLossEstimate): number {
  return referenceLossDb + exponent * decades!;
}

const DIFFERS_DB = 3; // assumed
const LARGE_SCATTER_DB = 10; // common practice, no source
const WIDE_EXPONENT = 2; // assumed: at 3 ± 1 a tenfold distance may cost 20 dB or 40
