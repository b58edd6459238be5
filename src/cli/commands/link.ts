import { linkJson, linkText } from "../../report/index.js";
import { buildSurvey } from "../../scan/index.js";
import { channelReport } from "../channel-report.js";
import { finish, unitOf } from "../context.js";
import type { Context } from "../context.js";
import type { ExitCode } from "../exit.js";
import { linkSetting } from "../link-options.js";
import type { LinkOptions } from "../link-options.js";
import { loadRadio } from "../load-profile.js";
import type { RadioOptions } from "../load-profile.js";
import { exitFor } from "../outcome.js";
import { siteSetting } from "../site-options.js";
import type { SiteOptions } from "../site-options.js";
import { surveyOptions, surveyScans } from "../survey-scans.js";
import type { SurveyOptions } from "../survey-scans.js";
import { badOption } from "../words.js";
import { refuseStrangeOptions } from "../link-operand-options.js";

export type LinkCommandOptions = SurveyOptions &
  RadioOptions &
  LinkOptions &
  SiteOptions & { readonly channel?: string };

/** The link budget by distance: against a scan's interference or, without one, against noise alone. */
export async function runLink(context: Context<LinkCommandOptions>): Promise<ExitCode> {
  refuseStrangeOptions(context, false);
  const { options, files, io } = context;
  const unit = unitOf(options);
  const setting = { ...linkSetting(options, unit), ...(await siteSetting(options, unit, io)) };
  const radio = await loadRadio(options, io);
  const scanned = files.length > 0;
  const survey = scanned
    ? await surveyScans(context, radio.profile)
    : buildSurvey([], surveyOptions(options));
  const numbers = radio.profile.channels.map(({ channel }) => channel);
  const linkChannel =
    channelWord(options.channel, numbers) ?? (scanned ? undefined : numbers[Math.floor(numbers.length / 2)]);
  const report = channelReport(survey, radio, {
    ...setting,
    ...(linkChannel !== undefined && { linkChannel }),
  });
  const issues = [...report.issues, ...survey.issues];
  await finish(context, {
    json: () => linkJson(report, scanned),
    text: (style) => linkText(report, scanned, style),
    issues,
  });
  return exitFor(context, issues);
}

function channelWord(text: string | undefined, numbers: readonly number[]): number | undefined {
  if (text === undefined) return undefined;
  if (!/^\d+$/.test(text) || !numbers.includes(Number(text)))
    throw badOption(
      "--channel",
      `a radio channel of the profile, ${numbers[0]} to ${numbers[numbers.length - 1]}`,
      text,
      String(numbers[0]),
    );
  return Number(text);
}
