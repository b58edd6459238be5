import { crowdLine } from "./crowd-line.js";
import { exactPercent, fixed } from "./number-format.js";
import { venueCautions } from "./venue-cautions.js";
import type { VerifiedReadings, VerifyReport } from "./verify-report.js";

/** What the verdict rests on, one statement a line. */
export function verifyAssumptions(report: VerifyReport): string[] {
  const { venue, crowd, readings, band, terms, words, watch } = report;
  const generic = venue.systems.some(({ profile }) => profile.generic);
  return [
    ...(generic ? ["Radio: generic figures; enter your radio's own (the venue file's profile or set)."] : []),
    ...(readings === null ? [] : readingsLines(readings, words)),
    ...(band === null
      ? []
      : [
          `Fails: interference margin less the fade allowance for ${exactPercent(terms.reliability)} of positions below 0; interference is the level exceeded ${exactPercent(terms.busyShareRatio)} of the time. Worst legal skirts of the Wi-Fi masks; scanning antenna 0 dBi.`,
          "Fresh scans count as made from the floor, unless the survey's scans of the same file or place give a height. Airtime is compared only where both scans report it; a level from 6 dB on (common practice, no source).",
          crowdLine(venue.crowd, crowd),
        ]),
    ...(watch === null
      ? []
      : [
          "The series: each UTC day's scans by themselves, dated by their rows, else by the file. Drift: least squares, Student's t.",
        ]),
    "Radio channel numbers are the profile's own; Wi-Fi rules for 12 and 13 do not apply to them.",
  ];
}

function readingsLines(readings: VerifiedReadings, words: VerifyReport["words"]): string[] {
  const { predictedBy, confidenceRatio, floorDbm, isFloorAssumed, forecasts, comparison } = readings;
  const readCount = comparison.receivers.filter(({ readingCount }) => readingCount > 0).length;
  const outside = readCount * (1 - confidenceRatio);
  const share = exactPercent(confidenceRatio);
  return [
    predictedBy === "plan"
      ? "Predicted: by the plan file, as its inputs, its assumptions or the program are not the same now."
      : `Predicted: local mean with nobody in the audience. ${spreadWords(forecasts)} A spot's fading on top: ${words.fade}; Rayleigh where the transmitter is hidden.`,
    `Interval: ${predictedBy === "plan" ? "the plan file's" : share} of single readings at one spot; of ${readCount} receivers ${fixed(outside, 1)} lie outside by chance alone. The median of several readings, moved half a metre about, lies closer. Power, antennas, canopy and walls are taken as stated: an error there moves a whole room.`,
    `Not heard: below ${floorDbm} dBm where the row names no floor${isFloorAssumed ? " (the radio's sensitivity; --not-heard-below says it)" : ""}.`,
    "A room is off from 3 dB on where the interval of its mean leaves 0 out; from 10 dB under its neighbours an antenna is suspect, from 20 dB a loose one likelier than a null (common practice, no source).",
  ];
}

const SPREADS = {
  fitted: "by the room's fitted model",
  "path-model": "as the path model names it",
  assumed: "assumed, that of ITU-R P.1238-11 for an office (no walk was fitted)",
} as const;

function spreadWords(forecasts: VerifiedReadings["forecasts"]): string {
  const kinds = (["fitted", "path-model", "assumed"] as const).flatMap((kind) => {
    const sigmas = forecasts.flatMap(({ basis, sigmaDb }) =>
      basis === kind && sigmaDb !== null ? [sigmaDb] : [],
    );
    if (sigmas.length === 0) return [];
    const [low, high] = [fixed(Math.min(...sigmas), 1), fixed(Math.max(...sigmas), 1)];
    return [`${low === high ? low : `${low} to ${high}`} dB ${SPREADS[kind]} (${sigmas.length} receivers)`];
  });
  const far = forecasts.filter(({ isExtrapolated }) => isExtrapolated).length;
  return `Its sigma: ${kinds.join("; ")}.${far === 0 ? "" : ` ${far} lie at distances that were not walked.`}`;
}

/** Whoever puts right what failed, climbs and opens canopies. */
export function verifyCautions({ venue, readings }: VerifyReport): string[] {
  return [
    ...venueCautions(venue),
    ...(readings === null
      ? []
      : [
          "Before a canopy is opened: circuit dead, locked off and tested dead, by a licensed electrician to local code. Lift or tower by its own rules, nobody beneath; safety bonds stay on.",
        ]),
  ];
}
