import type { Survey } from "../scan/index.js";
import type { BusyCell } from "./busy-cells.js";
import type { ChannelChange } from "./crowd-change-lines.js";
import type { SurveyReport } from "./survey-report.js";

/** The `survey` block that several commands share. */
export function surveyBlock(survey: Survey): object {
  const { emitterCount, bssCount, hiddenCount, observationCount, rejectedCount, outOfBandCount } = survey;
  const { ignoredCount, places, fullestCrowd, evidence } = survey;
  return {
    emitterCount,
    bssCount,
    hiddenCount,
    observationCount,
    rejectedCount,
    outOfBandCount,
    ignoredCount,
    places,
    fullestCrowd,
    evidence,
  };
}

/** The power sweeps in brief; null: none was read. */
export function sweepBlock({ sweep }: Survey): object | null {
  if (sweep === null) return null;
  const channels = sweep.channels.map(({ medianDbm, p90Dbm, p99Dbm, maxDbm, ...channel }) => ({
    ...channel,
    levelDbm: { median: medianDbm, p90: p90Dbm, p99: p99Dbm, max: maxDbm },
    reason: medianDbm === null ? "no pass covers its passband, or the levels are relative" : null,
  }));
  return { ...sweep, channels };
}

/** `stillband survey --json`. */
export function surveyJson(report: SurveyReport): object {
  const { survey, occupancy, thresholdDbm, busyShareRatio, isSweptShareUpper } = report;
  const { crowds, change, changeReason, spectrograms, hits, profileName } = report;
  return {
    schema: "stillband/survey@1",
    issues: survey.issues,
    survey: surveyBlock(survey),
    sweep: sweepBlock(survey),
    emitters: survey.emitters,
    occupancy: { thresholdDbm, busyShareRatio, isSweptShareUpper, cells: occupancy.map(cellJson) },
    crowds: crowds.map((crowd) => ({
      ...crowd,
      reason: crowd.busyRatio === null ? "the levels of its scans are relative" : null,
    })),
    change: change === null ? null : { ...change, channels: change.channels.map(channelJson) },
    changeReason,
    spectrograms,
    hits: { profile: profileName, sources: hits },
  };
}

function cellJson(cell: BusyCell): object {
  return { ...cell, reason: cell.busyRatio === null ? "no scan covers it" : null };
}

function channelJson(change: ChannelChange): object {
  return { ...change, reason: change.changeDb === null ? "no scan of one of the crowds covers it" : null };
}
