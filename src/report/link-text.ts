import { assumptionLines, RADIO_CAUTIONS } from "./assumptions.js";
import { framesBlock, jobBlock } from "./audience-json.js";
import { whenWords } from "./audience-words.js";
import { radioChannelWords } from "./channel-glance.js";
import type { ChannelReport } from "./channel-report.js";
import { budgetLines } from "./budget-lines.js";
import { profileBlock, receiverBlock } from "./channel-json.js";
import { linkBlock, practiceBlock } from "./link-block.js";
import { linkGlance, linkLines } from "./link-lines.js";
import { lookLines } from "./look-lines.js";
import { chosenLengths } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { PRACTICE_TITLE, practiceLines } from "./practice-lines.js";
import { regulationBlock } from "./regulation-json.js";
import { regulationSection } from "./regulation-lines.js";
import { bullets, opening, pageText, section } from "./section.js";
import { rowsLine, sourcesLine } from "./survey-lines.js";
import { surveyBlock } from "./survey-json.js";
import { warningSection } from "./warning-lines.js";

/** `stillband link` for a terminal. @param scanned false: no scan was read, so noise alone stands against the link */
export function linkText(report: ChannelReport, scanned: boolean, style: TextStyle): string {
  const { plan, survey } = report;
  const channel = plan.link.channel;
  const where = channel === null ? "median of the hop set" : radioChannelWords(plan, channel);
  const against = scanned ? "with the scanned interference" : "against noise alone: no scan was read";
  const when = scanned ? whenWords(survey) : "noise alone";
  const parts = [
    opening(linkGlance(plan, `${where}, ${against}`, when, style.units), style),
    ...warningSection(report, style),
    section("Link by distance", style, linkLines(report, style)),
    section(
      `Budget at ${chosenLengths(plan.setting.distanceM, style.units)}`,
      style,
      budgetLines(report, style),
    ),
    section(
      `What the audience sees at ${chosenLengths(plan.setting.distanceM, style.units)}`,
      style,
      lookLines(plan, style),
    ),
    ...regulationSection(report.regulation, style),
    section(PRACTICE_TITLE, style, practiceLines(plan.practice, style)),
    section("Assumed", style, bullets(assumptionLines(report, style.units, scanned), style)),
    ...(scanned ? [section("Scans", style, bullets([sourcesLine(survey), rowsLine(survey)], style))] : []),
    section("Cautions", style, bullets(RADIO_CAUTIONS, style)),
  ];
  return pageText(parts);
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
    regulation: regulationBlock(report.regulation),
    link: linkBlock(report),
    practice: practiceBlock(plan.practice),
    frames: framesBlock(plan),
    ...jobBlock(plan),
  };
}
