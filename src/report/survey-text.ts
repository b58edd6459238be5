import { printable } from "../issues/index.js";
import type { SurveyEmitter } from "../scan/index.js";
import { presumedOwner, sourceName } from "./channel-tables.js";
import { glanceLine } from "./link-lines.js";
import { fixed, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets, section } from "./section.js";
import { evidenceLines, rowsLine, sourcesLine, sweepLines } from "./survey-lines.js";
import type { SourceHit, SurveyReport } from "./survey-report.js";
import { columnsOf, tableLines } from "./text-layout.js";

/** What is on the band and how far to trust it, for a terminal. */
export function surveyText(report: SurveyReport, style: TextStyle): string {
  const { survey } = report;
  const parts = [
    surveyGlance(report).map((line) => style.pen.strong(line.slice(0, 9)) + line.slice(9)),
    section(
      `Share of time busy, each MHz above ${fixed(report.thresholdDbm, 0)} dBm (as scanned, 0 dBi)`,
      style,
      busyPicture(report, style),
    ),
    section("By crowd", style, crowdTable(report, style)),
    section(`Sources, hardest on a ${report.profileName} receiver first`, style, sourceTable(report, style)),
    section(
      "Evidence",
      style,
      bullets(
        [...evidenceLines(survey), sourcesLine(survey), ...sweepLines(survey), rowsLine(survey)],
        style,
      ),
    ),
    section("Assumed", style, bullets(assumptions(report), style)),
  ];
  return `${parts.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function surveyGlance({ survey, occupancy }: SurveyReport): string[] {
  const { evidence, places, fullestCrowd } = survey;
  const named = places.filter((place) => place !== "").map((place) => printable(place, 24));
  const quiet = quietestStretch(occupancy.map(({ busyRatio }) => busyRatio));
  const low = occupancy[0]!.fromMhz + quiet.start;
  return [
    glanceLine("Trust", evidence.grade === "one-look" ? "ONE LOOK: not enough to plan on" : evidence.grade),
    glanceLine("Next look", evidence.next),
    glanceLine("On air", sourcesLine(survey)),
    glanceLine(
      "Quietest",
      `${low}–${low + quiet.length} MHz: busy ${wholePercent(quiet.busyRatio)} of the time at most`,
    ),
    glanceLine("Where", `${named.length === 0 ? "places not named" : named.join(", ")}`),
    glanceLine("Crowd", `fullest room scanned: ${fullestCrowd ?? "not said"}`),
  ];
}

/** The longest stretch of cells whose busy share is within 2 points of the least. */
function quietestStretch(busy: readonly number[]): { start: number; length: number; busyRatio: number } {
  const limit = Math.min(...busy) + 0.02;
  let best = { start: 0, length: 0, busyRatio: 0 };
  let start = 0;
  for (let index = 0; index <= busy.length; index++) {
    if (index < busy.length && busy[index]! <= limit) continue;
    if (index - start > best.length)
      best = { start, length: index - start, busyRatio: Math.max(...busy.slice(start, index)) };
    start = index + 1;
  }
  return best;
}

/** Flat bars of busy time, one column a MHz, 25 % a row. */
function busyPicture({ occupancy }: SurveyReport, style: TextStyle): string[] {
  const cellCount = Math.min(occupancy.length, style.columnCount - 6);
  const perColumn = occupancy.length / cellCount;
  const busy = Array.from({ length: cellCount }, (_, index) => {
    const cells = occupancy.slice(Math.floor(index * perColumn), Math.ceil((index + 1) * perColumn));
    return Math.max(...cells.map(({ busyRatio }) => busyRatio));
  });
  const rows = [0.75, 0.5, 0.25, 0].map((low) => {
    const bar = busy.map(
      (ratio) => BLOCKS[Math.max(0, Math.min(8, Math.round(((ratio - low) / 0.25) * 8)))]!,
    );
    return `${style.pen.faint(`${fixed((low + 0.25) * 100, 0).padStart(3)}% │`)}${bar.join("")}`.trimEnd();
  });
  const scale = Array.from({ length: 6 + cellCount }, () => " ");
  for (const cell of occupancy)
    if (cell.fromMhz % 20 === 0) {
      const at = 6 + Math.floor((cell.fromMhz - occupancy[0]!.fromMhz) / perColumn);
      for (const [index, digit] of [...String(cell.fromMhz)].entries())
        if (at + index < scale.length) scale[at + index] = digit;
    }
  return [
    ...rows,
    style.pen.faint(`     └${"─".repeat(cellCount)}`),
    style.pen.faint(`${scale.join("").trimEnd()} MHz`),
  ];
}

const BLOCKS = [" ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"];

function crowdTable({ crowds }: SurveyReport, style: TextStyle): string[] {
  const rows = crowds.map(({ crowd, observationCount, emitterCount, busyRatio, firstSeen, lastSeen }) => [
    crowd ?? "not said",
    String(observationCount),
    String(emitterCount),
    wholePercent(busyRatio),
    firstSeen === null ? "time not said" : `${minute(firstSeen)} to ${minute(lastSeen ?? firstSeen)} UTC`,
  ]);
  const heads = ["crowd", "readings", "sources", "band busy", "when"];
  return tableLines(
    heads.map((head, index) => ({ head, align: index === 0 || index === 4 ? "left" : "right" })),
    rows,
    style.columnCount,
  );
}

function minute(iso: string): string {
  return `${iso.slice(0, 10)} ${iso.slice(11, 16)}`;
}

function sourceTable({ survey, hits }: SurveyReport, style: TextStyle): string[] {
  const hitOf = new Map(hits.map((hit) => [hit.emitter, hit]));
  const sources = [...survey.emitters].sort(
    (a, b) => strength(hitOf.get(b.emitter)) - strength(hitOf.get(a.emitter)),
  );
  const rows = sources.map((source) => {
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

function strength(hit: SourceHit | undefined): number {
  return hit?.inChannelDbm ?? -Infinity;
}

function wifiWords({ channel, centreMhz, widthMhz, standard }: SurveyEmitter): string {
  const side = widthMhz === 40 ? `+${centreMhz > 2407 + 5 * channel ? "up" : "down"}` : "";
  return `${channel}${side} ${standard === "unknown" ? "?" : standard}`;
}

function assumptions({ survey, busyShareRatio }: SurveyReport): string[] {
  const assumedCount = survey.emitters.filter(({ airtimeAssumed }) => airtimeAssumed).length;
  return [
    `Airtime assumed ("as.") for ${assumedCount} of ${survey.emitterCount} sources, by the fullest crowd scanned; reported by the rest.`,
    "Level: the 0.9 quantile of a source's readings at its loudest place, scanning antenna 0 dBi.",
    `Over noise: in the radio channel that the source hits hardest, behind the profile's antenna and canopy, levels exceeded ${wholePercent(busyShareRatio)} of the time in pictures.`,
    "Owner presumed from the level: -75 dBm or more is the building's.",
    "Spectra are the standards' masks with the worst legal skirts; sources of one Wi-Fi channel take turns.",
  ];
}
