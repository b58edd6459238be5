import type { Fault } from "./fault.js";
import type { ColumnIndexes, ScanCsvColumn } from "./scan-csv-columns.js";
import type { ScanCsvParsers } from "./scan-csv-parsers.js";

/**
 * The cells of one row, read by column. The first cell that can't be what its column says is kept as the
 * row's fault; reading goes on, so that a row is judged in one pass and rejected as a whole.
 */
export class ScanCsvCells {
  fault: Fault | null = null;
  /** Is the row's level a percentage that was converted? */
  get signalAssumed(): boolean {
    return false;
  }

  constructor(
    private readonly cells: readonly string[],
    private readonly columns: ColumnIndexes,
    readonly parsers: ScanCsvParsers,
  ) {}

  /** @returns the cell as it stands; empty where the file has no such column */
  text(column: ScanCsvColumn): string {
    return this.cells[this.columns[column]] ?? "";
  }

  isBlank(column: ScanCsvColumn): boolean {
    return isBlankText(this.text(column));
  }

  /** @returns the number in a cell; null where it is blank or no number: no fault is noted */
  peekNumber(column: ScanCsvColumn): number | null {
    return this.parsers.number(this.text(column));
  }

  /** @returns the number in a cell; null where it is blank, or (a fault) isn't what is expected */
  number(column: ScanCsvColumn, expected: string, accepts: (value: number) => boolean): number | null {
    if (this.isBlank(column)) return null;
    const value = this.peekNumber(column);
    if (value !== null && accepts(value)) return value;
    this.reject("bad-cell", column, expected);
    return null;
  }

  /** @returns what `parse` makes of a cell; null where it is blank, or (a fault) `parse` returns null */
  word<T>(column: ScanCsvColumn, expected: string, parse: (text: string) => T | null): T | null {
    if (this.isBlank(column)) return null;
    const value = parse(this.text(column));
    if (value === null) this.reject("bad-cell", column, expected);
    return value;
  }

  reject(code: Fault["code"], column: ScanCsvColumn, expected: string): void {
    const value = this.text(column);
    this.fault ??= { code, column, ...(code === "missing-cell" ? {} : { value }), expected };
  }
}

/** Nothing, or white space only. */
export function isBlankText(text: string): boolean {
  return text === "" || text.trim() === "";
}
