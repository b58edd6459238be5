import type { Circuit } from "./circuit-types.js";
import type { CrewUnits } from "./crew-cell.js";
import { crewCell } from "./crew-cell.js";
import type { CrewColumn, CrewPoint } from "./crew-columns.js";
import { CREW_COLUMNS } from "./crew-columns.js";
import type { HangFigures } from "./hang-figures.js";

/** A cell that can't be what its column says: it is left open, never half used. */
export interface CrewFault {
  /** As its header has it. */
  readonly column: string;
  readonly value: string;
  readonly expected: string;
}

/** What a luminaire's further columns say to the sheets. */
export interface CrewFigures {
  readonly hang: Partial<HangFigures>;
  /** Of the circuit that feeds it. */
  readonly circuit: Partial<Circuit>;
  readonly point: CrewPoint;
  readonly faults: readonly CrewFault[];
}

const UNIT_WORDS = ["m", "cm", "mm", "ft", "in", "kg", "g", "lb", "lbs", "deg", "a", "v", "%"];
const UNIT_PAIRS = ["kg/m", "g/m", "lb/ft"];
const POSITIVE: readonly string[] = [
  "stepM",
  "boxRatedKg",
  "hookRatedKg",
  "suspensionRatedKg",
  "safetyRatedKg",
  "breakerA",
  "supplyV",
  "powerFactorRatio",
];
/** Shares of a whole: at most 1. */
const SHARES: readonly string[] = ["powerFactorRatio"];

/**
 * The crew's own columns of the survey form, as typed, as figures for hang sheet and circuit sheet. Columns are
 * known by name, whatever their case, spaces and unit; others are left alone, blank cells are not given.
 * @param further texts by header
 * @param units of lengths and weights that name none
 * @example crewFigures({ "Box rated (lb)": "50", Slope: "12°" }, "m").hang; // => { boxRatedKg: 22.6796185, slopeDeg: 12 }
 */
export function crewFigures(further: Readonly<Record<string, string>>, units: CrewUnits): CrewFigures {
  const found: Record<CrewColumn["of"], Record<string, unknown>> = { hang: {}, circuit: {}, point: {} };
  const faults: CrewFault[] = [];
  for (const [header, cell] of Object.entries(further)) {
    const { name, unit } = headerName(header);
    const column = Object.hasOwn(CREW_COLUMNS, name) ? CREW_COLUMNS[name]! : null;
    if (column === null || BLANKS.includes(cell.trim())) continue;
    const value = valueOf(column, cell, units, unit);
    if (value === null) faults.push({ column: header, value: cell, expected: expectedOf(column) });
    else found[column.of][column.key] = value;
  }
  return { hang: found.hang, circuit: found.circuit, point: found.point, faults };
}

const BLANKS = ["", "-", "–", "—", "?"];

function headerName(header: string): { name: string; unit: string | null } {
  const words = header.toLowerCase().match(/[a-z0-9°]+|%/g) ?? [];
  const pair = words.slice(-2).join("/");
  if (words.length > 2 && UNIT_PAIRS.includes(pair))
    return { name: words.slice(0, -2).join("_"), unit: pair };
  const last = words.length > 1 ? words.at(-1)! : "";
  const unit = UNIT_WORDS.includes(last) ? last : null;
  return { name: (unit === null ? words : words.slice(0, -1)).join("_"), unit };
}

function valueOf({ key, holds }: CrewColumn, cell: string, units: CrewUnits, unit: string | null): unknown {
  if (typeof holds !== "string") {
    const word = cell
      .trim()
      .toLowerCase()
      .replace(/[\s_]+/g, "-");
    return holds.includes(word) ? word : null;
  }
  const value = crewCell(cell, holds, units, unit);
  if (value === null || (holds === "count" && !Number.isInteger(value))) return null;
  if (value > 1 && SHARES.includes(key)) return null;
  return value === 0 && POSITIVE.includes(key) ? null : value;
}

const EXPECTED = {
  length: "a length ≥ 0 such as 450 mm or 18 in",
  offset: "a length such as 450 mm, -18 in where it lies below",
  weight: "a weight such as 12 kg or 50 lb",
  "weight-per-length": "a weight a length such as 0.3 kg/m or 0.2 lb/ft",
  angle: "degrees",
  amperes: "amperes",
  volts: "volts",
  ratio: "a share such as 0.1 or 10 %",
  count: "a whole number",
};

function expectedOf({ holds }: CrewColumn): string {
  return typeof holds === "string" ? EXPECTED[holds] : holds.join(", ");
}
