import type { SurveyEmitter } from "../scan/index.js";
import { quietestStretch } from "./busy-cells.js";
import { busyPicture, busySpokenWords } from "./busy-picture.js";
import { whereWords } from "./channel-glance.js";
import { presumedOwner, sourceName } from "./channel-tables.js";
import { crowdChangeLines, crowdChangeWords } from "./crowd-change-lines.js";
import { evidenceStatements } from "./evidence-section.js";
import { glanceLine } from "./link-lines.js";
import { fixed, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets, opening, pageText, section } from "./section.js";
import { spectrogramLines } from "./spectrogram-lines.js";
import { surveyAssumptions } from "./survey-assumptions.js";
import { onAirWords } from "./survey-lines.js";
import { sourceDetails } from "./source-details.js";
import type { CrowdSummary, SourceHit, SurveyReport } from "./survey-report.js";
import { columnsOf, tableLines, wrapped } from "./text-layout.js";

/** What is on the band and how far to trust it, for a terminal. A part with nothing to tell is left out. */
export function surveyText(report: SurveyReport, style: TextStyle): string {
  const glance = opening(surveyGlance(report), style);
  const parts = surveyParts(report, style)
    .filter(([, lines]) => lines.length > 0)
    .map(([title, lines]) => section(title, style, lines));
  return pageText([glance, ...parts]);
}

type Part = readonly [title: string, lines: readonly string[]];

function surveyParts(report: SurveyReport, style: TextStyle): Part[] {
  const { survey, change, thresholdDbm, spectrograms, profileName } = report;
  const evidence = evidenceStatements(survey);
  return [
    ["Share of time in which a receiver here would be spoilt, 2 MHz a column", busyLines(report, style)],
    ["Power by time and frequency", spectrogramLines(spectrograms, thresholdDbm, style)],
    ["By crowd", crowdTable(report, style)],
    change === null
      ? ["Empty against full", []]
      : [
          `What the crowd changed, ${change.from} to ${change.to}, for a ${profileName} receiver at 20 m (66 ft)`,
          crowdChangeLines(change, style),
        ],
    [`Sources, hardest on a ${profileName} receiver first`, sourceTable(report, style)],
    [
      "Strongest sources: airtime reported, heard when (UTC); dBm by place (readings)",
      sourceDetails(strongestFirst(report), style),
    ],
    ["Evidence", bullets(evidence, style)],
    ["Assumed", bullets(surveyAssumptions(report), style)],
  ];
}

function busyLines({ occupancy }: SurveyReport, style: TextStyle): string[] {
  if (occupancy.every(({ busyRatio }) => busyRatio === null)) return [];
  const spoken = busySpokenWords(occupancy).flatMap((line) => wrapped(line, style.columnCount));
  return [...busyPicture(occupancy, style), ...spoken];
}

function surveyGlance({ survey, occupancy, usedMhz, change }: SurveyReport): string[] {
  const { evidence } = survey;
  const quiet = quietestStretch(occupancy, usedMhz);
  const quietWords =
    quiet === null
      ? "not known: no level in dBm in the radio's channels"
      : `${quiet.fromMhz}–${quiet.toMhz} MHz: busy ${wholePercent(quiet.busyRatio)} of the time`;
  return [
    glanceLine("Trust", evidence.grade === "one-look" ? "ONE LOOK: not enough to plan on" : evidence.grade),
    glanceLine("Next look", evidence.next),
    glanceLine("On air", onAirWords(survey)),
    glanceLine("Quietest", quietWords),
    ...(change === null ? [] : [glanceLine("Crowd", crowdChangeWords(change))]),
    glanceLine("Where", whereWords(survey)),
  ];
}

function crowdTable({ crowds, survey }: SurveyReport, style: TextStyle): string[] {
  if (crowds.length === 0) return [];
  const isSwept = survey.sweep !== null;
  const rows = crowds.map((summary) => [
    summary.crowd ?? "not said",
    String(summary.observationCount),
    ...(isSwept ? [String(summary.passCount)] : []),
    String(summary.emitterCount),
    summary.busyRatio === null ? "not known" : wholePercent(summary.busyRatio),
    whenWords(summary),
  ]);
  const heads = ["crowd", "readings", ...(isSwept ? ["passes"] : []), "sources", "band busy", "when"];
  return tableLines(
    heads.map((head) => ({ head, align: head === "crowd" || head === "when" ? "left" : "right" })),
    rows,
    style.columnCount,
  );
}

function whenWords({ firstSeen, lastSeen }: CrowdSummary): string {
  if (firstSeen === null) return "time not said";
  const [first, last] = [minute(firstSeen), minute(lastSeen ?? firstSeen)];
  const isOneDay = first.slice(0, 10) === last.slice(0, 10);
  return `${first} to ${isOneDay ? last.slice(11) : last} UTC`;
}

function minute(iso: string): string {
  return `${iso.slice(0, 10)} ${iso.slice(11, 16)}`;
}

function sourceTable({ survey, hits }: SurveyReport, style: TextStyle): string[] {
  if (survey.emitters.length === 0) return [];
  const hitOf = new Map(hits.map((hit) => [hit.emitter, hit]));
  const rows = strongestFirst({ survey, hits }).map((source) => {
    const hit = hitOf.get(source.emitter);
    return [
      hit === undefined || hit.channel === null ? "none" : String(hit.channel),
      hit === undefined || hit.aboveNoiseDb === null ? "below" : `${fixed(hit.aboveNoiseDb, 0)} dB`,
      `${wholePercent(source.airtimeRatio)}${source.airtimeAssumed ? " as." : ""}`,
      presumedOwner(source),
      wifiWords(source),
      `${fixed(source.levelDbm, 0)} dBm`,
      sourceName(source),
    ];
  });
  const heads = ["radio ch", "over noise", "airtime", "owner", "Wi-Fi ch", "level", "name"];
  const right = new Set(["radio ch", "over noise", "level"]);
  const lines = tableLines(
    heads.map((head) => ({ head, align: right.has(head) ? "right" : "left" })),
    rows,
    style.columnCount,
  );
  return lines.filter((line) => columnsOf(line) > 0);
}

/** The sources, hardest on our receiver first. */
function strongestFirst({ survey, hits }: Pick<SurveyReport, "survey" | "hits">): SurveyEmitter[] {
  const hitOf = new Map(hits.map((hit) => [hit.emitter, hit]));
  return [...survey.emitters].sort((a, b) => strength(hitOf.get(b.emitter)) - strength(hitOf.get(a.emitter)));
}

function strength(hit: SourceHit | undefined): number {
  return hit?.inChannelDbm ?? -Infinity;
}

/** Wi-Fi channel, side of a 40 MHz one, and standard. */
export function wifiWords({ channel, centreMhz, widthMhz, standard }: SurveyEmitter): string {
  const side = widthMhz === 40 ? `+${centreMhz > 2407 + 5 * channel ? "up" : "down"}` : "";
  return `${channel}${side} ${standard === "unknown" ? "?" : standard}`;
}
