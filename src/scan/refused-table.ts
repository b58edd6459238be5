import type { Fault } from "./fault.js";
import type { CsvRecord } from "./csv-records.js";
import type { ScanTally } from "./scan-tally.js";
import type { TableReader } from "./table-reader.js";

/** A table that can't be read for want of columns: its rows are counted, and judged when the file has ended. */
export class RefusedTable implements TableReader {
  private firstRow: { readonly line: number; readonly record: number } | null = null;
  private rowCount = 0;

  constructor(
    private readonly faults: readonly Fault[],
    private readonly line: number,
  ) {}

  isOdd(): boolean {
    return true;
  }

  read({ line }: CsvRecord, record: number): void {
    this.rowCount++;
    this.firstRow ??= { line, record };
  }

  end(): void {
    /* Whether it is an error depends on the file's other tables. */
  }

  /** The file's only tables: an error that says what is missing. */
  stop(tally: ScanTally): void {
    for (const fault of this.faults)
      tally.say({ severity: "error", line: this.line, ...fault, action: "stopped" });
  }

  /** One table among others: its rows are rejected. */
  rejectRows(tally: ScanTally): void {
    if (this.firstRow === null) return;
    const { expected } = this.faults[0]!;
    tally.reject(
      { ...this.faults[0]!, expected: `${expected} (${this.rowCount} rows)` },
      this.firstRow.line,
      this.firstRow.record,
    );
    tally.rejectedCount += this.rowCount - 1;
  }
}
