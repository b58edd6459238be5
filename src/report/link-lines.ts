import { mToFeet } from "../units/index.js";
import type { ChannelPlan } from "../venue/index.js";
import { chosenLengths, exactPercent, fixed, reachLengths } from "./number-format.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";

/** A link in four lines: on what, with how much to spare, how far, what would be seen. */
export function linkGlance(plan: ChannelPlan, where: string, unit: LengthUnit): string[] {
  return [
    glanceLine("On", where),
    glanceLine("Link", linkWords(plan, unit)),
    glanceLine("Reach", reachWords(plan, unit)),
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
  const spare =
    verdict === "fails"
      ? `${Math.ceil(-workingMarginDb)} dB short`
      : `${Math.floor(workingMarginDb + 1e-9)} dB to spare`;
  const cause = limit === "range" ? "its own range" : "interference";
  const far = caveats.includes("beyond-fitted-distance") ? " (outside the model)" : "";
  return `${verdict.toUpperCase()} at ${chosenLengths(setting.distanceM, unit)}${far}: ${spare}; ${cause} limits it`;
}

/** How far it works, with the antenna in sight and hidden. */
export function reachWords({ link, setting }: ChannelPlan, unit: LengthUnit): string {
  if (link.reference === null) return "none";
  const share = `${exactPercent(setting.reliability)} of positions`;
  const hidden = reachText(link.reachNoSightM, unit);
  const inSight = reachText(link.reachM, unit);
  if (inSight === hidden) return `${inSight}, antenna hidden too`;
  const far = link.reachM === null || link.reachM > 100;
  return far ? `${inSight}; antenna hidden ${hidden}` : `${inSight}; antenna hidden ${hidden}; at ${share}`;
}

function reachText(reachM: number | null, unit: LengthUnit): string {
  if (reachM === null || reachM > 100) return "beyond 100 m: outside the model";
  return reachM === 0 ? "nowhere" : reachLengths(reachM, unit);
}

/** The link budget by distance, its reaches, and how to read it. */
export function linkLines({ link }: ChannelPlan, style: TextStyle): string[] {
  if (link.reference === null) return [`No link: ${link.reachReason}.`];
  const caveats = new Set(link.rows.flatMap((row) => row.caveats));
  return [
    ...linkTable(link, style),
    `Reach in sight: ${reachText(link.reachM, style.units)}.`,
    `Reach with the antenna hidden: ${reachText(link.reachNoSightM, style.units)}.`,
    "spare = the lesser of over sens. and over interf., less fade.",
    "fails < 0 <= thin < 6 <= sound < 15 <= ample, in dB to spare.",
    ...(caveats.has("beyond-fitted-distance") ? ["* beyond 100 m: outside the model."] : []),
    ...(caveats.has("below-free-space")
      ? ["+ the indoor model gives less loss here than free space would."]
      : []),
    ...(caveats.has("below-reference-distance") ? ["- nearer than the model's reference distance."] : []),
  ];
}

const CAVEAT_MARKS: Readonly<Record<string, string>> = {
  "beyond-fitted-distance": "*",
  "below-free-space": "+",
  "below-reference-distance": "-",
};

function linkTable(link: ChannelPlan["link"], style: TextStyle): string[] {
  const heads = ["distance", "path dB", "rx dBm", "over sens.", "over interf.", "fade dB", "spare dB"];
  const rows = link.rows.map((row) => [
    distanceCell(row.distanceM, style.units),
    fixed(row.pathLossDb, 1),
    fixed(row.receivedDbm, 1),
    fixed(row.sensitivityMarginDb, 1),
    fixed(row.interferenceMarginDb, 1),
    fixed(row.fadeAllowanceDb, 1),
    fixed(row.workingMarginDb, 1),
    `${row.verdict}${row.caveats.map((caveat) => CAVEAT_MARKS[caveat] ?? "").join("")}`,
  ]);
  const columns = [
    ...heads.map((head) => ({ head, align: "right" as const })),
    { head: "verdict", align: "left" as const },
  ];
  return tableLines(columns, rows, style.columnCount);
}

function distanceCell(distanceM: number, unit: LengthUnit): string {
  return unit === "ft"
    ? `${fixed(mToFeet(distanceM), 0)} ft`
    : `${fixed(distanceM, Number.isInteger(distanceM) ? 0 : 1)} m`;
}
