import { feetToM } from "../units/index.js";

/** What a crew's cell may hold. */
export type CrewKind = "length" | "weight" | "angle" | "amperes" | "count";

/** The unit system of a crew's table: of lengths and weights that name no unit. */
export type CrewUnits = "m" | "ft";

const FACTORS: Readonly<Record<CrewKind, Readonly<Record<string, number>>>> = {
  length: {
    m: 1,
    cm: 0.01,
    mm: 0.001,
    ft: feetToM(1),
    "'": feetToM(1),
    in: feetToM(1) / 12,
    '"': feetToM(1) / 12,
  },
  // exact: international pound of 1959
  weight: { kg: 1, g: 0.001, lb: 0.45359237, lbs: 0.45359237 },
  angle: { deg: 1, "°": 1 },
  amperes: { a: 1 },
  count: { "": 1 },
};
const PLAIN: Readonly<Record<CrewKind, (units: CrewUnits) => string>> = {
  length: (units) => units,
  weight: (units) => (units === "m" ? "kg" : "lb"),
  angle: () => "deg",
  amperes: () => "a",
  count: () => "",
};

/**
 * A crew's figure in m, kg, degrees, amperes or pieces: `450 mm`, `18 in`, `1' 6"`, `1 1/4 in`, `50 lb`, `12°`.
 * A comma may be the decimal point.
 * @param unit that the column's header names; null: none
 * @returns null where the cell is no such figure ≥ 0
 * @example crewCell(`1' 6"`, "length", "ft", null); // => 0.4572
 */
export function crewCell(cell: string, kind: CrewKind, units: CrewUnits, unit: string | null): number | null {
  const text = cell
    .trim()
    .toLowerCase()
    .replace(/[′’]/g, "'")
    .replace(/[″”]|''/g, '"');
  const both = kind === "length" ? /^(\d+)\s*(?:'|ft)\s*([\d./ ]+)\s*(?:"|in)?$/.exec(text) : null;
  if (both !== null) {
    const inches = plainFigure(both[2]!);
    return inches === null || inches >= 12 ? null : feetToM(Number(both[1]) + inches / 12);
  }
  const [, figure = "", own = ""] = /^([\d.,/ ]+?)\s*([a-z°'"]*)$/.exec(text) ?? [];
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
