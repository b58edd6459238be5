import { chooseColumns } from "./column-choice.js";
import { columnContent } from "./column-content.js";
import type { ColumnMap } from "./column-map.js";
import type { ColumnNote, PlannedColumns, TableColumn, TablePlan } from "./column-plan.js";
import { airtimeStyle, levelStyle } from "./column-style.js";
import type { LevelStyle } from "./column-style.js";
import { joinedTime, timeStyleOf } from "./column-time.js";
import { cellNumber, isBlankSign } from "./column-number.js";
import { headerMeaning } from "./header-meaning.js";
import { headerName } from "./header-row.js";

const COMMA_DECIMAL = /^[+-]?\d+,\d+$/;

/** The table to be planned: its header, where it has one, and a sample of its rows. */
export interface TableSample {
  readonly header: readonly string[] | null;
  readonly rows: readonly (readonly string[])[];
  readonly columnCount: number;
}

/** Plans how a table of foreign headers, or of none, is read. */
export function planTable(sample: TableSample, map: ColumnMap, delimiter: string): TablePlan {
  const headers = Array.from({ length: sample.columnCount }, (_, index) =>
    sample.header === null ? `column ${index + 1}` : (sample.header[index] ?? ""),
  );
  const decimalComma = delimiter !== "," || writesCommas(sample);
  const table = headers.map((header, index): TableColumn => {
    const cells = sample.rows.map((row) => row[index] ?? "");
    const meaning = sample.header === null ? null : headerMeaning(header);
    return { index, header, meaning, content: columnContent(cells, decimalComma), cells };
  });
  const { columns, notes } = chooseColumns(table, mappedColumns(headers, map), sample.header !== null);
  const level = columnAt(table, columns.signal_dbm);
  const airtime = columnAt(table, columns.airtime_ratio);
  const style = level === undefined ? "dbm" : (levelStyle(level.content, level.meaning) ?? "dbm");
  const time = timeStyleOf(timeCells(sample, columns));
  const timeIndex = columns.time ?? columns.date ?? 0;
  return {
    headers,
    columns,
    levelStyle: style,
    airtimeStyle: airtime === undefined ? "of 1" : airtimeStyle(airtime.content, airtime.meaning),
    timeStyle: time,
    decimalComma,
    isPadded: delimiter === "|" || headers.slice(1).some((header) => /^ /.test(header)),
    notes: [
      ...notes,
      ...levelNotes(level, style),
      ...unitNotes(columnAt(table, columns.frequency ?? columns.centre_mhz), sample, decimalComma),
      ...(time === null || time.assumed === null
        ? []
        : [{ column: headers[timeIndex]!, expected: `${time.assumed}: assumed` }]),
      ...airtimeNotes(airtime),
    ],
  };
}

/** Are there columns whose numbers all have a decimal comma? */
function writesCommas({ rows, columnCount }: TableSample): boolean {
  return Array.from({ length: columnCount }, (_, index) => index).some((index) => {
    const filled = rows.flatMap((row) => (row[index]?.trim() ? [row[index].trim()] : []));
    const commaCount = filled.filter((cell) => COMMA_DECIMAL.test(cell)).length;
    return commaCount > 2 && commaCount >= 0.8 * filled.length;
  });
}

function timeCells({ rows }: TableSample, { time, date, clock }: PlannedColumns): readonly string[] {
  const cellAt = (row: readonly string[], index: number | undefined): string => row[index ?? -1] ?? "";
  return rows
    .map((row) =>
      time === undefined ? joinedTime(cellAt(row, date), cellAt(row, clock)) : cellAt(row, time),
    )
    .filter((cell) => !isBlankSign(cell));
}

function mappedColumns(headers: readonly string[], map: ColumnMap): PlannedColumns {
  const names = headers.map(headerName);
  const found = Object.entries(map).flatMap(([field, header]): [string, number][] => {
    const exact = headers.findIndex((candidate) => candidate.trim() === header.trim());
    const index = exact === -1 ? names.indexOf(headerName(header)) : exact;
    return index === -1 ? [] : [[field, index]];
  });
  return Object.fromEntries(found);
}

function columnAt(table: readonly TableColumn[], index: number | undefined): TableColumn | undefined {
  return index === undefined ? undefined : table[index];
}

function levelNotes(level: TableColumn | undefined, style: LevelStyle): readonly ColumnNote[] {
  if (level === undefined || level.content.filledCount === 0) return [];
  const words: Partial<Record<LevelStyle, string>> = {
    quality:
      "numbers from 0 to 100 taken as a quality N, its level as N/2 − 100 dBm (assumed, common practice)",
    unsigned: "levels without a minus, taken as negative (assumed)",
    hundredths: "levels taken as hundredths of a dBm by their size (assumed)",
  };
  const said = words[style];
  if (said !== undefined) return [{ column: level.header, expected: said }];
  return level.meaning?.meaning === "quality" || level.meaning?.unit === "%"
    ? [{ column: level.header, expected: "levels in dBm by what stands in it, whatever its header says" }]
    : [];
}

/** A unit in the header that the size of the numbers contradicts. */
function unitNotes(
  column: TableColumn | undefined,
  { rows }: TableSample,
  decimalComma: boolean,
): readonly ColumnNote[] {
  if (column === undefined) return [];
  const unit = column.meaning?.meaning === "channel" ? "channel" : (column.meaning?.unit ?? null);
  const number = rows
    .map((row) => cellNumber(row[column.index] ?? "", decimalComma))
    .find((found) => found !== null);
  if (unit === null || number === undefined || number.value <= 0) return [];
  const sized = number.value < 10 ? "ghz" : number.value < 1e4 ? "mhz" : number.value < 1e7 ? "khz" : "hz";
  const expected = `frequencies in ${UNIT_WORDS[sized]} by their size, whatever its header says`;
  return sized === unit ? [] : [{ column: column.header, expected }];
}

const UNIT_WORDS = { ghz: "GHz", mhz: "MHz", khz: "kHz", hz: "Hz" } as const;

function airtimeNotes(airtime: TableColumn | undefined): readonly ColumnNote[] {
  if (airtime === undefined || airtime.content.filledCount === 0) return [];
  const style = airtimeStyle(airtime.content, airtime.meaning);
  const isSaid = style === "of 1" || airtime.meaning?.unit === "%" || airtime.content.percentSignCount > 0;
  return isSaid ? [] : [{ column: airtime.header, expected: `airtime taken as a share ${style} (assumed)` }];
}
