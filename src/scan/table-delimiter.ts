import type { ColumnMap } from "./column-map.js";
import { cutRecords } from "./csv-records.js";
import type { CsvRecord } from "./csv-records.js";
import { DELIMITERS } from "./delimiter.js";
import type { Delimiter } from "./delimiter.js";
import { headerName, isFingerprintHeader } from "./header-row.js";
import { isBlankText } from "./scan-csv-cell.js";
import { MOST_COLUMNS_COUNT } from "./scan-limits.js";
import { separatorOf } from "./separator-line.js";
import { missingColumns } from "./table-faults.js";
import { planTable } from "./table-plan.js";
import { splitSample, wholeCells } from "./table-sample.js";

const JUDGED_COUNT = 32_768;
const MOST_RECORDS_COUNT = 60;

/** A table that a text may be. */
export interface TableGuess {
  readonly delimiter: Delimiter;
  /** It has a header whose words are known, and at most one needed column is missing beside addresses. */
  readonly isSure: boolean;
  /** No needed column is missing. */
  readonly isComplete: boolean;
}

/**
 * Is a text a table of a beacon list, by its headers' meaning or by what its columns hold?
 * @param head the start of the text
 * @param isWhole the head is all there is
 * @returns null where no delimiter makes it one
 * @example guessTable("Netz;Kanal;Pegel\nFoyer;6;-60\n", true, {})?.delimiter; // => ";"
 */
export function guessTable(head: string, isWhole: boolean, map: ColumnMap): TableGuess | null {
  const text = head.slice(0, JUDGED_COUNT);
  const hint = separatorOf(/^\s*([^\r\n]*)/.exec(text)?.[1] ?? "");
  let best: Scored | null = null;
  for (const delimiter of hint === null ? DELIMITERS : [hint]) {
    if (!text.includes(delimiter)) continue;
    const records = firstRecords(text, delimiter, isWhole && text.length === head.length);
    const score = records.length === 0 ? null : scoreOf(records, delimiter, map);
    if (score === null || score.score <= (best?.score ?? 0)) continue;
    best = score;
  }
  return best;
}

interface Scored extends TableGuess {
  readonly score: number;
}

function firstRecords(text: string, delimiter: Delimiter, isWhole: boolean): readonly CsvRecord[] {
  const records: CsvRecord[] = [];
  for (const block of cutRecords(text, 1, delimiter, isWhole)) {
    if ("fault" in block) continue;
    for (const { cells, line } of block) {
      if (cells.every(isBlankText) || cells.length > MOST_COLUMNS_COUNT) continue;
      records.push({ line, cells: wholeCells(cells, delimiter) });
      if (records.length === MOST_RECORDS_COUNT) return records;
    }
  }
  return records;
}

function scoreOf(records: readonly CsvRecord[], delimiter: Delimiter, map: ColumnMap): Scored | null {
  const mapped = new Set(Object.values(map).map(headerName));
  const { header, rows, isKnownHeader, columnCount } = splitSample(records, mapped);
  if (columnCount < 2) return null;
  if (header !== null && isFingerprintHeader(header.cells))
    return { delimiter, score: 50 + columnCount, isSure: true, isComplete: true };
  const sample = { header: header?.cells ?? null, rows: rows.map(({ cells }) => cells), columnCount };
  const plan = planTable(sample, map, delimiter);
  const missingCount = missingColumns(plan).length;
  const hasAddress = plan.columns.bssid !== undefined && rows.length > 0;
  if (!isKnownHeader && (!hasAddress || missingCount > 1)) return null;
  return {
    delimiter,
    score: 10 * (4 - missingCount) + Object.keys(plan.columns).length,
    isSure: isKnownHeader && (missingCount === 0 || (missingCount === 1 && hasAddress)),
    isComplete: missingCount === 0,
  };
}
