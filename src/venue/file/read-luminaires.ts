import { printable } from "../../issues/index.js";
import type { Issue } from "../../issues/index.js";
import type { Luminaire } from "../venue-luminaire.js";
import type { Entry } from "./field-list.js";
import { LONGEST_TOLD, rawWords } from "./file-spot.js";
import type { FileSpot, FileUnits } from "./file-spot.js";
import { luminaireCell } from "./luminaire-cells.js";
import { luminaireColumn } from "./luminaire-columns.js";
import type { LuminaireColumn } from "./luminaire-columns.js";
import { luminaireField, luminaireKeys } from "./luminaire-field.js";
import { nearHint, someOf } from "./near-hint.js";

/** One row of a table, as a reader of CSV cuts it. */
export interface TableRow {
  /** 1-based physical line where it starts. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** How a table of luminaires is read. */
export interface ReadLuminairesOptions {
  /** File name for messages. */
  readonly source: string;
  /** The unit of lengths whose header and cells name none; a weight without one is kg in m, lb in ft. */
  readonly units: FileUnits;
  /** May a comma be the decimal point? False unless given. */
  readonly decimalComma?: boolean;
}

/** Luminaires of a table; rows = luminaires + rejected. */
export interface LuminairesImport {
  readonly luminaires: readonly Luminaire[];
  readonly issues: readonly Issue[];
  /** Filled rows below the header. */
  readonly rowCount: number;
  readonly rejectedCount: number;
}

/**
 * Luminaires from a crew's table: the first filled row is the header, read by meaning; a row in which a filled
 * cell can't be what its column says is rejected whole, and every such cell is told. Columns that nothing is
 * known of stay as typed in `further`. A cell may carry its unit, as `14 ft`, `14'6"` or `18 kg`.
 * @example readLuminaires([{ line: 1, cells: ["Fixture", "Room", "X", "Y"] }, { line: 2, cells: ["P1", "hall", "4", "2.5"] }], { source: "luminaires.csv", units: "m" }).luminaires[0].y; // => 2.5
 */
export function readLuminaires(rows: readonly TableRow[], options: ReadLuminairesOptions): LuminairesImport {
  const issues: Issue[] = [];
  const { entries, rowCount } = luminaireEntries(rows, options, issues);
  const luminaires = entries.map(({ value }) => value);
  return { luminaires, issues, rowCount, rejectedCount: rowCount - luminaires.length };
}

/** Luminaires with the spot of each, for what is checked later. */
export interface LuminaireEntries {
  readonly entries: readonly Entry<Luminaire>[];
  readonly rowCount: number;
  /** Of every row, rejected ones too. */
  readonly names: readonly string[];
}

/** {@link readLuminaires} with the spot of each. */
export function luminaireEntries(
  rows: readonly TableRow[],
  options: ReadLuminairesOptions,
  issues: Issue[],
): LuminaireEntries {
  const filled = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  const [header, ...records] = filled;
  const table: Table = { ...options, issues, header: header?.cells ?? [], columns: [] };
  const spot = rowSpot(table, header?.line ?? 1);
  if (header === undefined) {
    spot.error(undefined, "a table of luminaires: a header and a row for each", "no-usable-row");
    return { entries: [], rowCount: 0, names: [] };
  }
  const columns = header.cells.map((cell) => luminaireColumn(cell));
  if (!hasNeeded({ ...table, columns }, spot)) return { entries: [], rowCount: records.length, names: [] };
  tellWeightUnit({ ...table, columns }, spot);
  const entries = records.flatMap((record) => rowEntry(record, { ...table, columns }) ?? []);
  if (records.length === 0)
    spot.error(undefined, "a row for each luminaire below the header", "no-usable-row");
  const nameIndex = columns.findIndex((column) => column?.key === "name");
  const names = records.map(({ cells }) => cells[nameIndex]?.trim() ?? "");
  return { entries, rowCount: records.length, names };
}

interface Table extends ReadLuminairesOptions {
  readonly issues: Issue[];
  readonly header: readonly string[];
  readonly columns: readonly (LuminaireColumn | null)[];
}

/** Columns that every table needs, each key in one column. */
function hasNeeded({ header, columns }: Table, spot: FileSpot): boolean {
  const keys = columns.map((column) => column?.key ?? "");
  const lacking = Object.keys(luminaireKeys.needed).filter((key) => !keys.includes(key));
  for (const key of lacking) {
    const expected = `a column ${key}; there are ${someOf(header)}${nearHint(key, header)}`;
    spot.key(key).error(undefined, expected, "missing-column");
  }
  const twice = keys.flatMap((key, index) => (key !== "" && keys.indexOf(key) < index ? [index] : []));
  for (const index of twice)
    spot
      .key(keys[index]!)
      .error(
        header[index],
        `one column for ${keys[index]}; ${header[keys.indexOf(keys[index]!)]} is it too`,
        "contradiction",
      );
  return lacking.length + twice.length === 0;
}

function tellWeightUnit({ columns, units }: Table, spot: FileSpot): void {
  const weight = columns.find((column) => column?.key === "weight");
  if (units === "ft" && weight?.unit === null)
    spot.key("weight").warn("weights without a unit are taken as lb", "assumed");
}

function rowEntry(record: TableRow, table: Table): Entry<Luminaire> | undefined {
  const spot = rowSpot(table, record.line);
  const extra = record.cells.slice(table.columns.length).filter((cell) => cell.trim() !== "");
  if (extra.length > 0)
    return spot.error(
      `${record.cells.length} cells`,
      `${table.columns.length} cells as in the header`,
      "ragged-row",
    );
  const value = luminaireField.read(plainRow(record, table), spot);
  return value === undefined ? undefined : { value, spot };
}

/** The row as the mapping that a venue file would have; a cell that can't be read stays as typed. */
function plainRow({ cells }: TableRow, table: Table): Record<string, unknown> {
  const row: Record<string, unknown> = {};
  const further: Record<string, string> = {};
  for (const [index, column] of table.columns.entries()) {
    const cell = cells[index]?.trim() ?? "";
    const title = table.header[index]!.trim();
    if (column === null && title !== "" && cell !== "") further[title] = cell;
    if (column === null || cell === "") continue;
    const [key, value] = luminaireCell(column, cell, table);
    row[key] = value;
  }
  return { ...row, further };
}

/** The spot of a row: a mistake names the line and the column as its header does. */
function rowSpot(table: Table, line: number, key = ""): FileSpot {
  const { issues, source, units, columns, header } = table;
  const index = columns.findIndex(
    (column) => column?.key === key || (column?.key === "weight" && key.startsWith("weight_")),
  );
  const column = index < 0 ? key : header[index]!.trim();
  const place = { source, line, ...(column !== "" && { column }) };
  return {
    units,
    error: (raw, expectation, code = "bad-cell") => {
      const expected = printable(expectation, LONGEST_TOLD);
      const value = raw === undefined ? {} : { value: rawWords(raw) };
      issues.push({ code, severity: "error", ...place, ...value, expected, action: "row skipped" });
      return undefined;
    },
    warn: (statement, code = "contradiction") => {
      const expected = printable(statement, LONGEST_TOLD);
      issues.push({ code, severity: "warning", ...place, expected, action: "stated" });
    },
    key: (name) => rowSpot(table, line, name === "further" ? "" : name),
    item: () => rowSpot(table, line, key),
  };
}
