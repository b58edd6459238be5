import { ArgumentError, requireFinite } from "../issues/index.js";
import type { Reading } from "./reading.js";
import { SCAN_CSV_COLUMNS } from "./scan-csv-columns.js";
import { guardCell } from "./spreadsheet-guard.js";

/** First and last ms of the years 0…9999, which ISO 8601 writes with four digits. */
const TIME_RANGE_MS = [-62_167_219_200_000, 253_402_300_799_999] as const;

/**
 * Readings as a scan CSV: comma, LF, the header first. `readScan` gives the same readings back, but for
 * what the format has no column for: `source` and `line`, `signalAssumed`, `ageMs`; blanks around a
 * place's name are not kept. A centre that was assumed stays blank, so that it is assumed again. Names
 * that a spreadsheet would run get an apostrophe in front, and control characters in them are written out as
 * `\u001b` behind one: `readScan` takes both back.
 * @returns the file, header first
 * @throws {ArgumentError} when a number is not finite, or a time outside the years 0…9999
 * @example writeScanCsv([]).startsWith("time,place,crowd,bssid,"); // => true
 */
export function writeScanCsv(readings: readonly Reading[]): string {
  const rows = readings.map((reading, index) => rowOf(reading, `readings[${index}]`));
  return [SCAN_CSV_COLUMNS, ...rows].map((cells) => `${cells.map(quoted).join(",")}\n`).join("");
}

function rowOf(reading: Reading, argument: string): readonly string[] {
  for (const name of NUMBERS) requireFinite(`${argument}.${name}`, reading[name] ?? 0);
  return [
    timeCell(reading.timeMs, `${argument}.timeMs`),
    guardCell(reading.place),
    reading.crowd ?? "",
    reading.bssid ?? "",
    guardCell(reading.ssid),
    String(reading.channel),
    reading.centreAssumed ? "" : String(reading.centreMhz),
    String(reading.widthMhz),
    String(reading.signalDbm),
    String(reading.airtimeRatio ?? ""),
    String(reading.stationCount ?? ""),
    reading.standard === "unknown" ? "" : reading.standard,
  ];
}

const NUMBERS = ["channel", "centreMhz", "widthMhz", "signalDbm", "airtimeRatio", "stationCount"] as const;

function timeCell(timeMs: number | null, argument: string): string {
  if (timeMs === null) return "";
  if (!Number.isInteger(timeMs) || timeMs < TIME_RANGE_MS[0] || timeMs > TIME_RANGE_MS[1])
    throw new ArgumentError(argument, "whole ms of the years 0 to 9999", timeMs);
  return new Date(timeMs).toISOString();
}

function quoted(cell: string): string {
  return /[",;\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
