import { emergencyLines } from "./emergency-lines.js";
import { patchAssumptions } from "./patch-assumptions.js";
import { conflictLines } from "./patch-conflict-lines.js";
import { patchGlance } from "./patch-glance.js";
import { overflowLines } from "./patch-overflow-lines.js";
import type { PatchReport } from "./patch-report.js";
import { modeTable } from "./patch-mode-table.js";
import { patchSheets, sheetTable, sheetTitle, SWITCH_KEY } from "./patch-tables.js";
import { fewestLines, universeTable } from "./patch-universe-table.js";
import type { TextStyle } from "./pen.js";
import { bullets, opening, pageText, section } from "./section.js";
import { wrapped } from "./text-layout.js";

/** The address sheet: the answer, a row a luminaire in the order of hanging, then what stands against it. */
export function patchText(report: PatchReport, style: TextStyle): string {
  const { patch } = report;
  const sheets = patchSheets(patch);
  const conflicts = conflictLines(patch);
  const overflows = overflowLines(patch);
  const fewest = fewestLines(patch);
  const parts = [
    opening(patchGlance(report), style),
    section("Clashes and faults", style, conflicts.length === 0 ? ["None."] : bullets(conflicts, style)),
    ...(overflows.length === 0 ? [] : [section("Overflow", style, bullets(overflows, style))]),
    ...sheets.map((sheet) => section(sheetTitle(sheet, patch), style, sheetTable(sheet, patch, style))),
    wrapped(SWITCH_KEY, style.columnCount),
    ...(patch.modes.length === 0 ? [] : [section("Modes", style, modeTable(patch, style))]),
    section(
      "Universes: slots of 512, and the line's refresh up to the last used",
      style,
      universeTable(patch, style),
    ),
    ...(fewest.length === 0 ? [] : [section("Fewest universes", style, bullets(fewest, style))]),
    section("Emergency and exit lighting", style, emergencyLines(patch.emergency, style)),
    section("Assumed", style, bullets(patchAssumptions(report), style)),
    cautionSection(report, style),
  ];
  return pageText(parts);
}

/** The cautions of the sheet, as they were laid out. */
export function cautionSection({ cautions }: PatchReport, style: TextStyle): string[] {
  return section(
    "Cautions",
    style,
    cautions.map(({ text }) => text),
  );
}
