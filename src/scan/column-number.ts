import { parseNumber } from "../units/index.js";

const UNIT = /\s*(dbm|%|[kmg]?hz|mbps)$/i;
const BLANKS: ReadonlySet<string> = new Set(["", "-", "--", "---", "n/a", "na", "null", "none", "?", "nan"]);

/** A channel and, behind a comma, the side of its secondary channel (or a width at 5 GHz). */
const SIDED_CHANNEL = /^(\d{1,3}),(?:([+-])1|80|160)$/;

/**
 * @returns the side of the secondary channel that a channel's cell names; null: none
 * @example secondarySide("6,-1"); // => "-"
 */
export function secondarySide(text: string): "+" | "-" | null {
  return (SIDED_CHANNEL.exec(text.trim())?.[2] as "+" | "-" | undefined) ?? null;
}

/** A number of a cell and the unit that stands behind it, lower case; empty: none. */
export interface CellNumber {
  readonly value: number;
  readonly unit: string;
}

/**
 * The number of a cell, with or without a unit behind it; of a channel with the side of its secondary one
 * (`6,-1`) the channel.
 * @returns null when it is no number
 * @example cellNumber("2.412 GHz", false); // => { value: 2.412, unit: "ghz" }
 */
export function cellNumber(text: string, decimalComma: boolean): CellNumber | null {
  const plain = parseNumber(text, decimalComma);
  if (plain !== null) return { value: plain, unit: "" };
  const trimmed = text.trim();
  const sided = SIDED_CHANNEL.exec(trimmed);
  if (sided !== null) return { value: Number(sided[1]), unit: "" };
  const unit = UNIT.exec(trimmed)?.[1];
  if (unit === undefined) return null;
  const value = parseNumber(trimmed.replace(UNIT, ""), decimalComma);
  return value === null ? null : { value, unit: unit.toLowerCase() };
}

/** Is it nothing, or one of the signs that stand for nothing, as `--` or `n/a`? */
export function isBlankSign(text: string): boolean {
  return text === "" || (text.length < 6 && BLANKS.has(text.trim().toLowerCase())) || text.trim() === "";
}

/**
 * A radio frequency by its size, whatever unit its header names: below 10 it is GHz, below 10,000 MHz,
 * below 10,000,000 kHz, else Hz.
 * @param value as written
 * @returns MHz, to 1 Hz
 * @example sizedMhz(2412000); // => 2412
 */
export function sizedMhz(value: number): number {
  const factor = value < 10 ? 1e3 : value < 1e4 ? 1 : value < 1e7 ? 1e-3 : 1e-6;
  return Math.round(value * factor * 1e6) / 1e6;
}
