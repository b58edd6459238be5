import { raggedRow } from "./column-table.js";
import type { CsvRecord } from "./csv-records.js";
import { ScanCsvCells } from "./scan-csv-cell.js";
import { columnIndexes, unreadColumns } from "./scan-csv-columns.js";
import type { ColumnIndexes } from "./scan-csv-columns.js";
import { scanCsvParsers } from "./scan-csv-parsers.js";
import type { ScanCsvParsers } from "./scan-csv-parsers.js";
import { isOutOfBand, readScanCsvRow } from "./scan-csv-row.js";
import type { TableContext, TableReader } from "./table-reader.js";

/** Reads the rows of a table that has the header of a scan CSV, by its own strict rules. */
export class ScanCsvTable implements TableReader {
  private readonly columns: ColumnIndexes;
  private readonly columnCount: number;
  private readonly parsers: ScanCsvParsers;

  constructor(
    { cells, line }: CsvRecord,
    private readonly context: TableContext,
  ) {
    this.columns = columnIndexes(cells);
    this.columnCount = cells.length;
    this.parsers = scanCsvParsers(context.delimiter);
    const unread = unreadColumns(cells, this.columns);
    if (unread.length > 0) sayUnread(unread, line, context);
  }

  isOdd(cells: readonly string[]): boolean {
    return cells.length !== this.columnCount || this.parsers.number(cells[this.columns.signal_dbm]!) === null;
  }

  read({ cells, line }: CsvRecord, record: number): void {
    const { tally, fill } = this.context;
    if (cells.length !== this.columnCount)
      return tally.reject(raggedRow(cells.length, this.columnCount), line, record);
    const row = new ScanCsvCells(cells, this.columns, this.parsers);
    if (isOutOfBand(row)) return tally.outOfBand();
    const reading = readScanCsvRow(row, line, fill);
    if ("code" in reading) tally.reject(reading, line, record);
    else tally.use(reading);
  }

  end(): void {
    /* Every row has been judged by itself. */
  }
}

/** Names the columns of a header from which nothing is read. */
export function sayUnread(unread: readonly string[], line: number, { tally }: TableContext): void {
  const expected = "only the columns of a scan CSV, each once";
  tally.say({
    code: "ignored",
    severity: "note",
    line,
    value: unread.join(", "),
    expected,
    action: "value ignored",
  });
}
