import type { Survey } from "../scan/index.js";
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
  const { survey, occupancy, thresholdDbm, busyShareRatio, crowds, hits, profileName } = report;
  return {
    schema: "stillband/survey@1",
    issues: survey.issues,
    survey: surveyBlock(survey),
    sweep: sweepBlock(survey),
    emitters: survey.emitters,
    occupancy: { thresholdDbm, busyShareRatio, cells: occupancy },
    crowds,
    hits: { profile: profileName, sources: hits },
  };
}
