import { parseNumber } from "../units/index.js";
import { DELIMITERS } from "./delimiter.js";
import type { Delimiter } from "./delimiter.js";
import { longColumns } from "./sweep-long-columns.js";
import type { LongColumns } from "./sweep-long-columns.js";
import { isTimeText } from "./sweep-time.js";
import { binUnitHz, fits, sweepUnitHz } from "./sweep-unit.js";
import { isMissing, unquoted } from "./sweep-level-cells.js";

/** How a sweep is written, judged by its content. */
export interface SweepLayout {
  readonly delimiter: Delimiter;
  /** Does a line end with a lone carriage return? */
  readonly endsWithReturn: boolean;
  /** Wide rows: the cell of the low frequency; before it stands the time. */
  readonly wideIndex: number | null;
  /** Long rows. */
  readonly long: LongColumns | null;
}

/** Lines judged. */
const MOST_LINES = 400;
const ADDRESS = /\b[0-9a-f]{2}([:-])(?:[0-9a-f]{2}\1){4}[0-9a-f]{2}\b/i;

/**
 * Is a text a power sweep, and how is it written? Wide rows hold a time, low, high and bin frequency, a sample
 * count and as many levels as the span holds bins; long rows a time or none, a frequency and a level. A text
 * with addresses of stations in it is no sweep.
 * @param head the start of the text
 * @param isWhole the head is all there is
 * @returns null when it is something else
 */
export function sweepLayout(head: string, isWhole: boolean): SweepLayout | null {
  if (head.includes("\0") || ADDRESS.test(head)) return null;
  const lines = head.split(/\r\n|\n|\r/);
  if (!isWhole && lines.length > 1) lines.pop();
  const full = lines.filter((line) => line.trim() !== "").slice(0, MOST_LINES);
  const isCut = !isWhole && lines.length === 1;
  const endsWithReturn = !head.includes("\n") && head.includes("\r");
  for (const delimiter of DELIMITERS) {
    const rows = full.map((line) => line.split(delimiter).map((cell) => unquoted(cell.trim())));
    const indexes = rows.map((cells) => wideIndexOf(cells, delimiter, isCut));
    const wideIndex = indexes.find((index) => index !== null) ?? null;
    const wideCount = indexes.filter((index) => index !== null).length;
    if (wideIndex !== null && wideCount * 2 >= rows.length - indexes.indexOf(wideIndex))
      return { delimiter, endsWithReturn, wideIndex, long: null };
    const long = longColumns(rows, delimiter !== ",");
    if (long !== null) return { delimiter, endsWithReturn, wideIndex: null, long };
  }
  return null;
}

/** @returns the cell of the low frequency, when a row reads as time, low, high, bin, samples, levels; else null */
function wideIndexOf(cells: readonly string[], delimiter: Delimiter, isCut: boolean): number | null {
  for (const index of [2, 1]) {
    if (cells.length < index + 5 || !cells.slice(0, index).every(isTimeText)) continue;
    const [low, high, bin, samples] = cells
      .slice(index, index + 4)
      .map((cell) => parseNumber(cell, delimiter !== ","));
    if (isMissing(low) || isMissing(high) || isMissing(bin) || isMissing(samples)) continue;
    if (low < 0 || high < 0 || low === high || bin <= 0 || samples < 0) continue;
    const unitHz = sweepUnitHz(Math.max(low, high));
    const spanHz = Math.abs(high - low) * unitHz;
    if (Math.max(low, high) * unitHz < LOWEST_HZ || bin > spanHz) continue;
    const hasEmptyEnd = cells[cells.length - 1] === "";
    const levelCount = cells.length - index - 4 - (hasEmptyEnd ? 1 : 0);
    const binHz = binUnitHz(bin, spanHz, levelCount, unitHz);
    if (isCut || (binHz !== null && fits(levelCount, spanHz / (bin * binHz)) !== "no")) return index;
  }
  return null;
}

/** No sweep of a radio band lies lower. */
const LOWEST_HZ = 1e6;
