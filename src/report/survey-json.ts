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

/** `stillband survey --json`. */
export function surveyJson(report: SurveyReport): object {
  const { survey, occupancy, thresholdDbm, busyShareRatio, crowds, hits, profileName } = report;
  return {
    schema: "stillband/survey@1",
    issues: survey.issues,
    survey: surveyBlock(survey),
    emitters: survey.emitters,
    occupancy: { thresholdDbm, busyShareRatio, cells: occupancy },
    crowds,
    hits: { profile: profileName, sources: hits },
  };
}
