import { evidenceSection } from "./evidence-section.js";
import type { WifiPlan } from "../venue/index.js";
import { assumptionLines, RADIO_CAUTIONS } from "./assumptions.js";
import { bandPicture } from "./band-picture.js";
import { channelGlance, holds, radioChannelWords } from "./channel-glance.js";
import type { ChannelReport } from "./channel-report.js";
import { rankingTable, sourcesTable } from "./channel-tables.js";
import { chosenLengths, exactPercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { linkLines } from "./link-lines.js";
import { lookLines } from "./look-lines.js";
import { hopSetLines } from "./hop-set-lines.js";
import { PRACTICE_TITLE, practiceLines } from "./practice-lines.js";
import { regulationSection } from "./regulation-lines.js";
import { bullets, opening, pageText, section } from "./section.js";
import { wifiMovesLines } from "./wifi-moves-lines.js";
import { wifiNeighbourLines } from "./wifi-neighbour-lines.js";
import { wifiRequestLines } from "./wifi-request-lines.js";
import { warningSection } from "./warning-lines.js";

/** The main job's answer for a terminal: what to do first, then why, then what it rests on. */
export function channelText(report: ChannelReport, style: TextStyle): string {
  const { plan, survey, band, wifi } = report;
  const { setting } = plan;
  const share = exactPercent(setting.busyShareRatio);
  const where = chosenLengths(setting.distanceM, style.units);
  const parts = [
    opening(channelGlance(report, style.units), style),
    section(`What reaches our receiver, dB above its noise (exceeded ${share} of the time)`, style, [
      ...bandPicture(band, plan, style),
      ...(plan.link.channel === null ? [] : [`Above the dotted line the signal at ${where} is spoilt.`]),
    ]),
    section(
      `Radio channels, best first, at ${where}`,
      style,
      rankingTable(plan, survey, style, wifi?.moves ?? null),
    ),
    ...(plan.hopSet === null ? [] : [section("Hop set", style, hopSetLines(plan, style))]),
    ...sourceSections(report, style),
    ...(wifi === null
      ? []
      : [section("If Wi-Fi moves", style, bullets(wifiMovesLines(report, wifi), style))]),
    ...warningSection(report, style),
    section(linkTitle(report), style, linkLines(report, style)),
    ...brokenPractice(report, style),
    section(`What the audience sees at ${where}`, style, lookLines(plan, style)),
    ...regulationSection(report.regulation, style),
    ...(wifi === null ? [] : wifiSections(report, wifi, style)),
    section("Assumed", style, bullets(assumptionLines(report, style.units), style)),
    evidenceSection(survey, style),
    section("Cautions", style, bullets(RADIO_CAUTIONS, style)),
  ];
  return pageText(parts);
}

function wifiSections(report: ChannelReport, wifi: WifiPlan, style: TextStyle): string[][] {
  return [
    section("Request to the network staff", style, wifiRequestLines(report, wifi, style)),
    section("What we do to Wi-Fi", style, wifiNeighbourLines(wifi, style)),
  ];
}

/** Only what is known to be broken; `link` walks through all of it. */
function brokenPractice({ plan }: ChannelReport, style: TextStyle): string[][] {
  const broken = plan.practice.filter(({ state }) => state === "broken");
  return broken.length === 0 ? [] : [section(PRACTICE_TITLE, style, practiceLines(broken, style))];
}

function sourceSections({ plan, survey }: ChannelReport, style: TextStyle): string[][] {
  const choices = [
    [plan.recommended.channel, holds(plan) ? "recommended" : "least bad", 6],
    [plan.backup.channel, "fallback", 4],
  ] as const;
  return choices.flatMap(([channel, word, mostCount]) => {
    const score = plan.ranking.find((candidate) => channel !== null && candidate.channel === channel);
    if (score === undefined) return [];
    const title = `Behind ${radioChannelWords(plan, score.channel)}, ${word}`;
    const lines =
      score.contributors.length === 0
        ? ["Nothing above the noise."]
        : sourcesTable(score, survey, style, mostCount);
    return [section(title, style, lines)];
  });
}

function linkTitle({ plan }: ChannelReport): string {
  if (plan.link.channel === null) return "Link by distance, median of the hop set";
  return `Link by distance on ${radioChannelWords(plan, plan.link.channel)}, its interference held`;
}
