import type { SurveyEmitter } from "../scan/index.js";
import { whereWords } from "./channel-glance.js";
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
      "Share of time in which a receiver here would be spoilt, 2 MHz a column",
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

function surveyGlance({ survey, occupancy, usedMhz }: SurveyReport): string[] {
  const { evidence } = survey;
  const quiet = quietestStretch(occupancy, usedMhz);
  return [
    glanceLine("Trust", evidence.grade === "one-look" ? "ONE LOOK: not enough to plan on" : evidence.grade),
    glanceLine("Next look", evidence.next),
    glanceLine(
      "On air",
      `${survey.emitterCount} radio sources with ${survey.bssCount} addresses, ${survey.hiddenCount} of them hidden`,
    ),
    glanceLine(
      "Quietest",
      `${quiet.fromMhz}–${quiet.toMhz} MHz: busy ${wholePercent(quiet.busyRatio)} of the time`,
    ),
    glanceLine("Where", whereWords(survey)),
  ];
}

/** The 5 MHz within the radio's channels that are spoilt the least of the time. */
function quietestStretch(
  occupancy: SurveyReport["occupancy"],
  [lowMhz, highMhz]: SurveyReport["usedMhz"],
): { fromMhz: number; toMhz: number; busyRatio: number } {
  const cells = occupancy.filter(({ fromMhz, toMhz }) => toMhz > lowMhz && fromMhz < highMhz);
  const width = Math.min(5, cells.length);
  let best = { fromMhz: lowMhz, toMhz: highMhz, busyRatio: Infinity };
  for (let start = 0; start + width <= cells.length; start++) {
    const stretch = cells.slice(start, start + width);
    const busyRatio = Math.max(...stretch.map((cell) => cell.busyRatio));
    if (busyRatio < best.busyRatio)
      best = { fromMhz: stretch[0]!.fromMhz, toMhz: stretch[width - 1]!.toMhz, busyRatio };
  }
  return best;
}

/** Flat bars of busy time, a column for two MHz (the busier counts), 25 % a row. */
function busyPicture({ occupancy }: SurveyReport, style: TextStyle): string[] {
  const columns = Array.from({ length: Math.ceil(occupancy.length / 2) }, (_, index) =>
    occupancy.slice(2 * index, 2 * index + 2),
  );
  const busy = columns.map((cells) => Math.max(...cells.map(({ busyRatio }) => busyRatio)));
  const rows = [0.75, 0.5, 0.25, 0].map((low) => {
    const bar = busy.map(
      (ratio) => BLOCKS[Math.max(0, Math.min(8, Math.round(((ratio - low) / 0.25) * 8)))]!,
    );
    return `${style.pen.faint(`${fixed((low + 0.25) * 100, 0).padStart(3)}% │`)}${bar.join("")}`.trimEnd();
  });
  const scale = columns.map(([cell], index) =>
    cell!.fromMhz % 20 === 0 ? { index, text: String(cell!.fromMhz) } : null,
  );
  let line = " ".repeat(6);
  for (const mark of scale) if (mark !== null) line = line.padEnd(6 + mark.index) + mark.text;
  return [...rows, style.pen.faint(`     └${"─".repeat(columns.length)}`), style.pen.faint(`${line} MHz`)];
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

function assumptions(report: SurveyReport): string[] {
  const { survey, busyShareRatio, radioWords } = report;
  const assumedCount = survey.emitters.filter(({ airtimeAssumed }) => airtimeAssumed).length;
  return [
    radioWords,
    `Airtime assumed ("as.") for ${assumedCount} of ${survey.emitterCount} sources, by the fullest crowd scanned; reported by the rest.`,
    `Spoilt: more than ${fixed(report.thresholdDbm, 0)} dBm in one MHz as scanned, which the reference receiver at 20 m (66 ft) does not bear.`,
    "Level: the 0.9 quantile of a source's readings at its loudest place, scanning antenna 0 dBi.",
    `Over noise: in the radio channel that the source hits hardest, behind the profile's antenna and canopy, levels exceeded ${wholePercent(busyShareRatio)} of the time in pictures.`,
    "Owner presumed from the level: -75 dBm or more is the building's.",
    "Spectra are the standards' masks with the worst legal skirts; sources of one Wi-Fi channel take turns.",
  ];
}
