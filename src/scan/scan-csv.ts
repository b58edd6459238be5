import type { CsvFault, CsvRecord } from "./csv-records.js";
import { csvRecords } from "./csv-records.js";
import type { Delimiter } from "./delimiter.js";
import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import { isBlankText, ScanCsvCells } from "./scan-csv-cell.js";
import { columnIndexes, headerFaults, unreadColumns } from "./scan-csv-columns.js";
import type { ColumnIndexes } from "./scan-csv-columns.js";
import { scanCsvParsers } from "./scan-csv-parsers.js";
import type { ScanCsvParsers } from "./scan-csv-parsers.js";
import { isOutOfBand, readScanCsvRow } from "./scan-csv-row.js";
import { LONGEST_RECORD_COUNT } from "./scan-limits.js";
import type { ScanTally } from "./scan-tally.js";
import { isSeparatorLine } from "./separator-line.js";

/**
 * Reads a scan CSV into a tally, record by record. Blank lines, and rows of blank cells only, are not rows.
 * @returns what was found, in words, for a file that turns out to have no usable row
 */
export async function readScanCsv(
  pieces: AsyncIterable<string>,
  delimiter: Delimiter,
  fill: Fill,
  tally: ScanTally,
): Promise<string> {
  const reader = new ScanCsvReader(delimiter, fill, tally);
  for await (const block of csvRecords(pieces, delimiter)) {
    if ("fault" in block) reader.readFault(block);
    else for (const record of block) if (!reader.isDone) reader.read(record);
    if (reader.isDone) break;
  }
  return reader.found;
}

class ScanCsvReader {
  isDone = false;
  found = "a header and no rows";
  private columns: ColumnIndexes | null = null;
  private columnCount = 0;
  private recordCount = 0;
  private readonly parsers: ScanCsvParsers;

  constructor(
    private readonly delimiter: Delimiter,
    private readonly fill: Fill,
    private readonly tally: ScanTally,
  ) {
    this.parsers = scanCsvParsers(delimiter);
  }

  read({ cells, line }: CsvRecord): void {
    if (cells.every(isBlankText)) return;
    if (this.columns === null) return this.readHeader(cells, line);
    const record = ++this.recordCount;
    if (cells.length !== this.columnCount)
      return this.tally.reject(this.raggedRow(cells.length), line, record);
    const row = new ScanCsvCells(cells, this.columns, this.parsers);
    if (isOutOfBand(row)) return this.tally.outOfBand();
    const reading = readScanCsvRow(row, line, this.fill);
    if ("code" in reading) this.tally.reject(reading, line, record);
    else this.tally.use(reading);
  }

  readFault({ fault, line, text }: CsvFault): void {
    const record = ++this.recordCount;
    if (fault === "broken") return this.tally.reject({ ...BROKEN, value: text }, line, record);
    this.tally.rejectedCount++;
    this.stop({ code: "limit", expected: `a record of at most ${LONGEST_RECORD_COUNT} characters` }, line);
  }

  private readHeader(cells: readonly string[], line: number): void {
    if (isSeparatorLine(cells, this.delimiter)) return;
    this.columns = columnIndexes(cells);
    this.columnCount = cells.length;
    const faults = headerFaults(cells, this.columns);
    for (const fault of faults) this.stop(fault, line);
    if (faults.length > 0) this.found = `the headers ${cells.join(", ")}`;
    const unread = unreadColumns(cells, this.columns);
    if (unread.length === 0) return;
    const expected = "only the columns of a scan CSV, each once";
    const value = unread.join(", ");
    this.tally.say({ code: "ignored", severity: "note", line, value, expected, action: "value ignored" });
  }

  private stop(fault: Fault, line: number): void {
    this.isDone = true;
    this.tally.say({ severity: "error", line, ...fault, action: "stopped" });
  }

  private raggedRow(cellCount: number): Fault {
    return {
      code: "ragged-row",
      value: `${cellCount} cells`,
      expected: `${this.columnCount} cells, as the header has`,
    };
  }
}

const BROKEN: Fault = {
  code: "unreadable",
  expected: "a quote that closes before a delimiter or a line end",
};
