import type { PathLossEstimate } from "./fit-estimate.js";
import type { FitOutlier } from "./fit-outliers.js";
import type { FitRefusal } from "./fit-refusal.js";

/**
 * What a fitted model asks to be looked at.
 * - `robust-differs`: the robust model is 3 dB or more off at the nearest or furthest reading: look at the outliers first
 * - `walls-not-fitted`: wall counts were given, but all the same: the loss of those walls is in the reference loss
 * - `negative-wall-loss`: walls seem to help: their count is doubtful
 * - `large-scatter`: σ above 10 dB: something other than distance decides the level
 * - `exponent-uncertain`: the exponent's interval is wider than 2
 */
export type FitNote =
  "robust-differs" | "walls-not-fitted" | "negative-wall-loss" | "large-scatter" | "exponent-uncertain";

/** A log-distance model fitted to readings. */
export interface FittedPathLoss extends PathLossEstimate {
  readonly refusal: null;
  /** Ordinary least squares; where readings were not heard, greatest likelihood. */
  readonly method: "least-squares" | "censored-likelihood";
  readonly referenceDistanceM: number;
  readonly confidenceRatio: number;
  /** Degrees of freedom of the intervals: readings heard less parameters. */
  readonly freedomCount: number;
  /** All readings, heard or not. */
  readonly readingCount: number;
  readonly notHeardCount: number;
  /** Nearest and furthest that were heard, m. */
  readonly distanceRangeM: readonly [nearestM: number, furthestM: number];
  /** Measured − fitted, one for each reading, dB; of one not heard the least that it can be. */
  readonly residualDb: readonly number[];
  /** Root mean square of those heard, dB. */
  readonly rmseDb: number;
  /** Huber's fit, for comparison; null where the readings lie on the model exactly. */
  readonly robust: PathLossEstimate | null;
  /** Furthest off first. */
  readonly outliers: readonly FitOutlier[];
  readonly notes: readonly FitNote[];
}

/** Readings that give no model. */
export interface RefusedPathLoss {
  readonly refusal: FitRefusal;
  readonly exponent: null;
  readonly referenceLossDb: null;
  readonly sigmaDb: null;
}

/** What a walk test gives: a model, or why not and what to measure next. */
export type PathLossFit = FittedPathLoss | RefusedPathLoss;
