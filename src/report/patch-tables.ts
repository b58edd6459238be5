import { printable } from "../issues/index.js";
import type { AddressRow, PatchConflict } from "../patch/index.js";
import type { PatchPlan } from "../venue/index.js";
import { modeLetter } from "./patch-mode-table.js";
import { countOf, nameOf, REASON_WORDS, switchPicture } from "./patch-words.js";
import type { TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";

/** The luminaires of one system in one universe, in the order of hanging. */
export interface PatchSheet {
  readonly system: string | null;
  /** Null: they have none yet. */
  readonly universe: number | null;
  readonly rows: readonly AddressRow[];
}

/** The rows by system and universe, both in the order in which they first come. */
export function patchSheets(patch: PatchPlan): PatchSheet[] {
  const sheets = new Map<string, PatchSheet & { readonly rows: AddressRow[] }>();
  for (const row of patch.addresses.rows) {
    const { system, universe } = row;
    const key = JSON.stringify([system, universe]);
    const sheet = sheets.get(key) ?? { system, universe, rows: [] };
    sheet.rows.push(row);
    sheets.set(key, sheet);
  }
  return [...sheets.values()];
}

/** Whose sheet it is, and what feeds it. */
export function sheetTitle({ system, universe, rows }: PatchSheet, { systems }: PatchPlan): string {
  const carrier = systems.find(({ name }) => name === system);
  const where = universe === null ? "No universe" : `Universe ${universe}`;
  const by = system === null ? "no system" : `system ${nameOf(system)}`;
  const transmitter = carrier?.transmitter ?? null;
  const from = transmitter === null ? "" : `, transmitter ${nameOf(transmitter)}`;
  return `${where}: ${by}${from}, ${countOf(rows.length, "luminaire")}`;
}

/** One row a luminaire, under its room and group. */
export function sheetTable(sheet: PatchSheet, patch: PatchPlan, style: TextStyle): string[] {
  const { rows } = sheet;
  const clashing = clashingNames(patch);
  const table = tableLines(
    [
      { head: "DMX addr", align: "right" },
      { head: "to", align: "right" },
      { head: "slots", align: "right" },
      { head: "switches", align: "left" },
      { head: "luminaire", align: "left" },
      { head: "mode", align: "left" },
      { head: "receiver", align: "left" },
      { head: "note", align: "left" },
    ],
    rows.map((row) => cellsOf(row, patch, clashing)),
    style.columnCount,
  );
  const [head = "", ...lines] = table;
  return [head, ...lines.flatMap((line, index) => [...headingOf(rows, index, style), line])];
}

/** Room and group, where they change. */
function headingOf(rows: readonly AddressRow[], index: number, style: TextStyle): string[] {
  const row = rows[index]!;
  const before = rows[index - 1];
  if (before !== undefined && before.room === row.room && before.group === row.group) return [];
  const group = row.group === null || row.group === row.room ? "" : `, ${nameOf(row.group)}`;
  return [clipped(`${nameOf(row.room)}${group}:`, style.columnCount)];
}

function cellsOf(row: AddressRow, patch: PatchPlan, clashing: Clashing): string[] {
  const { address, lastSlot, footprintSlotCount, name, receiver } = row;
  const switches = patch.labels[patch.addresses.rows.indexOf(row)]?.switches ?? null;
  const note = noteOf(row, patch, clashing);
  return [
    address === null ? "none" : String(address),
    lastSlot === null ? "" : String(lastSlot),
    footprintSlotCount === null ? "?" : String(footprintSlotCount),
    switches === null ? "" : switchCell(switches.fromOne),
    clipped(printable(name, 40), 17),
    row.mode === null ? "" : modeLetter(patch, row.mode),
    receiver === null ? "own" : clipped(printable(receiver, 40), 12),
    note,
  ];
}

/** What matters most of each row of a patch. */
export function patchNotes(patch: PatchPlan): (row: AddressRow) => string {
  const clashing = clashingNames(patch);
  return (row) => noteOf(row, patch, clashing);
}

function noteOf({ name, fixed, reason }: AddressRow, { emergency }: PatchPlan, clashing: Clashing): string {
  if (reason !== null) return REASON_WORDS[reason][0];
  if (clashing.clashes.has(name)) return "CLASH";
  if (clashing.faults.has(name)) return "FAULT";
  if (emergency.names.includes(name)) return "EMERG.";
  if (emergency.unknownNames.includes(name)) return "emerg. ?";
  if (clashing.looks.has(name)) return "look";
  return fixed ? "settled" : "";
}

function switchCell(fromOne: readonly boolean[] | null): string {
  return fromOne === null ? "none: 512" : switchPicture(fromOne);
}

/** Who shares slots with others, who has another fault, who is in a warning. */
interface Clashing {
  readonly clashes: ReadonlySet<string>;
  readonly faults: ReadonlySet<string>;
  readonly looks: ReadonlySet<string>;
}

function clashingNames({ addresses }: PatchPlan): Clashing {
  const named = (isMeant: (conflict: PatchConflict) => boolean): Set<string> =>
    new Set(
      addresses.conflicts.filter(isMeant).flatMap(({ luminaires }) => luminaires.map(({ name }) => name)),
    );
  return {
    clashes: named(({ kind }) => kind === "overlap" || kind === "reserved"),
    faults: named(({ severity }) => severity === "error"),
    looks: named(({ severity }) => severity === "warning"),
  };
}

/** How the table's picture of nine switches is read. */
export const SWITCH_KEY =
  "switches: the number of each of nine switches that is on, a dot for off; 1 to 9 count 1, 2, 4, 8, 16, 32, 64, 128, 256, and value = address. Some fixtures count from zero: theirs is the address less one (--labels has both). emerg. ?: nobody has said whether it counts as emergency lighting.";
