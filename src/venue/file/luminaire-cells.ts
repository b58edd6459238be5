import { feetToM, mToFeet, parseNumber } from "../../units/index.js";
import type { FileUnits } from "./file-spot.js";
import type { CellUnit, LuminaireColumn } from "./luminaire-columns.js";
import { luminaireKeys } from "./luminaire-field.js";

const LENGTHS = ["x", "y", "ceiling_height", "trim_height"];
const NUMBERS = ["footprint", "universe", "address", "watts"];
const BLANKS = ["-", "–", "—", "?", "n/a", "na"];

/** How the numbers of a table are written. */
export interface CellStyle {
  readonly units: FileUnits;
  readonly decimalComma?: boolean;
}

/**
 * A filled cell as the key and value that a venue file would have; what can't be read stays as typed.
 * @example luminaireCell({ key: "trim_height", unit: null }, `14'6"`, { units: "ft" }); // => ["trim_height", 14.5]
 */
export function luminaireCell(
  { key, unit }: LuminaireColumn,
  cell: string,
  { units, decimalComma: comma = false }: CellStyle,
): readonly [key: string, value: unknown] {
  if (BLANKS.includes(cell.toLowerCase()) && !(key in luminaireKeys.needed))
    return [key === "weight" ? "weight_kg" : key, null];
  if (LENGTHS.includes(key)) return [key, lengthCell(cell, unit ?? units, units, comma) ?? cell];
  if (key === "weight") {
    const [, digits = cell, own] = /^(.*?)\s*(kg|lbs?)$/i.exec(cell) ?? [];
    const isPound = (own?.toLowerCase() ?? unit ?? (units === "ft" ? "lb" : "kg")).startsWith("lb");
    return [isPound ? "weight_lb" : "weight_kg", parseNumber(digits, comma) ?? cell];
  }
  if (NUMBERS.includes(key)) return [key, parseNumber(cell.replace(/\s*(?:W|VA)$/i, ""), comma) ?? cell];
  if (key === "emergency") return [key, YES_OR_NO[cell.toLowerCase()] ?? cell];
  return [key, key === "on_link_loss" ? cell.toLowerCase() : cell];
}

const YES_OR_NO: Readonly<Record<string, string>> = {
  ...Object.fromEntries(["yes", "y", "true", "x", "1", "ja", "oui", "si"].map((word) => [word, "yes"])),
  ...Object.fromEntries(["no", "n", "false", "0", "nein", "non"].map((word) => [word, "no"])),
  unknown: "unknown",
};

const M_PER: Readonly<Record<string, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  ft: feetToM(1),
  in: feetToM(1) / 12,
};

/** A length of a cell in the file's unit; feet and inches may stand together. */
function lengthCell(cell: string, unit: CellUnit, units: FileUnits, comma: boolean): number | null {
  const inUnits = (valueM: number): number => (units === "m" ? valueM : mToFeet(valueM));
  const both = /^([+-]?\d+)\s*(?:'|′|ft)\s*([\d.,]+)\s*(?:"|″|''|in)?$/i.exec(cell);
  if (both !== null) {
    const inches = parseNumber(both[2]!, comma);
    const feet = Number(both[1]);
    return inches === null ? null : inUnits(feetToM(feet + (cell.startsWith("-") ? -inches : inches) / 12));
  }
  const [, digits = cell, own] = /^(.*?)\s*(mm|cm|m|ft|in|'|′|"|″)$/i.exec(cell) ?? [];
  const cellUnit = own === undefined ? unit : own.replace(/['′]/, "ft").replace(/["″]/, "in").toLowerCase();
  const value = parseNumber(digits, comma);
  if (value === null) return null;
  return cellUnit === units ? value : inUnits(value * (M_PER[cellUnit] ?? NaN));
}
