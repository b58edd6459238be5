import { channelJson, channelText } from "../../report/index.js";
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
import { surveyScans } from "../survey-scans.js";
import type { SurveyOptions } from "../survey-scans.js";
import { wifiSetting } from "../wifi-options.js";
import type { WifiOptions } from "../wifi-options.js";

export type ChannelOptions = SurveyOptions & RadioOptions & LinkOptions & SiteOptions & WifiOptions;

/** The main job: which radio channel, why, and how far the link goes. */
export async function runChannel(context: Context<ChannelOptions>): Promise<ExitCode> {
  const unit = unitOf(context.options);
  const site = await siteSetting(context.options, unit, context.io);
  const setting = { ...linkSetting(context.options, unit), ...site };
  const wifi = wifiSetting(context.options);
  const radio = await loadRadio(context.options, context.io);
  const survey = await surveyScans(context, radio.profile);
  const report = channelReport(survey, radio, setting, wifi);
  const issues = [...report.issues, ...survey.issues];
  await finish(context, {
    json: () => channelJson(report),
    text: (style) => channelText(report, style),
    issues,
  });
  return exitFor(context, issues);
}
