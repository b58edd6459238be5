import { max, min } from "d3-array";
import { SLACK } from "../units/index.js";
import type { CheckedReadings } from "./path-loss-readings.js";

/** Why readings give no model. */
export type FitRefusalCode =
  | "too-few-readings"
  | "one-distance"
  | "short-span"
  | "mostly-not-heard"
  | "walls-not-separable"
  | "no-fit"
  | "nonsense-exponent";

/** A refusal to fit, with what to measure next. */
export interface FitRefusal {
  readonly code: FitRefusalCode;
  readonly reason: string;
  readonly next: string;
}

/** Fewer readings that were heard, for two parameters, give intervals too wide to use (assumed). */
export const LEAST_HEARD_COUNT = 6;
/** The furthest reading over the nearest, at least. */
export const LEAST_SPAN_RATIO = 3;
/** Exponents beyond these are no radio path through a building. */
export const EXPONENT_LIMITS: readonly [low: number, high: number] = [1, 6];

/** @returns why the readings can't be fitted, before anything is computed; null: they may */
export function refusalBefore(readings: CheckedReadings): FitRefusal | null {
  const heard = readings.distanceM.filter((_, index) => readings.censored[index] !== true);
  const neededCount = LEAST_HEARD_COUNT + (readings.hasWalls ? 1 : 0);
  if (heard.length < neededCount)
    return {
      code: "too-few-readings",
      reason: `${heard.length} ${heard.length === 1 ? "reading was" : "readings were"} heard; the fit needs ${neededCount}`,
      next: `take at least ${neededCount - heard.length} more, better a dozen in all, at distances from near the transmitter to the furthest fixture`,
    };
  const [nearestM, furthestM] = [min(heard)!, max(heard)!];
  const spanRatio = furthestM / nearestM;
  const next = `keep these, and read at ${tidyM(nearestM / 2)} m or less and at ${tidyM(nearestM * LEAST_SPAN_RATIO * 1.5)} m or more from the transmitter too`;
  if (nearestM === furthestM)
    return {
      code: "one-distance",
      reason: `all readings that were heard lie at ${tidyM(nearestM)} m`,
      next,
    };
  if (spanRatio < LEAST_SPAN_RATIO - SLACK)
    return {
      code: "short-span",
      reason: `${tidyM(nearestM)} to ${tidyM(furthestM)} m is a span of ${spanRatio.toFixed(1)} : 1; the fit needs ${LEAST_SPAN_RATIO} : 1`,
      next,
    };
  const notHeardCount = readings.distanceM.length - heard.length;
  if (notHeardCount <= heard.length) return null;
  return {
    code: "mostly-not-heard",
    reason: `${notHeardCount} of ${readings.distanceM.length} readings were not heard`,
    next: "read nearer the transmitter, or with its power turned up, until most readings are heard",
  };
}

/** A refusal of what came out; it never names a figure as the building's. */
export function nonsenseExponent(exponent: number): FitRefusal | null {
  const [low, high] = EXPONENT_LIMITS;
  if (exponent >= low - SLACK && exponent <= high + SLACK) return null;
  const cause =
    exponent < low
      ? "check that each level stands beside its own distance, and that near readings did not overload the receiver"
      : "check distances and units, whether walls stand between some readings, and that what was not heard is marked so";
  return {
    code: "nonsense-exponent",
    reason: `the readings give an exponent of ${exponent.toFixed(2)}, outside ${low} to ${high}`,
    next: `${cause}; then walk again with three readings at each distance`,
  };
}

/** Walls that rise in step with the distance. */
export const WALLS_NOT_SEPARABLE: FitRefusal = {
  code: "walls-not-separable",
  reason: "the number of walls follows the distance: their losses can't be told apart",
  next: "add readings at one distance with and without the wall between, or fit without the wall count",
};

/** The likelihood has no maximum. */
export const NO_FIT: FitRefusal = {
  code: "no-fit",
  reason: "the readings that were heard and those that were not contradict each other: no model fits both",
  next: "check which readings are marked as not heard, and the floor that was given for them",
};

function tidyM(distanceM: number): string {
  return String(Number(distanceM.toPrecision(2)));
}
