import { csvCells } from "./csv-cells.js";
import { csvRecordEnd } from "./csv-record-end.js";
import { DELIMITERS } from "./delimiter.js";
import type { Delimiter } from "./delimiter.js";
import { knownColumnCount } from "./scan-csv-columns.js";
import { separatorOf } from "./separator-line.js";

/** What a text turns out to be by its content: a scan CSV with its delimiter, or some other text. */
export type DetectedFormat =
  { readonly format: "scan-csv"; readonly delimiter: Delimiter } | { readonly format: "text" };

/**
 * Judges by the first line that has more than blanks and delimiters: two or more cells, one of them at least a column of a scan
 * CSV, are a header. The delimiter is the one that makes most columns known. A line `sep=;` before the
 * header names it.
 * @param head the start of the text, up to the end of its header at least
 * @param isWhole the head is all there is
 * @example detectFormat("ssid;channel;signal_dbm\n", true); // => { format: "scan-csv", delimiter: ";" }
 */
export function detectFormat(head: string, isWhole: boolean): DetectedFormat {
  const start = head.search(/^.*[^\s,;].*$/m);
  if (start === -1) return { format: "text" };
  const hint = separatorOf(/^[^\r\n]*/.exec(head.slice(start))![0]);
  const text = hint === null ? head.slice(start) : head.slice(start).replace(/^[^\r\n]*\s*/, "");
  let best: { readonly delimiter: Delimiter; readonly knownCount: number } | null = null;
  for (const delimiter of hint === null ? DELIMITERS : [hint]) {
    const cells = firstRecord(text, delimiter, isWhole);
    const knownCount = cells.length < 2 ? 0 : knownColumnCount(cells);
    if (knownCount > (best?.knownCount ?? 0)) best = { delimiter, knownCount };
  }
  return best === null ? { format: "text" } : { format: "scan-csv", delimiter: best.delimiter };
}

function firstRecord(text: string, delimiter: Delimiter, isWhole: boolean): readonly string[] {
  const end = csvRecordEnd(text, 0, delimiter, isWhole);
  if (end.kind !== "record") return [];
  return csvCells(text.slice(0, end.endIndex), delimiter)[0] ?? [];
}
