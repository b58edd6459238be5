import { feetToM } from "../units/index.js";

/** What a crew's cell may hold. */
export type CrewKind =
  "length" | "offset" | "weight" | "weight-per-length" | "angle" | "amperes" | "volts" | "ratio" | "count";

/** The unit system of a crew's table: of lengths and weights that name no unit. */
export type CrewUnits = "m" | "ft";

/** kg of a pound, exact: international avoirdupois pound of 1959. */
const KG_PER_LB = 0.45359237;
const LENGTHS: Readonly<Record<string, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  ft: feetToM(1),
  "'": feetToM(1),
  in: feetToM(1) / 12,
  '"': feetToM(1) / 12,
};
const FACTORS: Readonly<Record<CrewKind, Readonly<Record<string, number>>>> = {
  length: LENGTHS,
  offset: LENGTHS,
  weight: { kg: 1, g: 0.001, lb: KG_PER_LB, lbs: KG_PER_LB },
  "weight-per-length": { "kg/m": 1, "g/m": 0.001, "lb/ft": KG_PER_LB / feetToM(1) },
  angle: { deg: 1, "°": 1 },
  amperes: { a: 1 },
  volts: { v: 1 },
  ratio: { "": 1, "%": 0.01 },
  count: { "": 1 },
};
const PLAIN: Readonly<Record<CrewKind, (units: CrewUnits) => string>> = {
  length: (units) => units,
  offset: (units) => units,
  weight: (units) => (units === "m" ? "kg" : "lb"),
  "weight-per-length": (units) => (units === "m" ? "kg/m" : "lb/ft"),
  angle: () => "deg",
  amperes: () => "a",
  volts: () => "v",
  ratio: () => "",
  count: () => "",
};

/**
 * A crew's figure in m, kg, kg/m, degrees, amperes, volts, as a share or in pieces: `450 mm`, `18 in`, `1' 6"`,
 * `1 1/4 in`, `50 lb`, `0.3 kg/m`, `12°`, `10 %`. A comma may be the decimal point.
 * @param unit that the column's header names; null: none
 * @param cell as written
 * @returns null where the cell is no such figure ≥ 0; an offset may also be below 0
 * @example crewCell(`1' 6"`, "length", "ft", null); // => 0.4572
 */
export function crewCell(cell: string, kind: CrewKind, units: CrewUnits, unit: string | null): number | null {
  if (kind !== "offset") return plainCell(cell, kind, units, unit);
  const [, sign = "", rest = ""] = /^\s*([+−-]?)(.*)$/su.exec(cell) ?? [];
  const valueM = plainCell(rest, kind, units, unit);
  return valueM === null || valueM === 0 || sign === "" || sign === "+" ? valueM : -valueM;
}

function plainCell(cell: string, kind: CrewKind, units: CrewUnits, unit: string | null): number | null {
  const text = cell
    .trim()
    .toLowerCase()
    .replace(/[′’]/g, "'")
    .replace(/[″”]|''/g, '"');
  const both = FACTORS[kind] === LENGTHS ? /^(\d+)\s*(?:'|ft)\s*([\d./ ]+)\s*(?:"|in)?$/.exec(text) : null;
  if (both !== null) {
    const inches = plainFigure(both[2]!);
    return inches === null || inches >= 12 ? null : feetToM(Number(both[1]) + inches / 12);
  }
  const [, figure = "", own = ""] = /^([\d.,/ ]+?)\s*([a-z°%/'"]*)$/.exec(text) ?? [];
  const value = plainFigure(figure);
  const factor = FACTORS[kind][own === "" ? (unit ?? PLAIN[kind](units)) : own];
  return value === null || factor === undefined ? null : value * factor;
}

/** `12`, `12.5`, `12,5`, `3/8` or `1 3/8`. */
function plainFigure(text: string): number | null {
  const parts = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(text.trim());
  if (parts !== null) {
    const value = Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
    return Number.isFinite(value) ? value : null;
  }
  return /^(?:\d+(?:[.,]\d*)?|[.,]\d+)$/.test(text.trim()) ? Number(text.trim().replace(",", ".")) : null;
}
