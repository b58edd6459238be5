import { fixed, wholePercent } from "./number-format.js";
import type { SurveyReport } from "./survey-report.js";

/** What the figures of a survey rest on; what nothing shown rests on is left out. */
export function surveyAssumptions(report: SurveyReport): string[] {
  const { survey, radioWords, thresholdDbm, occupancy } = report;
  const spoilt = `Spoilt: more than ${fixed(thresholdDbm, 0)} dBm in one MHz as scanned, which the reference receiver at 20 m (66 ft) does not bear.`;
  return [
    radioWords,
    ...(occupancy.some(({ busyRatio }) => busyRatio !== null) ? [spoilt] : []),
    ...sweptAssumptions(report),
    ...(survey.emitterCount === 0 ? [] : sourceAssumptions(report)),
  ];
}

function sweptAssumptions({ occupancy, isSweptShareUpper }: SurveyReport): string[] {
  if (!occupancy.some(({ sweptBusyRatio }) => sweptBusyRatio !== null)) return [];
  const upper = isSweptShareUpper
    ? " Where passes were merged into one stretch of time, the most that its mean power allows."
    : "";
  return [
    `Busy by power sweep: the share of passes in which one MHz is spoilt, at the worst place and crowd; a pass sees a short moment, so bursts between passes are missed.${upper}`,
  ];
}

function sourceAssumptions({ survey, busyShareRatio }: SurveyReport): string[] {
  const assumedCount = survey.emitters.filter(({ airtimeAssumed }) => airtimeAssumed).length;
  return [
    `Airtime assumed ("as.") for ${assumedCount} of ${survey.emitterCount} sources, by the fullest crowd scanned; reported by the rest.`,
    "Level: the 0.9 quantile of a source's readings at its loudest place, scanning antenna 0 dBi.",
    `Over noise: in the radio channel that the source hits hardest, behind the profile's antenna and canopy, levels exceeded ${wholePercent(busyShareRatio)} of the time in pictures.`,
    "Owner presumed from the level: -75 dBm or more is the building's.",
    "Spectra are the standards' masks with the worst legal skirts; sources of one Wi-Fi channel take turns.",
  ];
}
