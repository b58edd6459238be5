import type { Issue } from "../issues/index.js";
import { ASSUMED_AIRTIME, buildSurvey } from "../scan/index.js";
import type { AssumedAirtime, BuildSurveyOptions, Survey } from "../scan/index.js";
import type { CommonOptions, Context } from "./context.js";
import { refuse } from "./outcome.js";
import { readScans } from "./read-scans.js";
import { badOption, numberWord } from "./words.js";

/** The options that shape a survey. */
export interface SurveyOptions extends CommonOptions {
  readonly ignore?: readonly string[];
  readonly levelQuantile?: string;
  readonly assumeAirtime?: string;
}

/** Reads a command's scans into one survey. @throws {CliError} where a file holds no usable row */
export async function surveyScans(context: Context<SurveyOptions>, schema: string): Promise<Survey> {
  const { options, files, io } = context;
  const { imports, failure } = await readScans(files, io);
  if (failure !== null) {
    const issues: Issue[] = imports.flatMap((scan) => [...scan.issues]);
    return refuse(context, schema, failure, issues);
  }
  return buildSurvey(imports, surveyOptions(options));
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
