import { addressCell } from "./column-address.js";
import { cellNumber, isBlankSign, sizedMhz } from "./column-number.js";
import type { CellNumber } from "./column-number.js";
import { parseCrowd } from "./crowd.js";
import { isLevel } from "./level-range.js";
import { isClock, timeStyleOf } from "./column-time.js";
import type { TimeStyle } from "./column-time.js";

const MOST_TIMES_COUNT = 200;

/** What the cells of one column of a sample are like. Counts are of filled cells. */
export interface ColumnContent {
  readonly filledCount: number;
  /** Addresses, masked ones too. */
  readonly addressCount: number;
  readonly numberCount: number;
  /** Numbers from −130 to −5. */
  readonly levelCount: number;
  /** Numbers from −13,000 to −500: hundredths of a dBm. */
  readonly hundredthCount: number;
  readonly negativeCount: number;
  /** Numbers that are Wi-Fi frequencies, in whatever unit. */
  readonly frequencyCount: number;
  /** Whole numbers that number a Wi-Fi channel. */
  readonly channelCount: number;
  /** Whole numbers that number a Wi-Fi channel at 2.4 or 5 GHz. */
  readonly wifiChannelCount: number;
  /** Numbers from 0 to 100. */
  readonly shareCount: number;
  /** Numbers from 20 to 100. */
  readonly unsignedCount: number;
  readonly percentSignCount: number;
  readonly crowdCount: number;
  /** Cells that name a protection or an amendment of the standard, not a network. */
  readonly jargonCount: number;
  /** Times of day without a date. */
  readonly clockCount: number;
  readonly distinctCount: number;
  readonly highest: CellNumber;
  /** Each number is the one before plus 1. */
  readonly isIndex: boolean;
  readonly timeStyle: TimeStyle | null;
}

const JARGON =
  /^\[.*\]$|wpa|\bwep\b|^open$|^none$|802\.11|^wi-?fi\s?\d$|^(?:b|g|a|n|ac|ax|be|bgn)$|^[kmg]?hz$/i;

/**
 * Looks at the cells of one column.
 * @param cells one a row, blank ones among them
 * @example columnContent(["-60", "-71"], false).levelCount; // => 2
 */
export function columnContent(cells: readonly string[], decimalComma: boolean): ColumnContent {
  const filled = cells.filter((cell) => !isBlankSign(cell));
  const numbers = filled.flatMap((cell) => cellNumber(cell, decimalComma) ?? []);
  const values = numbers.map(({ value }) => value);
  const count = (accepts: (value: number) => boolean): number => values.filter(accepts).length;
  const matches = (accepts: (cell: string) => boolean): number => filled.filter(accepts).length;
  return {
    filledCount: filled.length,
    addressCount: matches((cell) => addressCell(cell).kind !== "none"),
    numberCount: values.length,
    levelCount: count(isLevel),
    hundredthCount: count((value) => value >= -13_000 && value <= -500),
    negativeCount: count((value) => value < 0),
    frequencyCount: count(isWifiFrequency),
    channelCount: count((value) => Number.isInteger(value) && value >= 1 && value <= 233),
    wifiChannelCount: count(isWifiChannel),
    shareCount: count((value) => value >= 0 && value <= 100),
    unsignedCount: count((value) => value >= 20 && value <= 100),
    percentSignCount: numbers.filter(({ unit }) => unit === "%").length,
    crowdCount: matches((cell) => parseCrowd(cell) !== null),
    jargonCount: matches((cell) => JARGON.test(cell.trim())),
    clockCount: matches(isClock),
    distinctCount: new Set(filled).size,
    highest: numbers.reduce((highest, number) => (number.value > highest.value ? number : highest), LOWEST),
    isIndex: values.length > 1 && values.every((value, row) => row === 0 || value === values[row - 1]! + 1),
    timeStyle: timeStyleOf(filled.slice(0, MOST_TIMES_COUNT)),
  };
}

const LOWEST: CellNumber = { value: -Infinity, unit: "" };

/** Is most of a column so? @returns false for a column of blanks */
export function mostly(content: ColumnContent, count: keyof ColumnCounts, leastRatio = 0.6): boolean {
  return content.filledCount > 0 && content[count] >= leastRatio * content.filledCount;
}

type ColumnCounts = {
  [Key in keyof ColumnContent as ColumnContent[Key] extends number ? Key : never]: number;
};

/** @source IEEE 802.11-2020 Annex E: channels 36 to 64, 100 to 144 in steps of 4, 149 to 177 */
function isWifiChannel(value: number): boolean {
  if (value >= 1 && value <= 14) return Number.isInteger(value);
  if ((value >= 36 && value <= 64) || (value >= 100 && value <= 144)) return value % 4 === 0;
  return value >= 149 && value <= 177 && value % 4 === 1;
}

function isWifiFrequency(value: number): boolean {
  if (value <= 0 || (value < 10 && Number.isInteger(value))) return false;
  const frequencyMhz = sizedMhz(value);
  return (frequencyMhz >= 2400 && frequencyMhz <= 2500) || (frequencyMhz >= 4900 && frequencyMhz <= 7200);
}
