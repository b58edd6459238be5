import { cutRecords } from "./csv-records.js";
import type { CsvFault, CsvRecord } from "./csv-records.js";
import { DELIMITERS } from "./delimiter.js";
import type { Delimiter } from "./delimiter.js";
import { separatorOf } from "./separator-line.js";

/** A table of any kind: its filled records in order. */
export interface PlainTable {
  readonly delimiter: Delimiter;
  readonly rows: readonly CsvRecord[];
  /** Records that can't be cut into cells: their quotes are not those of a table, or they never end. */
  readonly faults: readonly CsvFault[];
}

/**
 * The records of a whole CSV text, whatever stands between its cells: the delimiter that cuts its first filled
 * line into the most cells, or the one that a `sep=` line names.
 * @param text a file, whole
 * @example plainTable("name;x\nP1;4,5\n").rows[1]; // => { line: 2, cells: ["P1", "4,5"] }
 */
export function plainTable(text: string): PlainTable {
  const hint = separatorOf(/^\s*([^\r\n]*)/.exec(text)?.[1] ?? "");
  const tables = (hint === null ? DELIMITERS : [hint]).map((delimiter) => cutTable(text, delimiter));
  const best = tables.reduce((most, table) => (firstCount(table) > firstCount(most) ? table : most));
  return hint === null ? best : { ...best, rows: best.rows.slice(1) };
}

function firstCount({ rows }: PlainTable): number {
  return rows[0]?.cells.length ?? 0;
}

function cutTable(text: string, delimiter: Delimiter): PlainTable {
  const rows: CsvRecord[] = [];
  const faults: CsvFault[] = [];
  for (const block of cutRecords(text, 1, delimiter, true)) {
    if ("fault" in block) faults.push(block);
    else rows.push(...block.filter(({ cells }) => cells.some((cell) => cell.trim() !== "")));
  }
  return { delimiter, rows, faults };
}
