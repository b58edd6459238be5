import { printable } from "../issues/index.js";
import type { CheckBlank, CheckNote, CheckStage, InstallCheck } from "../install/index.js";
import { lengthWords } from "./hang-words.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { hanging } from "./section.js";

/** When a check is made. */
export const STAGE_TITLES: Readonly<Record<CheckStage, string>> = {
  before: "Before anyone goes up",
  ground: "On the ground, within reach",
  lift: "On the lift",
  room: "With the room up",
  handover: "At handover, and at the first full event",
};

const NOTE_WORDS: Readonly<Record<CheckNote, string>> = {
  linked: "linked ____",
  relink_s: "relink_s ______",
  loss_state: "loss_state ____________",
  scan_file: "scan_file ____________________",
  scan_time: "scan_time ________________",
  remark: "remark ____________________",
};

/** A check's sentence, its lengths in the reader's unit. */
export function checkWords({ parts }: InstallCheck, units: LengthUnit): string {
  return parts
    .map((part) => (typeof part === "string" ? printable(part, 2000) : lengthWords(part.lengthM, units)))
    .join("");
}

/** The checks of one stage: a tick to make, and what is written down beside it. */
export function stageLines(checks: readonly InstallCheck[], stage: CheckStage, style: TextStyle): string[] {
  return checks
    .filter((check) => check.stage === stage)
    .flatMap((check) => [
      ...hanging("[ ] ", checkWords(check, style.units), style.columnCount),
      ...blankLines(check.blanks, style),
    ]);
}

/** Blanks under a check: of a reading, the row of the readings file with what is printed of it already. */
function blankLines(blanks: readonly CheckBlank[], style: TextStyle): string[] {
  const readings = blanks.filter(({ kind }) => kind === "reading");
  const notes = blanks.flatMap((blank) => (blank.kind === "note" ? NOTE_WORDS[blank.column] : []));
  const printed = readings.flatMap(({ column, filled }) =>
    filled === null ? [] : `${column} ${printable(filled, 40)}`,
  );
  const open = readings.flatMap(({ column, filled }) =>
    filled === null ? `${column} ${OPEN[column] ?? LINE}` : [],
  );
  return [
    ...(printed.length === 0 ? [] : hanging("    ", `${printed.join(", ")}:`, style.columnCount)),
    ...(open.length === 0 ? [] : [`    ${open.join("  ")}`]),
    ...(notes.length === 0 ? [] : [`    ${notes.join("  ")}`]),
  ];
}

const LINE = "________";
const OPEN: Readonly<Record<string, string>> = { heard: "____", quality: "____", time: "________________" };
