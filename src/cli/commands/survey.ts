import { surveyJson, surveyText } from "../../report/index.js";
import { finish } from "../context.js";
import type { Context } from "../context.js";
import type { ExitCode } from "../exit.js";
import { expandFiles } from "../expand-files.js";
import { loadRadio } from "../load-profile.js";
import type { RadioOptions } from "../load-profile.js";
import { exitFor } from "../outcome.js";
import { readScans } from "../read-scans.js";
import { readingOptions, surveyOptions } from "../survey-scans.js";
import type { SurveyOptions } from "../survey-scans.js";
import { surveyReport } from "../survey-report.js";

/** What is on the band, and how far the evidence can be trusted. */
export async function runSurvey(context: Context<SurveyOptions & RadioOptions>): Promise<ExitCode> {
  const { profile, bandMhz } = await loadRadio(context.options, context.io);
  const shaped = surveyOptions(context.options);
  const files = await expandFiles(context.files);
  const imports = await readScans({ ...context, files }, readingOptions(context.options, profile));
  const report = surveyReport(imports, shaped, profile, bandMhz ?? undefined);
  const { issues } = report.survey;
  await finish(context, {
    json: () => surveyJson(report),
    text: (style) => surveyText(report, style),
    issues,
  });
  return exitFor(context, issues);
}
