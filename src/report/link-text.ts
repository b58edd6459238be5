import { assumptionLines, RADIO_CAUTIONS } from "./assumptions.js";
import { radioChannelWords } from "./channel-glance.js";
import type { ChannelReport } from "./channel-report.js";
import { profileBlock, receiverBlock, linkBlock } from "./channel-json.js";
import { frameLines } from "./frame-lines.js";
import { linkGlance, linkLines } from "./link-lines.js";
import { chosenLengths } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets, section } from "./section.js";
import { rowsLine, sourcesLine } from "./survey-lines.js";
import { surveyBlock } from "./survey-json.js";

/** `stillband link` for a terminal. @param scanned false: no scan was read, so noise alone stands against the link */
export function linkText(report: ChannelReport, scanned: boolean, style: TextStyle): string {
  const { plan, survey } = report;
  const channel = plan.link.channel;
  const where = channel === null ? "median of the hop set" : radioChannelWords(plan, channel);
  const against = scanned ? "with the scanned interference" : "against noise alone: no scan was read";
  const parts = [
    linkGlance(plan, `${where}, ${against}`, style.units).map(
      (line) => style.pen.strong(line.slice(0, 9)) + line.slice(9),
    ),
    section("Link by distance", style, linkLines(plan, style)),
    section(
      `Frames at ${chosenLengths(plan.setting.distanceM, style.units)}`,
      style,
      frameLines(plan, style),
    ),
    section("Assumed", style, bullets(assumptionLines(report, style.units, scanned), style)),
    ...(scanned ? [section("Scans", style, bullets([sourcesLine(survey), rowsLine(survey)], style))] : []),
    section("Cautions", style, bullets(RADIO_CAUTIONS, style)),
  ];
  return `${parts.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

/** `stillband link --json`. */
export function linkJson(report: ChannelReport, scanned: boolean): object {
  const { plan, survey, issues } = report;
  return {
    schema: "stillband/link@1",
    issues: [...issues, ...survey.issues],
    survey: scanned ? surveyBlock(survey) : null,
    profile: profileBlock(plan),
    receiver: receiverBlock(report),
    link: linkBlock(plan),
    frames: plan.frames,
  };
}
