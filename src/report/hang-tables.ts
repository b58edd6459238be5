import { printable } from "../issues/index.js";
import type { HangRow, RatingCheck } from "../install/index.js";
import type { HangPlan } from "../venue/index.js";
import { cordOf, lengthCell, lengthHead, lengthWords, weightWords } from "./hang-words.js";
import { fixed } from "./number-format.js";
import { nameOf } from "./patch-words.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";
import type { TableColumn } from "./text-layout.js";

const right = (head: string): TableColumn => ({ head, align: "right" });
const left = (head: string): TableColumn => ({ head, align: "left" });

/** What is cut and hung: one row a luminaire in the order of hanging, under its room, group and trim. */
export function cutTable({ hang, circuits, ...plan }: HangPlan, style: TextStyle): string[] {
  const { units } = style;
  const { rows } = hang;
  const isMixed = rows.some(({ suspension }) => suspension !== "chain");
  const table = tableLines(
    [
      right("links"),
      right(lengthHead(isMixed ? "length" : "chain", units)),
      right(lengthHead("cord", units)),
      right(lengthHead("safety", units)),
      ...(isMixed ? [left("by")] : []),
      left("luminaire"),
      left("note"),
    ],
    rows.map((row) => [
      row.stepCount === null ? (row.suspensionM === null ? "____" : "-") : String(row.stepCount),
      lengthCell(row.suspensionM, units),
      lengthCell(cordOf({ hang, circuits, ...plan }, row).lengthM, units),
      lengthCell(row.safetyM, units),
      ...(isMixed ? [row.suspension] : []),
      shortName(row.name),
      hangNote(row, cordOf({ hang, circuits, ...plan }, row).from),
    ]),
    style.columnCount,
  );
  return underHeadings(table, rows, style);
}

/** How each length comes about, and how far above trim it ends. */
export function heightTable({ hang }: HangPlan, style: TextStyle): string[] {
  const { units } = style;
  const table = tableLines(
    [
      left("luminaire"),
      ...["ceiling", "hardware", "body", "drop", "off trim"].map((head) => right(lengthHead(head, units))),
      right("slope"),
    ],
    hang.rows.map((row) => [
      shortName(row.name),
      lengthCell(row.ceilingHeightM, units),
      lengthCell(row.hardwareM, units),
      lengthCell(row.bodyHeightM, units),
      lengthCell(row.dropM, units),
      offCell(row.trimErrorM, units),
      { needed: "swivel", "not-needed": "to 5°", unknown: "____" }[row.swivelCanopy],
    ]),
    style.columnCount,
  );
  return underHeadings(table, hang.rows, style);
}

/** Weight against the figures that were typed in: within or beyond, never safe. */
export function weightTable({ hang }: HangPlan, style: TextStyle): string[] {
  const { units } = style;
  const unit = units === "m" ? "kg" : "lb";
  return tableLines(
    [
      left("luminaire"),
      right(`weight ${unit}`),
      ...["chain", "hook", "box/supp.", "safety"].map((head) => right(head)),
      left("figures typed in"),
    ],
    hang.rows.map((row) => [
      shortName(row.name),
      row.load.totalKg === null
        ? `over ${weightCell(row.load.knownKg, units)}`
        : weightCell(row.load.totalKg, units),
      ...row.load.checks.map((check) => ratedCell(check, units)),
      weightVerdict(row),
    ]),
    style.columnCount,
  );
}

/** What the figures typed in say of a weight, the gravest first. */
export function weightVerdict({ flags, load }: HangRow): string {
  if (flags.includes("rating-not-given")) return "RATING NOT GIVEN";
  if (flags.includes("beyond-rating")) return "BEYOND";
  if (flags.includes("beyond-box-limit")) return "TOO HEAVY FOR A BOX";
  return load.totalKg === null ? "WEIGHT NOT GIVEN" : "within";
}

function weightCell(weightKg: number, units: LengthUnit): string {
  return weightWords(weightKg, units).replace(/ \w+$/, "");
}

function ratedCell({ ratedKg, verdict }: RatingCheck, units: LengthUnit): string {
  if (ratedKg === null) return "NOT GIVEN";
  return `${verdict === "beyond" ? "! " : ""}${weightCell(ratedKg, units)}`;
}

function offCell(errorM: number | null, units: LengthUnit): string {
  if (errorM === null) return "____";
  const cell = lengthCell(errorM, units);
  return errorM > 0 ? `+${cell}` : cell;
}

/** Room, group and trim before the rows that share them. */
function underHeadings(table: readonly string[], rows: readonly HangRow[], style: TextStyle): string[] {
  const [head = "", ...lines] = table;
  return [head, ...lines.flatMap((line, index) => [...headingOf(rows, index, style), line])];
}

function headingOf(rows: readonly HangRow[], index: number, style: TextStyle): string[] {
  const row = rows[index]!;
  const before = rows[index - 1];
  const isSame =
    before !== undefined &&
    before.room === row.room &&
    before.group === row.group &&
    Math.abs((before.trimHeightM ?? -1) - (row.trimHeightM ?? -1)) < 1e-6;
  if (isSame) return [];
  const group = row.group === null || row.group === row.room ? "" : `, ${nameOf(row.group)}`;
  const { units } = style;
  const trim = row.trimHeightM === null ? "trim ____" : `trim ${lengthWords(row.trimHeightM, units)}`;
  const aboveM = row.trimAboveLineM;
  const line =
    aboveM === null
      ? ""
      : `, ${lengthWords(Math.abs(aboveM), units)} ${aboveM < 0 ? "below" : "above"} the laser line`;
  return [clipped(`${nameOf(row.room)}${group}: ${trim}${line}`, style.columnCount)];
}

/** What a rigger must not miss of a row, the gravest first. */
export function hangNote({ flags, gap }: HangRow, from: string | null): string {
  const stops = flags.some((flag) => STOPPING.includes(flag));
  const notes = [
    ...(stops ? ["DO NOT HANG"] : []),
    ...(gap === null ? [] : [GAP_NOTES[gap]]),
    ...(flags.includes("emergency") ? ["EMERGENCY"] : []),
    ...(flags.includes("emergency-unknown") ? ["emerg. ?"] : []),
    ...(flags.includes("uneven") ? ["UNEVEN"] : []),
    ...(flags.includes("below-trim") ? ["below trim"] : []),
    ...(flags.includes("swivel-canopy") ? ["swivel"] : []),
    ...(flags.includes("slope-unknown") ? ["slope ?"] : []),
    ...(from === null ? [] : [`cord from ${shortName(from)}`]),
  ];
  return notes.join(", ");
}

const STOPPING: readonly string[] = [
  "rating-not-given",
  "beyond-rating",
  "weight-not-given",
  "beyond-box-limit",
];

const GAP_NOTES: Readonly<Record<NonNullable<HangRow["gap"]>, string>> = {
  "ceiling-height": "ceiling height ?",
  "trim-height": "trim ?",
  "body-height": "body height ?",
  step: "chain pitch ?",
  "no-room": "NO ROOM",
};

/** A name that leaves the rest of the row its place. */
export function shortName(name: string): string {
  return clipped(printable(name, 40), 14);
}

/** Pieces to a level, spread and who is out of it. */
export function levelTable({ hang }: HangPlan, style: TextStyle): string[] {
  const { units } = style;
  return tableLines(
    [right("hung"), right("trim"), right("spread"), left("row"), left("uneven to the eye")],
    hang.levels.map(({ room, group, trimHeightM, names, spreadM, uneven }) => [
      fixed(names.length, 0),
      lengthWords(trimHeightM, units),
      lengthWords(spreadM, units),
      clipped(group === null || group === room ? nameOf(room) : `${nameOf(room)}, ${nameOf(group)}`, 28),
      uneven.length === 0 ? "none" : uneven.map(shortName).join(", "),
    ]),
    style.columnCount,
  );
}
