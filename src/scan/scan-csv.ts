import { csvRecords } from "./csv-records.js";
import type { CsvFault, CsvRecord } from "./csv-records.js";
import type { Delimiter } from "./delimiter.js";
import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import { headerName, holdsData, isHeaderRow } from "./header-row.js";
import { describeHeaders } from "./no-usable-row.js";
import { openTable } from "./open-table.js";
import { RefusedTable } from "./refused-table.js";
import { isBlankText } from "./scan-csv-cell.js";
import { isScanCsvHeader } from "./scan-csv-columns.js";
import { ScanCsvTable } from "./scan-csv-table.js";
import { LONGEST_RECORD_COUNT, MOST_COLUMNS_COUNT } from "./scan-limits.js";
import type { ScanTally } from "./scan-tally.js";
import { isSeparatorLine } from "./separator-line.js";
import type { TableContext, TableReader } from "./table-reader.js";
import { splitSample, wholeCells } from "./table-sample.js";

/** So much of a foreign table is looked at before its rows are read. */
const SAMPLE_RECORDS_COUNT = 1_000;
const SAMPLE_CELLS_COUNT = 200_000;

/**
 * Reads the tables of a CSV file into a tally, record by record: the header of a scan CSV by its own strict
 * rules, any other by meaning and content. Blank lines, and rows of blank cells only, are not rows.
 * @returns what was found, in words, for a file that turns out to have no usable row
 */
export async function readScanCsv(
  pieces: AsyncIterable<string>,
  delimiter: Delimiter,
  fill: Fill,
  tally: ScanTally,
): Promise<string> {
  const { columns: map, channels } = fill;
  const reader = new ScanCsvReader({ delimiter, fill, tally, map, channels });
  for await (const block of csvRecords(pieces, delimiter)) {
    if ("fault" in block) reader.readFault(block);
    else for (const record of block) if (!reader.isDone) reader.read(record);
    if (reader.isDone) break;
  }
  reader.end();
  return reader.found;
}

class ScanCsvReader {
  isDone = false;
  found = "a header and no rows";
  private table: TableReader | null = null;
  private sample: CsvRecord[] = [];
  private sampledCellCount = 0;
  private isAfterGap = false;
  private recordCount = 0;
  private readonly refused: RefusedTable[] = [];
  private readonly mapped: ReadonlySet<string>;

  constructor(private readonly context: TableContext) {
    this.mapped = new Set(Object.values(context.map).map(headerName));
  }

  read(record: CsvRecord): void {
    const { cells } = record;
    if (cells.every(isBlankText) || isRule(cells)) {
      this.isAfterGap = true;
      return;
    }
    const { table } = this;
    if (table !== null) {
      const isNext = (this.isAfterGap || table.isOdd(cells)) && isHeaderRow(cells, this.mapped);
      this.isAfterGap = false;
      if (!isNext) return table.read(record, ++this.recordCount);
      this.endTable();
    }
    this.isAfterGap = false;
    this.gather(record);
  }

  readFault({ fault, line, text }: CsvFault): void {
    const record = ++this.recordCount;
    const { tally } = this.context;
    if (fault === "broken") return tally.reject({ ...BROKEN, value: text }, line, record);
    tally.rejectedCount++;
    this.stop({ code: "limit", expected: `a record of at most ${LONGEST_RECORD_COUNT} characters` }, line);
  }

  end(): void {
    this.openSample(false);
    this.endTable();
    const { tally } = this.context;
    if (tally.channels.size > 0 && tally.rowCount === 0)
      this.found = `a list of ${tally.channels.size} channels without levels`;
    for (const table of this.refused)
      if (tally.rowCount > 0) table.rejectRows(tally);
      else table.stop(tally);
  }

  /** Takes a record that may belong to the start of a table. */
  private gather(record: CsvRecord): void {
    const { delimiter } = this.context;
    if (this.sample.length === 0 && isSeparatorLine(record.cells, delimiter)) return;
    if (record.cells.length > MOST_COLUMNS_COUNT) return this.stopAtWidth(record);
    if (isScanCsvHeader(record.cells, this.mapped)) {
      this.openSample(true);
      this.table = new ScanCsvTable(record, this.context);
      return;
    }
    const cells = wholeCells(record.cells, delimiter);
    if (this.sample.length > 0 && isHeaderRow(cells, this.mapped)) {
      this.openSample(true);
      this.endTable();
    }
    this.sample.push({ ...record, cells });
    this.sampledCellCount += cells.length;
    if (this.sample.length >= SAMPLE_RECORDS_COUNT || this.sampledCellCount >= SAMPLE_CELLS_COUNT)
      this.openSample(false);
  }

  /** @param isBeforeHeader what was gathered ends where another table's header stands */
  private openSample(isBeforeHeader: boolean): void {
    const { sample } = this;
    if (sample.length === 0) return;
    [this.sample, this.sampledCellCount] = [[], 0];
    const split = splitSample(sample, this.mapped);
    const isText = sample.every(({ cells }) => cells.length < 3 || !cells.some(holdsData));
    if (isBeforeHeader && split.header === null && isText) return this.sayTitles(sample);
    if (split.titles.length > 0) this.sayTitles(split.titles);
    const { reader, rows } = openTable(split, this.context);
    if (reader instanceof RefusedTable) {
      this.refused.push(reader);
      this.found = describeHeaders((split.header ?? sample[0]!).cells);
    }
    this.table = reader;
    for (const row of rows) reader.read(row, ++this.recordCount);
    if (isBeforeHeader) this.endTable();
  }

  private endTable(): void {
    this.table?.end();
    this.table = null;
  }

  private sayTitles(titles: readonly CsvRecord[]): void {
    const [{ line, cells }] = titles as [CsvRecord, ...CsvRecord[]];
    const expected = "the header of a table; lines above it are not read";
    const value = cells.join(this.context.delimiter);
    this.context.tally.say({
      code: "ignored",
      severity: "note",
      line,
      value,
      expected,
      action: "value ignored",
    });
  }

  private stopAtWidth({ cells, line }: CsvRecord): void {
    const expected = `at most ${MOST_COLUMNS_COUNT} columns`;
    this.stop({ code: "limit", value: String(cells.length), expected }, line);
    this.found = describeHeaders(cells);
  }

  private stop(fault: Fault, line: number): void {
    this.isDone = true;
    this.context.tally.say({ severity: "error", line, ...fault, action: "stopped" });
  }
}

/** A line drawn below a header: cells of hyphens, equals signs and colons. */
function isRule(cells: readonly string[]): boolean {
  return (
    /^\s*$|^\s*:?[-=]{3}/.test(cells[0]!) &&
    cells.length > 1 &&
    cells.every((cell) => /^\s*:?(?:-{3,}|={3,})?:?\s*$/.test(cell))
  );
}

const BROKEN: Fault = {
  code: "unreadable",
  expected: "a quote that closes before a delimiter or a line end",
};
