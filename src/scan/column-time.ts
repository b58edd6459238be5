import { parseIsoTime } from "./iso-time.js";

/** How the times of a column are written. */
export interface TimeStyle {
  /** @returns ms since 1970 UTC; null where the text is no such time */
  readonly parse: (text: string) => number | null;
  /** What had to be taken for granted, in words; null: nothing. */
  readonly assumed: string | null;
}

const NUMERIC_DATE =
  /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})(?:[ ,T]+(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,]\d+)?)?(?: ?([ap])\.?m\.?)?)?$/i;
const YEAR_FIRST = /^\d{4}\/\d\d\/\d\d/;

/**
 * Finds how a column writes its times: ISO 8601, year first with slashes, day or month first, seconds or
 * milliseconds since 1970. Where day and month can't be told apart the day is taken to come first (assumed).
 * @param cells filled cells of the column
 * @returns null where most cells fit no way
 * @example timeStyleOf(["14.03.2026 18:30"])!.parse("15.03.2026"); // => 1773532800000
 */
export function timeStyleOf(cells: readonly string[]): TimeStyle | null {
  if (cells.length === 0) return null;
  const fits = STYLES.filter(({ parse }) => {
    const readCount = cells.filter((cell) => parse(cell) !== null).length;
    return readCount * 10 >= cells.length * 8;
  });
  const [first, second] = fits;
  if (first === undefined) return null;
  const isOpen =
    first.parse === dayFirst && second?.parse === monthFirst && cells.some((cell) => /\//.test(cell));
  return { parse: first.parse, assumed: isOpen ? "the day comes before the month" : null };
}

const STYLES = [
  { parse: parseIsoTime },
  { parse: slashed },
  { parse: dayFirst },
  { parse: monthFirst },
  { parse: sinceEpoch },
];

function slashed(text: string): number | null {
  return YEAR_FIRST.test(text.trim()) ? parseIsoTime(text.trim().replaceAll("/", "-")) : null;
}

function dayFirst(text: string): number | null {
  const match = NUMERIC_DATE.exec(text.trim());
  return match === null ? null : numericDate(match, match[1]!, match[2]!);
}

function monthFirst(text: string): number | null {
  const match = NUMERIC_DATE.exec(text.trim());
  return match === null ? null : numericDate(match, match[2]!, match[1]!);
}

function numericDate(match: RegExpExecArray, day: string, month: string): number | null {
  const half = match[7]?.toLowerCase();
  const hour = Number(match[4] ?? 0);
  if (half !== undefined && (hour < 1 || hour > 12)) return null;
  const hours = half === undefined ? hour : (hour % 12) + (half === "p" ? 12 : 0);
  const date = `${match[3]}-${padded(month)}-${padded(day)}`;
  return parseIsoTime(`${date}T${padded(String(hours))}:${match[5] ?? "00"}:${match[6] ?? "00"}`);
}

function padded(digits: string): string {
  return digits.padStart(2, "0");
}

/** Whole or broken seconds of this century's first half, or as many milliseconds. */
function sinceEpoch(text: string): number | null {
  if (!/^\d{10}(?:\.\d+)?$|^\d{13}$/.test(text.trim())) return null;
  const value = Number(text);
  const ms = value < 1e11 ? Math.round(value * 1000) : value;
  return ms >= 946_684_800_000 && ms < 2_524_608_000_000 ? ms : null;
}

const CLOCK = /^\d{1,2}:\d\d(?::\d\d(?:[.,]\d+)?)?(?: ?[ap]\.?m\.?)?$/i;

/** Is it a time of day without a date? */
export function isClock(text: string): boolean {
  return CLOCK.test(text.trim());
}

/**
 * A date and a time of day of two columns as one.
 * @example joinedTime("2026-03-14", "9:05"); // => "2026-03-14 09:05"
 */
export function joinedTime(date: string, clock: string): string {
  const time = clock.trim().replace(/^\d:/, "0$&");
  return date.trim() === "" || time === "" ? date : `${date.trim()} ${time}`;
}
