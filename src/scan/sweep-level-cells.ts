import { parseNumber } from "../units/index.js";
import { powersByHundredth, sweepPowerMw } from "./sweep-power.js";

const BLANK = 0x20;
const TAB = 0x09;
const MINUS = 0x2d;
const POINT = 0x2e;
const COMMA = 0x2c;
/** A byte is a digit when it differs from `0` by less than ten in its low bits. */
const ZERO = 0x30;
const MOST_DIGITS = 15;
const LONGEST_CELL = 200;
/** Bytes of a cell such as −72.35 and the delimiter after it. */
const USUAL_LENGTH = 7;

/** The level cells of one row as powers, read from bytes without making text of them. */
export class SweepLevelCells {
  /** mW by cell; NaN where a cell holds no level. As long as the longest row so far. */
  powerMw = new Float64Array(1024);
  /** Cells of the row last read that hold no level. */
  invalidCount = 0;
  /** Those of them above 0. */
  positiveCount = 0;
  /** The first invalid text ever met, for the message. */
  firstInvalid: string | null = null;
  private readonly powers = powersByHundredth();
  private readonly decimalComma: boolean;

  constructor(private readonly delimiter: number) {
    this.decimalComma = delimiter !== COMMA;
  }

  /**
   * Reads cells up to the end of the row.
   * @param bytes must go on by at least one byte after `endIndex` − 1
   * @returns how many cells there were; 0 for an empty stretch
   */
  read(bytes: Uint8Array, startIndex: number, endIndex: number): number {
    this.invalidCount = 0;
    this.positiveCount = 0;
    const { powers } = this;
    let { powerMw } = this;
    let at = startIndex;
    let count = 0;
    while (at < endIndex) {
      if (count === powerMw.length) powerMw = this.grow();
      while (bytes[at] === BLANK) at++;
      const hundredths = this.usual(bytes, at, endIndex);
      if (hundredths >= 0) {
        powerMw[count++] = powers[hundredths]!;
        at += USUAL_LENGTH;
      } else {
        const next = this.cellEnd(bytes, at, endIndex);
        powerMw[count++] = this.slowly(bytes, at, next);
        at = next + 1;
      }
    }
    return count;
  }

  /** @returns hundredths of a dB of a cell such as −72.35, by far the most; −1 for any other */
  private usual(bytes: Uint8Array, at: number, endIndex: number): number {
    const tens = bytes[at + 1]! ^ ZERO;
    const ones = bytes[at + 2]! ^ ZERO;
    const tenths = bytes[at + 4]! ^ ZERO;
    const hundredths = bytes[at + 5]! ^ ZERO;
    if (bytes[at] !== MINUS || bytes[at + 3] !== POINT) return -1;
    if (tens > 9 || ones > 9 || tenths > 9 || hundredths > 9) return -1;
    if (bytes[at + 6] !== this.delimiter && at + 6 !== endIndex) return -1;
    return at + 6 > endIndex ? -1 : tens * 1000 + ones * 100 + tenths * 10 + hundredths;
  }

  private grow(): Float64Array<ArrayBuffer> {
    const grown = new Float64Array(this.powerMw.length * 2);
    grown.set(this.powerMw);
    return (this.powerMw = grown);
  }

  private cellEnd(bytes: Uint8Array, startIndex: number, endIndex: number): number {
    let at = startIndex;
    while (at < endIndex && bytes[at] !== this.delimiter) at++;
    return at;
  }

  /** A cell of any other form: many decimals, a sign or none, an exponent, or no number at all. */
  private slowly(bytes: Uint8Array, startIndex: number, endIndex: number): number {
    const levelDbm =
      plainNumber(bytes, startIndex, endIndex, this.decimalComma) ?? this.parsed(bytes, startIndex, endIndex);
    const powerMw = levelDbm === null ? NaN : sweepPowerMw(levelDbm);
    if (powerMw === powerMw) return powerMw;
    this.invalidCount++;
    if (levelDbm !== null && levelDbm > 0) this.positiveCount++;
    this.firstInvalid ??= cellText(bytes, startIndex, endIndex);
    return NaN;
  }

  private parsed(bytes: Uint8Array, startIndex: number, endIndex: number): number | null {
    return parseNumber(unquoted(cellText(bytes, startIndex, endIndex)), this.decimalComma);
  }
}

/** @returns a decimal of at most fifteen digits, correctly rounded; null for any other text */
export function plainNumber(
  bytes: Uint8Array,
  startIndex: number,
  endIndex: number,
  decimalComma = false,
): number | null {
  let at = startIndex;
  while (at < endIndex && bytes[at] === BLANK) at++;
  const isNegative = bytes[at] === MINUS;
  if (isNegative) at++;
  let mantissa = 0;
  let digitCount = 0;
  let scale = 1;
  let sawPoint = false;
  for (; at < endIndex; at++) {
    const digit = bytes[at]! ^ ZERO;
    if (digit < 10) {
      if (++digitCount > MOST_DIGITS) return null;
      mantissa = mantissa * 10 + digit;
      if (sawPoint) scale *= 10;
    } else if ((bytes[at] === POINT || (decimalComma && bytes[at] === COMMA)) && !sawPoint) sawPoint = true;
    else break;
  }
  while (at < endIndex && (bytes[at] === BLANK || bytes[at] === TAB)) at++;
  if (at < endIndex || digitCount === 0) return null;
  return isNegative ? -(mantissa / scale) : mantissa / scale;
}

/** @returns bytes as text, one character a byte: enough for numbers, times and what stands in their place */
export function cellText(bytes: Uint8Array, startIndex: number, endIndex: number): string {
  let text = "";
  for (let at = startIndex; at < endIndex && text.length < LONGEST_CELL; at++)
    text += String.fromCharCode(bytes[at]!);
  return text.trim();
}

/** @returns a cell without the quotes around it */
export function unquoted(cell: string): string {
  return cell.replace(/^"(.*)"$/, "$1").trim();
}

/** @returns is there no number: no cell, or one that holds none */
export function isMissing(value: number | null | undefined): value is null | undefined {
  return value === null || value === undefined;
}
