import type { FittedPathLoss } from "../commissioning/index.js";
import { unusableWords } from "./fit-words.js";
import type { FitReport } from "./fit-report.js";

/** `stillband fit --json`: numbers are not rounded, null comes with a reason. */
export function fitJson(report: FitReport): object {
  const { fit, readings, walk, leftOut, profile, model } = report;
  return {
    schema: "stillband/fit@1",
    issues: report.issues,
    readings: {
      source: readings.source,
      rowCount: readings.rowCount,
      usedCount: walk.readings.length,
      heardCount: walk.censored.filter((censored) => !censored).length,
      notHeardCount: walk.censored.filter(Boolean).length,
      rejectedCount: readings.rejectedCount,
      unusable: walk.unusable.map((each) => ({ line: each.line, reason: unusableWords(each) })),
      leftOutLines: leftOut.map(({ line }) => line),
    },
    radio: {
      profile: profile.name,
      generic: profile.generic,
      losslessDbm: report.losslessDbm,
      enclosureCounted: report.countsEnclosure,
      floorDbm: report.floorDbm,
    },
    refusal: fit.refusal,
    fit: fit.refusal === null ? fitBlock(report, fit) : null,
    predictions: report.predictions,
    model,
    modelReason: model === null ? (fit.refusal?.reason ?? null) : null,
    modelFile: report.modelPath,
  };
}

function fitBlock({ walk, heardOnly }: FitReport, fit: FittedPathLoss): object {
  const { residualDb, outliers, ...rest } = fit;
  return {
    ...rest,
    heardOnly:
      heardOnly === null
        ? null
        : {
            exponent: heardOnly.exponent,
            referenceLossDb: heardOnly.referenceLossDb,
            sigmaDb: heardOnly.sigmaDb,
          },
    outliers: outliers.map(({ readingIndex, ...outlier }) => ({
      line: walk.readings[readingIndex]!.line,
      ...outlier,
    })),
    readings: walk.readings.map(({ line, receiver, transmitter, receivedDbm, floorDbm }, index) => ({
      ...{ line, receiver, transmitter, receivedDbm, floorDbm },
      distanceM: walk.distanceM[index],
      lossDb: walk.lossDb[index],
      heard: walk.censored[index] !== true,
      residualDb: residualDb[index],
    })),
  };
}
