import type { FittedPathLoss } from "../commissioning/index.js";
import { printable } from "../issues/index.js";
import { mToFeet } from "../units/index.js";
import { confidenceWords, halfWidth, NOTE_WORDS, outlierWords } from "./fit-words.js";
import type { DistancePrediction, FitReport } from "./fit-report.js";
import { glanceLine } from "./link-lines.js";
import { chosenLengths, fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import { columnsOf, wrapped } from "./text-layout.js";

/** Columns that a line of the opening block leaves for its words. */
const ROOM = 70;
const MOST_LINES = 8;

/** The answer in at most eight lines: the model, or why there is none and what to measure next. */
export function fitGlance(report: FitReport, unit: LengthUnit): string[] {
  const { fit, reference } = report;
  const words: readonly (readonly [label: string, words: string])[] =
    fit.refusal !== null
      ? [
          ["Model", `NONE: ${fit.refusal.reason}`],
          ["Next", fit.refusal.next],
          ["Readings", countWords(report, unit)],
        ]
      : [
          ["Model", modelWords(fit)],
          ["Readings", countWords(report, unit)],
          ["Predicts", reference === null ? "nothing" : predictionWords(fit, reference, unit)],
          ["Before", reference === null ? "not compared" : defaultWords(reference, unit)],
          ["Look at", outliersWords(report, fit)],
          ["Next", nextWords(report, fit)],
        ];
  const lines = words.flatMap(([label, text]) =>
    wrapped(text, ROOM).map((line, index) => glanceLine(index === 0 ? label : "", line)),
  );
  return lines.slice(0, MOST_LINES);
}

function modelWords(fit: FittedPathLoss): string {
  const exponent = `exponent ${fixed(fit.exponent, 2)} ± ${fixed(halfWidth(fit.exponentInterval), 2)}`;
  const loss = `${fixed(fit.referenceLossDb, 1)} ± ${fixed(halfWidth(fit.referenceLossIntervalDb), 1)} dB`;
  const wall = fit.wallLossDb === null ? "" : `, ${fixed(fit.wallLossDb, 1)} dB a wall`;
  return `${exponent}, ${loss} at ${fit.referenceDistanceM} m${wall}, sigma ${fixed(fit.sigmaDb, 1)} dB`;
}

function countWords({ readings, walk, leftOut }: FitReport, unit: LengthUnit): string {
  const heardM = walk.distanceM.filter((_, index) => walk.censored[index] !== true);
  const notHeardCount = walk.readings.length - heardM.length;
  const span = heardM.length === 0 ? "" : ` from ${spanWords(heardM, unit)}`;
  const others = readings.rejectedCount + walk.unusable.length + leftOut.length;
  return `${walk.readings.length} used: ${heardM.length} heard${span}, ${notHeardCount} not heard; ${others} not used`;
}

function spanWords(distancesM: readonly number[], unit: LengthUnit): string {
  const inUnit = (m: number): string => fixed(unit === "m" ? m : mToFeet(m), 0);
  return `${inUnit(Math.min(...distancesM))} to ${inUnit(Math.max(...distancesM))} ${unit}`;
}

function predictionWords(
  fit: FittedPathLoss,
  { intervalDb, distanceM }: DistancePrediction,
  unit: LengthUnit,
): string {
  const half = Math.ceil(halfWidth(intervalDb));
  return `${confidenceWords(fit)} of new readings within ±${half} dB at ${chosenLengths(distanceM, unit)}`;
}

function defaultWords({ lossDb, defaultLossDb, distanceM }: DistancePrediction, unit: LengthUnit): string {
  const moreDb = Math.round(lossDb - defaultLossDb);
  const fault =
    moreDb === 0 ? "right to 1 dB" : `${Math.abs(moreDb)} dB too ${moreDb > 0 ? "kind" : "strict"}`;
  return `plans without it (indoor:22) were ${fault} at ${chosenLengths(distanceM, unit)}`;
}

function outliersWords({ walk }: FitReport, { outliers }: FittedPathLoss): string {
  if (outliers.length === 0) return "no reading that the others speak against";
  const words = outliers.map(
    (each) => `line ${walk.readings[each.readingIndex]!.line}: ${outlierWords(each)}`,
  );
  for (let count = words.length; count > 1; count--) {
    const more = count < words.length ? ` and ${words.length - count} more` : "";
    const text = `${words.slice(0, count).join("; ")}${more}`;
    if (columnsOf(text) <= ROOM) return text;
  }
  return `${words[0]}${words.length > 1 ? ` and ${words.length - 1} more` : ""}`;
}

function nextWords({ modelPath }: FitReport, { notes }: FittedPathLoss): string {
  const [note] = notes;
  if (note !== undefined) return NOTE_WORDS[note];
  return modelPath === null
    ? "write the model with -o model.json; then link --path-model model.json"
    : `stillband link --path-model ${printable(modelPath, 38)}`;
}
