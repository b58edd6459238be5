import { min } from "d3-array";
import { requireFinite } from "../issues/index.js";
import { IssueLog, unheardLevels } from "../scan/index.js";
import { isBlankCell } from "./reading-cell.js";
import { readingRow } from "./reading-row.js";
import { readingTable } from "./reading-table.js";
import type { ReadingTable } from "./reading-table.js";
import type { CutRow, ReadingsImport, ReadReadingsOptions, WalkReading } from "./walk-reading.js";

/**
 * Readings of a walk test, or of the receivers after install, from a table: the first filled row is the header,
 * its columns read by meaning. A row in which a filled cell can't be what its column says is rejected whole. What
 * was not heard is kept as such: by a word, a `no`, `< -95`, a number that no receiver reads, or a lowest level
 * that repeats as only a fill value does. Its floor is the row's, else the option's, else the lowest level heard.
 * @param rows the table, cut into cells, with the line of each row
 * @throws {ArgumentError} when the floor is not finite or a column is named that readings haven't got
 * @example readReadings([{ line: 1, cells: ["Distance (m)", "dBm"] }, { line: 2, cells: ["4", "-52"] }], { source: "walk.csv" }).readings[0].receivedDbm; // => -52
 */
export function readReadings(rows: readonly CutRow[], options: ReadReadingsOptions): ReadingsImport {
  if (options.floorDbm !== undefined) requireFinite("floorDbm", options.floorDbm);
  const log = new IssueLog();
  const { source } = options;
  const [header, ...records] = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  const table = header === undefined ? null : readingTable(header, options);
  if (table !== null && "code" in table) log.add(table);
  const read =
    table === null || "code" in table ? [] : records.flatMap((row) => readOne(row, table, options, log));
  const readings = withFloors(withoutFills(read), options, log);
  if (readings.length === 0 && !(table !== null && "code" in table)) {
    const expected = "a header and at least one usable row of readings";
    log.add({ code: "no-usable-row", severity: "error", source, expected, action: "stopped" });
  }
  return {
    source,
    readings,
    rowCount: records.length,
    rejectedCount: records.length - readings.length,
    notHeardCount: readings.filter(({ isHeard }) => !isHeard).length,
    issues: log.issues(),
  };
}

function readOne(
  row: CutRow,
  table: ReadingTable,
  options: ReadReadingsOptions,
  log: IssueLog,
): WalkReading[] {
  const at = { source: options.source, line: row.line, severity: "error", action: "row skipped" } as const;
  if (row.cells.slice(table.headers.length).some((cell) => cell.trim() !== "")) {
    const expected = `${table.headers.length} cells as in the header`;
    log.add({ ...at, code: "ragged-row", value: `${row.cells.length} cells`, expected });
    return [];
  }
  if (isOtherCheck(row, table)) {
    const expected = "a row of the checklist without a reading";
    log.add({ ...at, severity: "note", code: "ignored", expected });
    return [];
  }
  const reading = readingRow(row, table, options.decimalComma ?? false);
  if (!("code" in reading)) return [reading];
  const { code, expected } = reading;
  const index = table.indexes.get(reading.column);
  const column = (index === undefined ? "" : table.headers[index]!.trim()) || reading.column;
  const value = code === "missing-cell" || index === undefined ? {} : { value: row.cells[index] ?? "" };
  log.add({ ...at, code, column, ...value, expected });
  return [];
}

/** On a checklist typed in, rows of other checks than the link have no level. */
function isOtherCheck({ cells }: CutRow, { indexes }: ReadingTable): boolean {
  const isBlank = (column: "received_dbm" | "quality" | "heard"): boolean =>
    isBlankCell(cells[indexes.get(column) ?? -1] ?? "");
  return indexes.has("stage") && isBlank("received_dbm") && isBlank("quality") && isBlank("heard");
}

/** A lowest level that repeats, apart from all others, stands for nothing heard. */
function withoutFills(readings: readonly WalkReading[]): WalkReading[] {
  const levels = readings.flatMap(({ receivedDbm, line }) =>
    receivedDbm === null ? [] : [{ signalDbm: receivedDbm, source: String(line) }],
  );
  const fills = unheardLevels(levels);
  return readings.map((reading) =>
    reading.receivedDbm === null || !fills.has(reading.receivedDbm)
      ? reading
      : { ...reading, isHeard: false, receivedDbm: null, isLevelAssumed: false },
  );
}

function withFloors(
  readings: readonly WalkReading[],
  { source, floorDbm }: ReadReadingsOptions,
  log: IssueLog,
): WalkReading[] {
  const lowestDbm = min(readings, ({ receivedDbm }) => receivedDbm ?? undefined) ?? null;
  const isGuessed = readings.some((reading) => !reading.isHeard && reading.floorDbm === null);
  if (floorDbm === undefined && isGuessed) {
    const found =
      lowestDbm === null ? "nothing tells it" : `the lowest level heard, ${lowestDbm} dBm, is taken`;
    const expected = `the floor of readings not heard is not given: ${found}; state what the receiver still hears`;
    log.add({ code: "assumed", severity: "warning", source, expected, action: "stated" });
  }
  return readings.map((reading) =>
    reading.isHeard || reading.floorDbm !== null ? reading : { ...reading, floorDbm: floorDbm ?? lowestDbm },
  );
}
