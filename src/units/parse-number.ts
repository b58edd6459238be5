const POINT = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
const POINT_OR_COMMA = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i;

/**
 * A decimal number as people and programs write it, blanks around it allowed; a typographic minus counts
 * as a minus. Hexadecimal, NaN, Infinity and what is too large for a finite number are no numbers here.
 * @param decimalComma a comma may stand for the decimal point
 * @returns null when the text is no such number
 * @example parseNumber(" -60,5 ", true); // => -60.5
 */
export function parseNumber(text: string, decimalComma: boolean): number | null {
  const plain = text.trim().replace("\u2212", "-");
  if (!(decimalComma ? POINT_OR_COMMA : POINT).test(plain)) return null;
  const value = Number(decimalComma ? plain.replace(",", ".") : plain);
  return Number.isFinite(value) ? value : null;
}
