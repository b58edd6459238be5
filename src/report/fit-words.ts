import type { FitNote, FitOutlier, FittedPathLoss, WalkReading } from "../commissioning/index.js";
import { printable } from "../issues/index.js";
import { fixed } from "./number-format.js";
import type { FitReport } from "./fit-report.js";

/** What each note asks to be looked at. */
export const NOTE_WORDS: Readonly<Record<FitNote, string>> = {
  "robust-differs": "the robust fit differs by 3 dB or more: look at the outliers before you use the model",
  "walls-not-fitted": "every reading passed as many walls: their loss is in the loss at 1 m",
  "negative-wall-loss": "walls seem to help: check the wall counts, or fit --without-walls",
  "large-scatter": "sigma above 10 dB: something other than distance decides the level",
  "exponent-uncertain": "the exponent's interval is wider than 2: take more readings, nearer and further",
};

/** Half of an interval that lies evenly about its figure. @example halfWidth([2, 3]); // => 0.5 */
export function halfWidth([low, high]: readonly [number, number]): number {
  return (high - low) / 2;
}

/** `95 %`. */
export function confidenceWords({ confidenceRatio }: FittedPathLoss): string {
  return `${Number((confidenceRatio * 100).toPrecision(6))} %`;
}

/** A reading by its line, with the receiver that it names. */
export function readingName({ line, receiver }: WalkReading): string {
  return receiver === null ? `line ${line}` : `line ${line} (${printable(receiver, 24)})`;
}

/** How far off, and which way. */
export function outlierWords({ kind, residualDb }: FitOutlier): string {
  const size = `${fixed(Math.abs(residualDb), 0)} dB`;
  if (kind === "not-heard") return `not heard, ${size} or more too weak`;
  return kind === "more-loss" ? `${size} too weak` : `${size} too strong`;
}

/** Why a reading could not be used. */
export function unusableWords(reading: WalkReading): string {
  return reading.receivedDbm === null && reading.floorDbm === null
    ? "not heard, and nothing tells the level that it stayed below"
    : "neither a distance nor a position with a known transmitter";
}

/** Rows in and what became of them. */
export function rowsWords({ readings, walk, leftOut }: FitReport): string {
  const parts = [
    `${walk.readings.length} used`,
    `${readings.rejectedCount} rejected`,
    ...(walk.unusable.length > 0 ? [`${walk.unusable.length} without a distance or a level`] : []),
    ...(leftOut.length > 0 ? [`${leftOut.length} left out by option`] : []),
  ];
  return `${readings.rowCount} in = ${parts.join(" + ")}`;
}
