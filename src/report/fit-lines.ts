import type { FittedPathLoss, PathLossEstimate } from "../commissioning/index.js";
import {
  confidenceWords,
  halfWidth,
  NOTE_WORDS,
  outlierWords,
  readingName,
  unusableWords,
} from "./fit-words.js";
import type { FitReport } from "./fit-report.js";
import { distanceCell, fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets } from "./section.js";
import { residualPlot } from "./residual-plot.js";
import type { TableColumn } from "./text-layout.js";
import { tableLines, wrapped } from "./text-layout.js";

const right = (head: string): TableColumn => ({ head, align: "right" });
const left = (head: string): TableColumn => ({ head, align: "left" });

/** The fit beside the robust one, and beside what dropping the unheard would have given. */
export function methodLines({ heardOnly }: FitReport, fit: FittedPathLoss, style: TextStyle): string[] {
  const { robust } = fit;
  const used = heardOnly === null && fit.method === "least-squares" ? "least squares" : "with the unheard";
  const rows = [
    estimateRow(`${used}, used`, fit),
    ...(heardOnly === null ? [] : [estimateRow("least squares, heard only", heardOnly)]),
    ...(robust === null ? [] : [estimateRow("robust (Huber)", robust)]),
  ];
  const columns = [left("fit"), ...["exponent", "±", "dB at 1 m", "±", "dB a wall", "sigma dB"].map(right)];
  const how = [
    `± is the ${confidenceWords(fit)} interval, ${fit.freedomCount} degrees of freedom.`,
    ...(robust === null ? ["No robust fit: the readings lie on the model exactly."] : []),
    ...(heardOnly === null
      ? []
      : ["What was not heard counts as more loss than the floor allows, never as a level."]),
  ];
  return [
    ...tableLines(columns, rows, style.columnCount),
    ...wrapped(how.join(" "), style.columnCount),
    ...bullets(
      fit.notes.map((note) => NOTE_WORDS[note]),
      style,
    ),
  ];
}

function estimateRow(name: string, estimate: PathLossEstimate): string[] {
  return [
    name,
    fixed(estimate.exponent, 2),
    fixed(halfWidth(estimate.exponentInterval), 2),
    fixed(estimate.referenceLossDb, 1),
    fixed(halfWidth(estimate.referenceLossIntervalDb), 1),
    estimate.wallLossDb === null ? "-" : fixed(estimate.wallLossDb, 1),
    fixed(estimate.sigmaDb, 1),
  ];
}

/** What the model expects along the way. */
export function predictionLines(report: FitReport, fit: FittedPathLoss, style: TextStyle): string[] {
  const rows = report.predictions.map(
    ({ distanceM, lossDb, intervalDb, modelSigmaDb, isExtrapolated, ...rest }) => [
      distanceCell(distanceM, style.units),
      fixed(lossDb, 1),
      fixed(report.losslessDbm - lossDb, 1),
      `±${fixed(halfWidth(intervalDb), 1)}`,
      fixed(modelSigmaDb, 1),
      fixed(rest.defaultLossDb, 1),
      isExtrapolated ? "#" : "",
    ],
  );
  const share = `${confidenceWords(fit)} of readings`;
  const heads = ["distance", "path dB", "rx dBm", share, "model's error", "default dB"];
  return [
    ...tableLines([...heads.map(right), left("")], rows, style.columnCount),
    ...wrapped(
      `rx dBm as on the walk; error: one sigma, dB; default: ${report.defaultWords}.`,
      style.columnCount,
    ),
    ...(report.predictions.some(({ isExtrapolated }) => isExtrapolated)
      ? ["# outside the distances where readings were heard."]
      : []),
  ];
}

/** Readings that the others speak against, furthest off first. */
export function outlierLines({ walk }: FitReport, fit: FittedPathLoss, style: TextStyle): string[] {
  if (fit.outliers.length === 0)
    return wrapped(
      "None: no reading is further off the robust fit than one in twenty clean walks would have.",
      style.columnCount,
    );
  const rows = fit.outliers.map((outlier) => {
    const reading = walk.readings[outlier.readingIndex]!;
    return [
      readingName(reading),
      distanceCell(walk.distanceM[outlier.readingIndex]!, style.units),
      reading.receivedDbm === null ? "-" : fixed(reading.receivedDbm, 1),
      outlierWords(outlier),
    ];
  });
  const lines = fit.outliers.map(({ readingIndex }) => walk.readings[readingIndex]!.line).join(",");
  return [
    ...tableLines(
      [left("reading"), right("distance"), right("rx dBm"), left("against the robust fit")],
      rows,
      style.columnCount,
    ),
    ...wrapped(
      `Named from ${fixed(fit.outliers[0]!.limitDb, 1)} dB off. All are in the fit: read them again, or leave out what you know to be wrong with --ignore-line ${lines}.`,
      style.columnCount,
    ),
  ];
}

/** Measured less fitted, drawn. */
export function plotLines({ walk }: FitReport, fit: FittedPathLoss, style: TextStyle): string[] {
  const named = new Set(fit.outliers.map(({ readingIndex }) => readingIndex));
  const points = walk.distanceM.map((distanceM, index) => ({
    distanceM,
    residualDb: fit.residualDb[index]!,
    mark: named.has(index) ? ("#" as const) : walk.censored[index] === true ? ("^" as const) : ("o" as const),
  }));
  const unheard = walk.censored.some(Boolean) ? "; ^ not heard: there or above" : "";
  return [
    ...residualPlot(points, style.units, Math.min(style.columnCount, 80)),
    ...wrapped(`Up is more loss, dB. o a reading${unheard}; # outlier.`, style.columnCount),
  ];
}

/** Readings that could not be used, and why; the reader's own issues tell of rejected rows. */
export function unusableLines({ walk }: FitReport, style: TextStyle): string[] {
  const shown = walk.unusable
    .slice(0, MOST_UNUSABLE)
    .map((each) => `${readingName(each)}: ${unusableWords(each)}.`);
  const more = walk.unusable.length - shown.length;
  return bullets([...shown, ...(more > 0 ? [`and ${more} more.`] : [])], style);
}

const MOST_UNUSABLE = 12;
