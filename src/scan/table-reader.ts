import type { ColumnMap } from "./column-map.js";
import type { CsvRecord } from "./csv-records.js";
import type { Delimiter } from "./delimiter.js";
import type { Fill } from "./fill.js";
import type { ScanTally } from "./scan-tally.js";

/** Takes the rows of one table, one after the other. */
export interface TableReader {
  /** @returns whether a row may be another table's header: its cells are not as they should be */
  isOdd(cells: readonly string[]): boolean;
  /** @param record the row's number among the data records of the file, from 1 */
  read(row: CsvRecord, record: number): void;
  /** The table has ended. */
  end(): void;
}

/** What the tables of one file share. */
export interface TableContext {
  readonly delimiter: Delimiter;
  readonly fill: Fill;
  readonly tally: ScanTally;
  readonly map: ColumnMap;
  /** Wi-Fi channel by address, from a list that came with another file. */
  readonly channels: ReadonlyMap<string, number>;
}
