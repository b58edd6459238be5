import type { RadioProfile } from "../radio/index.js";
import { ASSUMED_AIRTIME, buildSurvey, sweepReceiverOf } from "../scan/index.js";
import type { AssumedAirtime, BuildSurveyOptions, Survey } from "../scan/index.js";
import type { CommonOptions, Context } from "./context.js";
import { CliError, EXIT } from "./exit.js";
import { mapOption } from "./map-option.js";
import { readScans } from "./read-scans.js";
import type { ReadingOptions } from "./read-scans.js";
import { badOption, filledWord, numberWord, plainNumber } from "./words.js";
import type { NumberSpec } from "./words.js";

/** The options that shape a survey. */
export interface SurveyOptions extends CommonOptions {
  readonly ignore?: readonly string[];
  readonly buildingWifi?: readonly string[];
  readonly neighbourWifi?: readonly string[];
  readonly levelQuantile?: string;
  readonly assumeAirtime?: string;
  readonly rbwKhz?: string;
}

const QUANTILE: NumberSpec = {
  lowest: 0,
  highest: 1,
  expected: "a quantile from 0 to 1",
  example: "0.9",
};

const BANDWIDTH: NumberSpec = {
  lowest: 0.001,
  highest: 100_000,
  expected: "a bandwidth in kHz, 0.001 to 100000",
  example: "100",
};

/**
 * Reads a command's scans into one survey, power sweeps for the radio's channels.
 * @throws {CliError} where a file holds no usable row, or nothing of all that was read can be ranked by
 */
export async function surveyScans(context: Context<SurveyOptions>, profile: RadioProfile): Promise<Survey> {
  const shaped = surveyOptions(context.options);
  const imports = await readScans(context, readingOptions(context.options, profile));
  const survey = buildSurvey(imports, shaped);
  const isSwept = survey.sweepLevels.some(({ channels }) => channels.some(({ passCount }) => passCount > 0));
  if (survey.sweep === null || survey.observationCount > 0 || isSwept) return survey;
  throw new CliError(
    EXIT.badData,
    "the power sweeps hold no level in dBm in any of the radio's channels",
    "add a sweep of 2400–2500 MHz in dBm, or a Wi-Fi scan",
    imports.flatMap(({ issues }) => [...issues]),
  );
}

/** What the options and the radio say of how to read. */
export function readingOptions(options: SurveyOptions, profile: RadioProfile): ReadingOptions {
  const { rbwKhz } = options;
  return {
    ...mapOption(options),
    sweepReceiver: sweepReceiverOf(profile),
    ...(rbwKhz !== undefined && {
      resolutionBandwidthMhz: numberWord("--rbw-khz", rbwKhz, BANDWIDTH) / 1000,
    }),
  };
}

/** What the options say of how to survey. */
export function surveyOptions(options: SurveyOptions): BuildSurveyOptions {
  const { ignore, buildingWifi, neighbourWifi, levelQuantile, assumeAirtime } = options;
  return {
    ...(ignore !== undefined && { ignore: ignore.map(sourceWord("--ignore", "crew tablet")) }),
    ...(buildingWifi !== undefined && {
      building: buildingWifi.map(sourceWord("--building-wifi", "Hall Guest")),
    }),
    ...(neighbourWifi !== undefined && {
      neighbour: neighbourWifi.map(sourceWord("--neighbour-wifi", "upstairs")),
    }),
    ...(levelQuantile !== undefined && {
      levelQuantile: numberWord("--level-quantile", levelQuantile, QUANTILE),
    }),
    ...(assumeAirtime !== undefined && { assumedAirtime: airtimeWord(assumeAirtime) }),
  };
}

function sourceWord(flag: string, example: string): (text: string) => string {
  return (text) => filledWord(flag, text, "a network's name or an address", `"${example}"`);
}

/** `0.1,0.25,0.5`: empty, part, full. */
function airtimeWord(text: string): AssumedAirtime {
  const ratios = text.split(",").map(plainNumber);
  const [emptyRatio = NaN, partRatio = NaN, fullRatio = NaN] = ratios;
  if (ratios.length !== 3 || !ratios.every((ratio) => ratio >= 0 && ratio <= 1))
    throw badOption("--assume-airtime", "three shares from 0 to 1: empty,part,full", text, "0.1,0.25,0.5");
  return { ...ASSUMED_AIRTIME, emptyRatio, partRatio, fullRatio };
}
