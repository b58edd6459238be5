import { printable } from "../issues/index.js";
import { feetInchesText, metresText } from "../units/index.js";
import type { HangGap, HangRow, RatedPart } from "../install/index.js";
import type { HangPlan } from "../venue/index.js";
import { fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import { columnsOf } from "./text-layout.js";

/** Parts of an inch that a crew cuts to. */
const INCH_PARTS_COUNT = 8;
const LB_PER_KG = 1 / 0.45359237; // exact: international pound of 1959

/** A length in a sentence: to the millimetre, or to an eighth of an inch. @example lengthWords(2.8, "m"); // => "2.800 m" */
export function lengthWords(lengthM: number, units: LengthUnit): string {
  return units === "m" ? metresText(lengthM) : feetInchesText(lengthM, INCH_PARTS_COUNT);
}

/** A short length in whole units for the opening block. @example shortWords(0.03, "m"); // => "30 mm" */
export function shortWords(lengthM: number, units: LengthUnit): string {
  return units === "m"
    ? `${Math.round(lengthM * 1000)} mm`
    : feetInchesText(lengthM, INCH_PARTS_COUNT).replace(/^(-?)0' /, "$1");
}

/** A link's inside length or a stem's step, close enough to order by. @example pitchWords(0.035, "m"); // => "35 mm" */
export function pitchWords(stepM: number, units: LengthUnit): string {
  return units === "m"
    ? `${Number((stepM * 1000).toFixed(1))} mm`
    : `${Number((stepM / 0.0254).toFixed(3))} in`;
}

/** A length in a table whose head names the unit; a blank to fill in where there is none. */
export function lengthCell(lengthM: number | null, units: LengthUnit): string {
  if (lengthM === null) return "____";
  return units === "m" ? metresText(lengthM).replace(" m", "") : feetInchesText(lengthM, INCH_PARTS_COUNT);
}

/** A column's head with its unit; feet and inches carry theirs in the cells. @example lengthHead("cord", "m"); // => "cord m" */
export function lengthHead(name: string, units: LengthUnit): string {
  return units === "m" ? `${name} m` : name;
}

/** A length to order, never rounded down: tenths of a metre, or feet. @example orderWords(57.41, "m"); // => "57.5 m" */
export function orderWords(lengthM: number, units: LengthUnit): string {
  return units === "m"
    ? `${fixed(Math.ceil(lengthM * 10 - 1e-6) / 10, 1)} m`
    : `${Math.ceil(lengthM / 0.3048 - 1e-6)} ft`;
}

/** The same in whole metres or feet, for the opening block. @example wholeOrderWords(57.41, "m"); // => "58 m" */
export function wholeOrderWords(lengthM: number, units: LengthUnit): string {
  return units === "m" ? `${Math.ceil(lengthM - 1e-6)} m` : orderWords(lengthM, units);
}

/** @example weightWords(11.27, "m"); // => "11.3 kg" */
export function weightWords(weightKg: number, units: LengthUnit): string {
  return units === "m" ? `${fixed(weightKg, 1)} kg` : `${fixed(weightKg * LB_PER_KG, 1)} lb`;
}

/** Why a row has no length. */
export const GAP_WORDS: Readonly<Record<HangGap, string>> = {
  "ceiling-height": "the height of its ceiling point is not given",
  "trim-height": "its trim height is not given, nor its room's",
  "body-height": "its body height is not given (body_height)",
  step: "the pitch of the chain is not given (--pitch)",
  "no-room": "hardware and body alone reach below trim",
};

/** What carries weight, in words. */
export const PART_WORDS: Readonly<Record<RatedPart, string>> = {
  suspension: "chain, rope or stem",
  hook: "hook",
  box: "box",
  support: "support",
  safety: "safety cable",
};

/** The cord that is cut for a luminaire, and the luminaire that it comes from; null: from its own box. */
export interface CutCord {
  readonly lengthM: number | null;
  readonly from: string | null;
}

/** By the circuit sheet where it states the cord, else by the hang sheet. */
export function cordOf({ circuits }: HangPlan, { name, cord }: HangRow): CutCord {
  const row = circuits.rows.find(({ luminaires }) => luminaires.includes(name));
  const index = row?.luminaires.indexOf(name) ?? 0;
  const from = row?.feed === "through-fed" && index > 0 ? row.luminaires[index - 1]! : null;
  return { lengthM: row?.feedsM[index] ?? cord?.lengthM ?? null, from };
}

/** The first names that fit so many columns, and how many more there are. */
export function fewNames(names: readonly string[], columnCount: number): string {
  for (let count = names.length; count > 1; count--) {
    const words = someNames(names, count);
    if (columnsOf(words) <= columnCount) return words;
  }
  return someNames(names, 1);
}

function someNames(names: readonly string[], count: number): string {
  const shown = names
    .slice(0, count)
    .map((name) => printable(name, 40))
    .join(", ");
  return names.length > count ? `${shown} and ${names.length - count} more` : shown;
}
