import { ASSUMED_AIRTIME, buildSurvey } from "../scan/index.js";
import type { AssumedAirtime, BuildSurveyOptions, Survey } from "../scan/index.js";
import type { CommonOptions, Context } from "./context.js";
import { readScans } from "./read-scans.js";
import { badOption, filledWord, numberWord, plainNumber } from "./words.js";
import type { NumberSpec } from "./words.js";

/** The options that shape a survey. */
export interface SurveyOptions extends CommonOptions {
  readonly ignore?: readonly string[];
  readonly levelQuantile?: string;
  readonly assumeAirtime?: string;
}

const QUANTILE: NumberSpec = {
  lowest: 0,
  highest: 1,
  expected: "a quantile from 0 to 1",
  example: "0.9",
};

/** Reads a command's scans into one survey. @throws {CliError} where a file holds no usable row */
export async function surveyScans(context: Context<SurveyOptions>): Promise<Survey> {
  const shaped = surveyOptions(context.options);
  return buildSurvey(await readScans(context), shaped);
}

/** What the options say of how to survey. */
export function surveyOptions({ ignore, levelQuantile, assumeAirtime }: SurveyOptions): BuildSurveyOptions {
  return {
    ...(ignore !== undefined && { ignore: ignore.map(sourceWord) }),
    ...(levelQuantile !== undefined && {
      levelQuantile: numberWord("--level-quantile", levelQuantile, QUANTILE),
    }),
    ...(assumeAirtime !== undefined && { assumedAirtime: airtimeWord(assumeAirtime) }),
  };
}

function sourceWord(text: string): string {
  return filledWord("--ignore", text, "a network's name or an address", '"crew tablet"');
}

/** `0.1,0.25,0.5`: empty, part, full. */
function airtimeWord(text: string): AssumedAirtime {
  const ratios = text.split(",").map(plainNumber);
  const [emptyRatio = NaN, partRatio = NaN, fullRatio = NaN] = ratios;
  if (ratios.length !== 3 || !ratios.every((ratio) => ratio >= 0 && ratio <= 1))
    throw badOption("--assume-airtime", "three shares from 0 to 1: empty,part,full", text, "0.1,0.25,0.5");
  return { ...ASSUMED_AIRTIME, emptyRatio, partRatio, fullRatio };
}
