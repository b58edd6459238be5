import type { CsvRecord } from "./csv-records.js";
import { holdsData, isHeaderRow } from "./header-row.js";

/** The start of a table: lines above it, its header where it has one, and rows. */
export interface SplitSample {
  readonly titles: readonly CsvRecord[];
  readonly header: CsvRecord | null;
  readonly rows: readonly CsvRecord[];
  /** The words of the header are known; else a row without data stands above rows with data. */
  readonly isKnownHeader: boolean;
  readonly columnCount: number;
}

/**
 * Finds the header within the first records of a table.
 * @param records none of them blank
 * @param mapped headers that the user named
 */
export function splitSample(records: readonly CsvRecord[], mapped: ReadonlySet<string>): SplitSample {
  const knownIndex = records.findIndex(({ cells }) => cells.length > 1 && isHeaderRow(cells, mapped));
  if (knownIndex !== -1) return splitAt(records, knownIndex, true);
  const columnCount = usualCount(records);
  const index = records.findIndex(({ cells }) => cells.length === columnCount);
  const isHeader =
    index !== -1 &&
    columnCount > 1 &&
    !records[index]!.cells.some(holdsData) &&
    records.slice(index + 1).some(({ cells }) => cells.some(holdsData));
  if (isHeader) return splitAt(records, index, false);
  const first = Math.max(index, 0);
  return {
    titles: records.slice(0, first),
    header: null,
    rows: records.slice(first),
    isKnownHeader: false,
    columnCount,
  };
}

function splitAt(records: readonly CsvRecord[], index: number, isKnownHeader: boolean): SplitSample {
  const header = records[index]!;
  const rows = records.slice(index + 1);
  return { titles: records.slice(0, index), header, rows, isKnownHeader, columnCount: header.cells.length };
}

/** The number of cells that most records have; of equals the larger. */
function usualCount(records: readonly CsvRecord[]): number {
  const counts = new Map<number, number>();
  for (const { cells } of records) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  const [usual] = [...counts].sort(([aWidth, a], [bWidth, b]) => b - a || bWidth - aWidth);
  return usual?.[0] ?? 0;
}

/**
 * A line that stands whole within quotes is cut into its cells.
 * @example wholeCells(["a,b"], ","); // => ["a", "b"]
 */
export function wholeCells(cells: readonly string[], delimiter: string): readonly string[] {
  return cells.length === 1 && cells[0]!.includes(delimiter) ? cells[0]!.split(delimiter) : cells;
}
