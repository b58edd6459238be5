import { ColumnCells, plannedIndexes } from "./column-cells.js";
import { sizedMhz } from "./column-number.js";
import { columnParsers } from "./column-parsers.js";
import type { ColumnParsers } from "./column-parsers.js";
import type { TablePlan } from "./column-plan.js";
import type { CsvRecord } from "./csv-records.js";
import type { Fault } from "./fault.js";
import type { Reading } from "./reading.js";
import type { ColumnIndexes } from "./scan-csv-columns.js";
import { isOutOfBand, readScanCsvRow } from "./scan-csv-row.js";
import { sharedAddresses } from "./shared-addresses.js";
import type { TableContext, TableReader } from "./table-reader.js";
import { ungluedRows } from "./unglue-row.js";
import { isUnheardSign, unheardLevels } from "./unheard-levels.js";

const NOT_WIFI = /^(?:gsm|edge|umts|wcdma|cdma|lte|nr|cell|cellular|mobile|bt|ble|bluetooth|zigbee)$/i;
const LOWEST_OTHER_BAND_MHZ = 3_000;

/** Reads the rows of a planned table: one reading a row. */
export class ColumnTable implements TableReader {
  private readonly parsers: ColumnParsers;
  private readonly indexes: ColumnIndexes;
  private readonly firstIndex: number;
  private maskedCount = 0;

  constructor(
    private readonly plan: TablePlan,
    private readonly context: TableContext,
  ) {
    this.parsers = columnParsers(plan);
    this.indexes = plannedIndexes(plan);
    this.firstIndex = context.tally.readings.length;
  }

  isOdd(cells: readonly string[]): boolean {
    return cells.length !== this.plan.headers.length || !this.fits(cells);
  }

  read({ cells, line }: CsvRecord, record: number): void {
    const { tally, delimiter } = this.context;
    const columnCount = this.plan.headers.length;
    if (cells.length === columnCount) return this.readRow(cells, line, record);
    const rows = ungluedRows(cells, columnCount, delimiter, (row) => this.fits(row));
    if (rows === null) return tally.reject(raggedRow(cells.length, columnCount), line, record);
    for (const row of rows) this.readRow(row, line, record);
    if (cells.length > columnCount && rows.length === 1) return;
    const expected =
      rows.length === 1 ? "fields within one pair of quotes cut apart" : "two rows on one line read as two";
    tally.say({ code: "assumed", severity: "note", line, record, expected, action: "stated" });
  }

  end(): void {
    const { tally } = this.context;
    const own = tally.readings.slice(this.firstIndex);
    const unheard = unheardLevels(
      own.map((reading) => ({ signalDbm: reading.signalDbm, source: sourceOf(reading) })),
    );
    const column = this.plan.headers[this.plan.columns.signal_dbm!]!;
    tally.drop(new Set(own.filter(({ signalDbm }) => unheard.has(signalDbm))), ({ signalDbm }) => ({
      code: "bad-cell",
      column,
      value: String(signalDbm),
      expected: `a level; ${signalDbm} repeats, apart from all others, and is taken as not heard`,
    }));
    this.clearShared();
    if (this.maskedCount > 0)
      this.state(
        `${this.maskedCount} rows with a masked or cut address: each source is its name and channel`,
      );
  }

  private fits(cells: readonly string[]): boolean {
    const { columns } = this.plan;
    if (columns.signal_dbm !== undefined && this.parsers.number(cells[columns.signal_dbm] ?? "") === null)
      return false;
    const address = columns.bssid === undefined ? "" : (cells[columns.bssid] ?? "");
    return address.trim() === "" || this.parsers.bssid(address) !== null || this.parsers.isMasked(address);
  }

  private readRow(cells: readonly string[], line: number, record: number): void {
    const { tally, fill, channels } = this.context;
    const row = new ColumnCells(cells, this.plan, this.indexes, this.parsers, channels);
    const foreign = this.foreignRadio(row, cells);
    if (foreign !== null) return tally.reject(foreign, line, record);
    if (isOutOfBand(row) || this.isOtherBand(row)) return tally.outOfBand();
    const reading = readScanCsvRow(row, line, fill);
    if ("code" in reading) return tally.reject(this.explained(reading), line, record);
    if (reading.bssid === null && this.parsers.isMasked(row.text("bssid"))) this.maskedCount++;
    tally.use(reading);
  }

  /** A row of something else than Wi-Fi among the rows of a Wi-Fi list. */
  private foreignRadio(row: ColumnCells, cells: readonly string[]): Fault | null {
    const address = row.text("bssid");
    const isStrange = !row.isBlank("bssid") && this.parsers.bssid(address) === null;
    const kind = NOT_WIFI.test(row.cell("kind").trim()) ? row.cell("kind") : undefined;
    const value = kind ?? (isStrange ? cells.find((cell) => NOT_WIFI.test(cell.trim())) : undefined);
    if (value !== undefined) return { code: "bad-cell", value, expected: "a row of a Wi-Fi radio" };
    if (!isStrange) return null;
    row.reject("bad-cell", "bssid", "the address of one radio, six pairs of hex digits, or blank");
    return row.fault;
  }

  private isOtherBand(row: ColumnCells): boolean {
    const band = this.parsers.unitNumber(row.cell("band").replace(/([0-9])\s*g$/i, "$1 GHz"));
    return band !== null && band.value > 0 && sizedMhz(band.value) >= LOWEST_OTHER_BAND_MHZ;
  }

  private explained(fault: Fault): Fault {
    const value = this.parsers.number(fault.value ?? "");
    const isLevel = fault.column === this.plan.headers[this.plan.columns.signal_dbm!]?.trim();
    if (!isLevel || value === null || !isUnheardSign(value)) return fault;
    return { ...fault, expected: `${fault.expected}; ${value} stands for not heard or unknown` };
  }

  private clearShared(): void {
    const { tally } = this.context;
    const shared = sharedAddresses(tally.readings.slice(this.firstIndex));
    if (shared.size === 0) return;
    tally.readings = tally.readings.map((reading, index) =>
      index >= this.firstIndex && reading.bssid !== null && shared.has(reading.bssid)
        ? { ...reading, bssid: null }
        : reading,
    );
    this.state(`several names share ${[...shared].join(", ")}: each source is its name and channel`);
  }

  private state(expected: string): void {
    const column = this.plan.headers[this.plan.columns.bssid!]!;
    this.context.tally.say({ code: "assumed", severity: "note", column, expected, action: "stated" });
  }
}

function sourceOf({ bssid, ssid, channel }: Reading): string {
  return bssid ?? `${ssid}@${channel}`;
}

/** What is wrong with a row that has too few or too many cells. */
export function raggedRow(cellCount: number, columnCount: number): Fault {
  return {
    code: "ragged-row",
    value: `${cellCount} cells`,
    expected: `${columnCount} cells, as the header has`,
  };
}
