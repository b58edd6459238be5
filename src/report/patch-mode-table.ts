import type { PatchPlan } from "../venue/index.js";
import { nameOf } from "./patch-words.js";
import type { TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";

/** A letter for each mode, for the tables: A, B … Z, AA … */
export function modeLetter({ modes }: PatchPlan, mode: string): string {
  let index = modes.findIndex((one) => one.mode === mode);
  let letters = "";
  for (; index >= 0; index = Math.floor(index / 26) - 1)
    letters = String.fromCharCode(65 + (index % 26)) + letters;
  return letters;
}

/** The modes: what must be set at each luminaire before its address means anything. */
export function modeTable(patch: PatchPlan, style: TextStyle): string[] {
  const rows = patch.modes.map(
    ({ mode, footprintSlotCount, given, statedSlotCounts, luminaires, filled }) => [
      modeLetter(patch, mode),
      footprintSlotCount === null ? statedSlotCounts.join(" or ") || "?" : String(footprintSlotCount),
      String(luminaires.length),
      clipped(nameOf(mode), 30),
      [
        ...(given ? ["given by --mode"] : []),
        ...(statedSlotCounts.length > 1 ? ["ONE MODE, SEVERAL FOOTPRINTS"] : []),
        ...(footprintSlotCount === null && statedSlotCounts.length === 0 ? ["slots not known"] : []),
        ...(filled.length > 0 && footprintSlotCount !== null ? [`${filled.length} take its slots`] : []),
      ].join(", "),
    ],
  );
  return tableLines(
    [
      { head: "mode", align: "left" },
      { head: "slots", align: "right" },
      { head: "luminaires", align: "right" },
      { head: "set at the luminaire", align: "left" },
      { head: "note", align: "left" },
    ],
    rows,
    style.columnCount,
  );
}
