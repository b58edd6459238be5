import { CREW_COLUMNS, crewFigures } from "../../install/index.js";
import type { CrewColumn, HangFigures } from "../../install/index.js";
import type { Field, JsonSchema } from "./field.js";
import { isMapping } from "./file-spot.js";
import { nearHint } from "./near-hint.js";

const COLUMNS = Object.entries(CREW_COLUMNS).filter(([, { of }]) => of === "hang");
const NAMES = COLUMNS.map(([name]) => name);

/**
 * Hardware that every luminaire hangs by unless its own row says otherwise, under the names of the crew's columns:
 * a number in the file's unit, or a text with its unit, as `35 mm`.
 */
export const hangField: Field<Partial<HangFigures>> = {
  schema: {
    description:
      "what luminaires hang by where their own rows say nothing: numbers in the file's unit, or 35 mm",
    type: "object",
    properties: Object.fromEntries(COLUMNS.map(([name, column]) => [name, columnSchema(column)])),
    additionalProperties: false,
  },
  read: (raw, spot) => {
    if (!isMapping(raw)) return spot.error(raw, `hang: a mapping with ${NAMES.slice(0, 4).join(", ")}…`);
    const cells: Record<string, string> = {};
    let isSound = true;
    for (const [key, cell] of Object.entries(raw)) {
      if (cell === null) continue;
      const known = NAMES.includes(key);
      if (!known) spot.key(key).error(key, `a known key${nearHint(key, NAMES)}`);
      else if (typeof cell !== "string" && typeof cell !== "number" && typeof cell !== "boolean")
        spot.key(key).error(cell, "a number or a text");
      else cells[key] = typeof cell === "boolean" ? (cell ? "yes" : "no") : String(cell);
      isSound &&= Object.hasOwn(cells, key);
    }
    const { hang, faults } = crewFigures(cells, spot.units);
    for (const { column, value, expected } of faults) spot.key(column).error(value, expected);
    return isSound && faults.length === 0 ? hang : undefined;
  },
};

function columnSchema({ holds }: CrewColumn): JsonSchema {
  if (typeof holds === "string") return { type: ["number", "string", "null"] };
  return { enum: holds.includes("yes") ? [...holds, true, false, null] : [...holds, null] };
}
