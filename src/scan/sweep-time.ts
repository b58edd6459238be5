import { parseNumber } from "../units/index.js";
import { parseIsoTime } from "./iso-time.js";

const DAY_MS = 86_400_000;
const CLOCK = /^\d{1,2}:\d\d(?::\d\d(?:[.,]\d+)?)?$/;

/**
 * A sweep's time stamp: a date and a clock time, one stamp as ISO 8601 writes it, seconds or milliseconds
 * since 1970, or a clock time or elapsed seconds counted from the time that the file was given.
 * @param cells one cell, or a date and a clock time
 * @param baseMs what `time` the file was given; null: none
 * @returns ms since 1970 UTC; null where the stamp says no date and the file was given none
 * @example sweepTimeMs(["2026-03-07", "19:20:00"], null); // => 1772911200000
 */
export function sweepTimeMs(cells: readonly string[], baseMs: number | null): number | null {
  const [first = "", second] = cells;
  if (second !== undefined) return parseIsoTime(`${isoDate(first)}T${paddedClock(second)}`);
  if (CLOCK.test(first)) return baseMs === null ? null : onDayOf(baseMs, first);
  const seconds = parseNumber(first, true);
  if (seconds !== null && !/^\d{8}$/.test(first)) return fromSeconds(seconds, baseMs);
  const [date = "", clock] = first.split(/[T ]+/);
  return parseIsoTime(clock === undefined ? isoDate(date) : `${isoDate(date)}T${paddedClock(clock)}`);
}

/** Can a cell be a time stamp, or a part of one? */
export function isTimeText(cell: string): boolean {
  return CLOCK.test(cell) || /^\d{1,4}([-./])\d{1,2}\1\d{1,4}/.test(cell) || parseNumber(cell, true) !== null;
}

/** Year first, or day, month and year between points: the others can't be told apart. */
function isoDate(text: string): string {
  const yearFirst = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/.exec(text);
  if (yearFirst !== null) return isoWords(yearFirst[1]!, yearFirst[2]!, yearFirst[3]!);
  const dayFirst = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text);
  return dayFirst === null ? text : isoWords(dayFirst[3]!, dayFirst[2]!, dayFirst[1]!);
}

function isoWords(year: string, month: string, day: string): string {
  return `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
}

function paddedClock(text: string): string {
  return /^\d:/.test(text) ? `0${text}` : text;
}

function onDayOf(baseMs: number, clock: string): number | null {
  const timeMs = parseIsoTime(`1970-01-01T${paddedClock(clock)}`);
  return timeMs === null ? null : Math.floor(baseMs / DAY_MS) * DAY_MS + timeMs;
}

/** Ten digits before the point are seconds since 1970, thirteen milliseconds; fewer are elapsed seconds. */
function fromSeconds(seconds: number, baseMs: number | null): number | null {
  if (seconds >= 1e8 && seconds < 1e10) return Math.round(seconds * 1000);
  if (seconds >= 1e11 && seconds < 1e13) return Math.round(seconds);
  return baseMs === null || seconds < 0 || seconds > 1e8 ? null : baseMs + Math.round(seconds * 1000);
}
