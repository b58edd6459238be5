import type { Issue } from "../issues/index.js";
import type { RadioProfile } from "../radio/index.js";
import { ASSUMED_AIRTIME, buildSurvey, sweepReceiverOf } from "../scan/index.js";
import type { AssumedAirtime, BuildSurveyOptions, Survey } from "../scan/index.js";
import type { CommonOptions, Context } from "./context.js";
import { CliError, EXIT } from "./exit.js";
import { mapOption } from "./map-option.js";
import { refuse } from "./outcome.js";
import { readScans } from "./read-scans.js";
import type { ReadingOptions } from "./read-scans.js";
import { badOption, numberWord } from "./words.js";

/** The options that shape a survey. */
export interface SurveyOptions extends CommonOptions {
  readonly ignore?: readonly string[];
  readonly levelQuantile?: string;
  readonly assumeAirtime?: string;
  readonly rbwKhz?: string;
}

/**
 * Reads a command's scans into one survey, power sweeps for the radio's channels.
 * @throws {CliError} where a file holds no usable row, or nothing of all that was read can be ranked by
 */
export async function surveyScans(
  context: Context<SurveyOptions>,
  schema: string,
  profile: RadioProfile,
): Promise<Survey> {
  const { options, files, io } = context;
  const { imports, failure } = await readScans(files, io, readingOptions(options, profile));
  const issues: Issue[] = imports.flatMap((scan) => [...scan.issues]);
  if (failure !== null) return refuse(context, schema, failure, issues);
  const survey = buildSurvey(imports, surveyOptions(options));
  const isSwept = survey.sweepLevels.some(({ channels }) => channels.some(({ passCount }) => passCount > 0));
  if (survey.sweep === null || survey.observationCount > 0 || isSwept) return survey;
  const message = "the power sweeps hold no level in dBm in any of the radio's channels";
  const next = "add a sweep of 2400–2500 MHz in dBm, or a Wi-Fi scan";
  return refuse(context, schema, new CliError(EXIT.badData, message, next), issues);
}

/** What the options and the radio say of how to read. */
export function readingOptions(options: SurveyOptions, profile: RadioProfile): ReadingOptions {
  const { rbwKhz } = options;
  return {
    ...mapOption(options),
    sweepReceiver: sweepReceiverOf(profile),
    ...(rbwKhz !== undefined && {
      resolutionBandwidthMhz:
        numberWord("--rbw-khz", rbwKhz, 0.001, 100_000, "a bandwidth in kHz, 0.001 to 100000") / 1000,
    }),
  };
}

/** What the options say of how to survey. */
export function surveyOptions({ ignore, levelQuantile, assumeAirtime }: SurveyOptions): BuildSurveyOptions {
  return {
    ...(ignore && { ignore }),
    ...(levelQuantile && {
      levelQuantile: numberWord("--level-quantile", levelQuantile, 0, 1, "a quantile from 0 to 1"),
    }),
    ...(assumeAirtime && { assumedAirtime: airtimeWord(assumeAirtime) }),
  };
}

/** `0.1,0.25,0.5`: empty, part, full. */
function airtimeWord(text: string): AssumedAirtime {
  const ratios = text.split(",").map(Number);
  const [emptyRatio = NaN, partRatio = NaN, fullRatio = NaN] = ratios;
  if (ratios.length !== 3 || !ratios.every((ratio) => ratio >= 0 && ratio <= 1))
    throw badOption("--assume-airtime", "three shares from 0 to 1: empty,part,full", text, "0.1,0.25,0.5");
  return { ...ASSUMED_AIRTIME, emptyRatio, partRatio, fullRatio };
}
