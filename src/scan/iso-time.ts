const DATE = "(\\d{4})(?:-(\\d\\d)-(\\d\\d)|(\\d\\d)(\\d\\d))";
const CLOCK = "(\\d\\d)(?::?(\\d\\d)(?::?(\\d\\d)(?:[.,](\\d+))?)?)?";
const ZONE = "(z|[+-]\\d\\d(?::?\\d\\d)?)?";
const ISO_8601 = new RegExp(`^${DATE}(?:[t ]${CLOCK}${ZONE})?$`, "i");

/** The Gregorian calendar repeats after 400 years of 146,097 days. */
const CYCLE_MS = 146_097 * 86_400_000;

/**
 * A calendar date, or a date and a time of day, as ISO 8601 writes them, extended or basic: a `T` or a
 * blank between the two; fractions of a second are cut to milliseconds; no zone is UTC; 24:00 is the end
 * of the day.
 * @returns ms since 1970 UTC; null when the text is no such time, or the calendar has no such day
 * @source ISO 8601-1:2019, from memory (24:00 as in ISO 8601:2004)
 * @example parseIsoTime("1970-01-02T00:00:00.5+01:00"); // => 82800500
 */
export function parseIsoTime(text: string): number | null {
  const match = ISO_8601.exec(text.trim());
  if (match === null) return null;
  const dayMs = dateMs(Number(match[1]), Number(match[2] ?? match[4]), Number(match[3] ?? match[5]));
  const clock = clockMs(Number(match[6] ?? 0), Number(match[7] ?? 0), Number(match[8] ?? 0), match[9] ?? "");
  const zoneMs = offsetMs(match[10] ?? "z");
  return dayMs === null || clock === null || zoneMs === null ? null : dayMs + clock - zoneMs;
}

function dateMs(year: number, month: number, day: number): number | null {
  const ms = Date.UTC(year + 400, month - 1, day);
  const date = new Date(ms);
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day ? ms - CYCLE_MS : null;
}

function clockMs(hours: number, minutes: number, seconds: number, fraction: string): number | null {
  const ms = Number(`${fraction}000`.slice(0, 3));
  const total = ((hours * 60 + minutes) * 60 + seconds) * 1000 + ms;
  return minutes <= 59 && seconds <= 59 && total <= 86_400_000 ? total : null;
}

function offsetMs(zone: string): number | null {
  if (/^z$/i.test(zone)) return 0;
  const [hours, minutes] = [Number(zone.slice(1, 3)), Number(zone.slice(3).replace(":", ""))];
  if (hours > 23 || minutes > 59) return null;
  return (zone.startsWith("-") ? -1 : 1) * (hours * 60 + minutes) * 60_000;
}
