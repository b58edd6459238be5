import { isLevel, isUnheardSign } from "../scan/index.js";
import { feetToM, parseNumber } from "../units/index.js";

const NOT_HEARD =
  /^(?:not heard|unheard|no signal|no link|nothing|lost|none|nichts|kein signal|rien|nada|niente)$/i;
const BLANK = /^(?:|-{1,3}|n\/?a|null|\?)$/i;
const YES = /^(?:y|yes|true|1|ok|x|ja|oui|si|sì|sí)$/i;
const NO = /^(?:n|no|not|false|0|lost|nein|non)$/i;
const FEET_INCHES = /^(\d+(?:\.\d+)?)\s*'(?:\s*(\d+(?:\.\d+)?)\s*")?$/;

/** What a cell of levels says; `bad`: nothing that a level can be. */
export type LevelCell =
  | { readonly kind: "level"; readonly levelDbm: number }
  | { readonly kind: "not-heard"; readonly floorDbm: number | null }
  | { readonly kind: "blank" | "bad" };

/**
 * A level, or one of the ways in which people and programs write that nothing was heard: words, `< -95`, or a
 * number that no receiver reads.
 * @example levelCell("<-95 dBm", false); // => { kind: "not-heard", floorDbm: -95 }
 * @example levelCell("-61.5", false); // => { kind: "level", levelDbm: -61.5 }
 */
export function levelCell(text: string, decimalComma: boolean): LevelCell {
  const plain = text.trim().replace(/\s*dbm$/i, "");
  if (BLANK.test(plain)) return { kind: "blank" };
  if (NOT_HEARD.test(plain)) return { kind: "not-heard", floorDbm: null };
  const isBelow = plain.startsWith("<");
  const value = parseNumber(isBelow ? plain.replace(/^<=?/, "") : plain, decimalComma);
  if (value === null) return { kind: "bad" };
  if (isBelow) return isLevel(value) ? { kind: "not-heard", floorDbm: value } : { kind: "bad" };
  if (isLevel(value)) return { kind: "level", levelDbm: value };
  return isUnheardSign(value) ? { kind: "not-heard", floorDbm: null } : { kind: "bad" };
}

/**
 * A quality from 0 to 100 as a level; 0 is not heard.
 * @source N → N/2 − 100 dBm: common practice, no source
 * @example qualityCell("70 %", false); // => { kind: "level", levelDbm: -65 }
 */
export function qualityCell(text: string, decimalComma: boolean): LevelCell {
  const plain = text.trim().replace(/\s*%$/, "");
  if (BLANK.test(plain)) return { kind: "blank" };
  if (NOT_HEARD.test(plain)) return { kind: "not-heard", floorDbm: null };
  const value = parseNumber(plain, decimalComma);
  if (value === null || value < 0 || value > 100) return { kind: "bad" };
  return value === 0 ? { kind: "not-heard", floorDbm: null } : { kind: "level", levelDbm: value / 2 - 100 };
}

/** @returns true, false, null where blank, undefined where it is neither */
export function yesNoCell(text: string): boolean | null | undefined {
  const plain = text.trim();
  if (YES.test(plain)) return true;
  if (NO.test(plain)) return false;
  return BLANK.test(plain) ? null : undefined;
}

/**
 * A length in metres: in the unit that stands behind it, else in the one given.
 * @returns null where it is no length
 * @example lengthCellM("10 ft", "m", false); // => 3.048
 */
export function lengthCellM(text: string, unit: "m" | "ft", decimalComma: boolean): number | null {
  const plain = text.trim();
  const feet = FEET_INCHES.exec(plain);
  if (feet !== null) return feetToM(Number(feet[1]) + Number(feet[2] ?? 0) / 12);
  const named = /\s*(m|ft|feet)$/i.exec(plain)?.[1]?.toLowerCase();
  const value = parseNumber(plain.replace(/\s*(?:m|ft|feet)$/i, ""), decimalComma);
  if (value === null) return null;
  return (named ?? unit) === "m" ? value : feetToM(value);
}

/** Nothing, or one of the signs for it. */
export function isBlankCell(text: string): boolean {
  return BLANK.test(text.trim());
}
