import type { ChannelPlan } from "../venue/index.js";
import { audienceWords } from "./audience-words.js";
import { jobLine, shareWords } from "./job-lines.js";
import { caveatLines, caveatMarks } from "./link-caveats.js";
import type { ChannelReport } from "./channel-report.js";
import { predictionLines } from "./prediction-lines.js";
import { chosenLengths, distanceCell, fixed, reachLengths } from "./number-format.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { clipped, columnsOf, tableLines, wrapped } from "./text-layout.js";

/** A link in four lines: on what, with how much to spare, how far, what would be seen. */
export function linkGlance(plan: ChannelPlan, where: string, when: string, unit: LengthUnit): string[] {
  return [
    glanceLine("On", where),
    glanceLine("Link", linkWords(plan, unit)),
    glanceLine("Reach", reachWords(plan, unit)),
    glanceLine("Audience", audienceWords(plan, when)),
  ];
}

/** One line of a block that opens with the answer, at most 80 columns. */
export function glanceLine(label: string, words: string): string {
  return clipped(`${label.padEnd(9)} ${words}`, 80);
}

/** Verdict, dB to spare in whole dB never rounded up, and what limits it. */
export function linkWords({ link, setting }: ChannelPlan, unit: LengthUnit): string {
  if (link.reference === null) return `none: ${link.reachReason}`;
  const { workingMarginDb, verdict, limit, caveats } = link.reference;
  const along = setting.site.heights === null ? "" : " of floor";
  if (workingMarginDb === -Infinity)
    return `FAILS at ${chosenLengths(setting.distanceM, unit)}${along}: no signal in an antenna's null`;
  const spare =
    verdict === "fails"
      ? `${Math.ceil(-workingMarginDb)} dB short`
      : `${Math.floor(workingMarginDb + 1e-9)} dB to spare`;
  const { txNull, rxNull } = link.reference;
  const cause = txNull || rxNull ? "an antenna's null" : limit === "range" ? "its own range" : "interference";
  const far = caveats.includes("beyond-fitted-distance") ? " (outside the model)" : "";
  const at = `${verdict.toUpperCase()} at ${chosenLengths(setting.distanceM, unit)}`;
  const words = `${far}: ${spare}; ${cause} limits it`;
  // Where the line has no room, the table beneath says what the distance runs along.
  return columnsOf(at + along + words) <= GLANCE_ROOM ? at + along + words : at + words;
}

/** How far it works, with the antenna in sight and hidden. */
export function reachWords(plan: ChannelPlan, unit: LengthUnit): string {
  const { link } = plan;
  if (link.reference === null) return "none";
  const hidden = reachText(link.reachNoSightM, unit, link.reachNoSightFloorM);
  const inSight = reachText(link.reachM, unit, link.reachFloorM);
  const same = inSight === hidden;
  const reach = same ? `${inSight}, antenna hidden too` : `${inSight}; antenna hidden ${hidden}`;
  const far = same || link.reachM === null || link.reachM > 100;
  const gaps = gapWords(plan, unit);
  if (gaps !== null) {
    const words = [`${reach}; ${gaps}`, `${inSight}; ${gaps}`];
    return words.find((each) => columnsOf(each) <= GLANCE_ROOM) ?? words[1]!;
  }
  const shares = shareWords(plan, far).map((words) => `${reach}; ${words}`);
  return shares.find((words) => columnsOf(words) <= GLANCE_ROOM) ?? reach;
}

/** A reach is the greatest distance, and an antenna's null may fail nearer: where, of the rows; null where none does. */
function gapWords({ link }: ChannelPlan, unit: LengthUnit): string | null {
  const reach = link.reachFloorM ?? link.reachM ?? Infinity;
  const gapsM = [...link.rows, ...(link.reference === null ? [] : [link.reference])]
    .filter(({ verdict }) => verdict === "fails")
    .map((row) => row.floorDistanceM ?? row.distanceM)
    .filter((distanceM) => distanceM < reach - 0.01);
  if (gapsM.length === 0) return null;
  const [nearestM, furthestM] = [Math.min(...gapsM), Math.max(...gapsM)];
  const at = distanceCell(nearestM, unit);
  return nearestM === furthestM
    ? `but fails at ${at}`
    : `but fails at ${at} to ${distanceCell(furthestM, unit)}`;
}

/** Columns that a line of the opening block leaves for its words. */
const GLANCE_ROOM = 70;

function reachText(reachM: number | null, unit: LengthUnit, floorM: number | null): string {
  if (reachM === null || reachM > 100) return "beyond 100 m: outside the model";
  if (reachM === 0) return "nowhere";
  return floorM === null ? reachLengths(reachM, unit) : `${reachLengths(floorM, unit)} of floor`;
}

/** The link budget by distance, its reaches, and how to read it. */
export function linkLines({ plan, predictAt }: ChannelReport, style: TextStyle): string[] {
  const { link } = plan;
  if (link.reference === null) return [`No link: ${link.reachReason}.`];
  return [
    ...linkTable(plan, style),
    ...pathLines(plan),
    ...predictionLines(predictAt, link.rows, style),
    `Reach in sight: ${[reachText(link.reachM, style.units, link.reachFloorM), gapWords(plan, style.units)].filter((words) => words !== null).join(", ")}.`,
    `Reach with the antenna hidden: ${reachText(link.reachNoSightM, style.units, link.reachNoSightFloorM)}.`,
    ...wrapped(jobLine(plan, style.units), style.columnCount),
    "spare = the lesser of over sens. and over interf., less fade.",
    "fails < 0 <= thin < 6 <= sound < 15 <= ample, in dB to spare.",
    ...caveatLines(link.rows),
  ];
}

/** What the distances are counted along, and what the received level holds beside the path. */
function pathLines({ link, setting }: ChannelPlan): string[] {
  const wallLossDb = link.walls.reduce((sum, { lossDb }) => sum + lossDb, 0);
  return [
    ...(setting.site.heights === null ? [] : ["floor = distance along the floor; losses and gains are 3-D."]),
    ...(wallLossDb === 0 ? [] : [`rx dBm has the walls' ${fixed(wallLossDb, 1)} dB in it.`]),
  ];
}

function linkTable({ link, setting }: ChannelPlan, style: TextStyle): string[] {
  const distance = setting.site.heights === null ? "distance" : "floor";
  const heads = [distance, "path dB", "rx dBm", "over sens.", "over interf.", "fade dB", "spare dB"];
  const rows = link.rows.map((row) => [
    distanceCell(row.floorDistanceM ?? row.distanceM, style.units),
    fixed(row.pathLossDb, 1),
    fixed(row.receivedDbm, 1),
    fixed(row.sensitivityMarginDb, 1),
    fixed(row.interferenceMarginDb, 1),
    fixed(row.fadeAllowanceDb, 1),
    fixed(row.workingMarginDb, 1),
    `${row.verdict}${caveatMarks(row)}`,
  ]);
  const columns = [
    ...heads.map((head) => ({ head, align: "right" as const })),
    { head: "verdict", align: "left" as const },
  ];
  return tableLines(columns, rows, style.columnCount);
}
