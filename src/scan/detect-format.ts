import { csvCells } from "./csv-cells.js";
import { csvRecordEnd } from "./csv-record-end.js";
import { DELIMITERS } from "./delimiter.js";
import type { Delimiter } from "./delimiter.js";
import { osTextVotes } from "./os-text-format.js";
import type { OsTextFormat } from "./os-text-command.js";
import type { ColumnMap } from "./column-map.js";
import { isScanCsvHeader, knownColumnCount } from "./scan-csv-columns.js";
import { guessTable } from "./table-delimiter.js";
import { separatorOf } from "./separator-line.js";

/**
 * What a text turns out to be by its content: a scan CSV with its delimiter, what an operating system's
 * command prints, lines of several such commands, or some other text.
 */
export type DetectedFormat =
  | { readonly format: "scan-csv"; readonly delimiter: Delimiter }
  | { readonly format: OsTextFormat; readonly strays: readonly OsTextFormat[] }
  | { readonly format: "mixed"; readonly formats: readonly OsTextFormat[] }
  | { readonly format: "text" };

/**
 * Judges by the first line that has more than blanks and delimiters: the header of a scan CSV; else by the
 * first lines: a table whose headers or cells tell what it holds. One known column alone, or the line of a shell, gives way to lines that an operating
 * system's command prints. The delimiter is the one that makes most columns known. A line `sep=;` before the
 * header names it.
 * @param head the start of the text, up to the end of its header at least
 * @param map headers that the user named
 * @param isWhole the head is all there is
 * @example detectFormat("ssid;channel;signal_dbm\n", true); // => { format: "scan-csv", delimiter: ";" }
 */
export function detectFormat(head: string, isWhole: boolean, map: ColumnMap = {}): DetectedFormat {
  const start = head.search(/^.*[^\s,;].*$/m);
  if (start === -1) return { format: "text" };
  const hint = separatorOf(/^[^\r\n]*/.exec(head.slice(start))![0]);
  const text = hint === null ? head.slice(start) : head.slice(start).replace(/^[^\r\n]*\s*/, "");
  let best: { readonly delimiter: Delimiter; readonly knownCount: number } | null = null;
  let isComplete = false;
  for (const delimiter of hint === null ? DELIMITERS : [hint]) {
    const cells = firstRecord(text, delimiter, isWhole);
    const knownCount = cells.length < 2 ? 0 : knownColumnCount(cells);
    if (knownCount <= (best?.knownCount ?? 0)) continue;
    best = { delimiter, knownCount };
    isComplete = isScanCsvHeader(cells, NO_NAMES);
  }
  const isTyped = COMMAND.test(text.slice(0, LONGEST_COMMAND_COUNT));
  if (best !== null && isComplete && !isTyped) return { format: "scan-csv", delimiter: best.delimiter };
  const os = osText(head);
  if (os !== null && (isTyped || (os.format !== "linux-nmcli-terse" && !DELIMITED_START.test(text))))
    return os;
  const table = guessTable(head, isWhole, map);
  if (table?.isSure === true) return { format: "scan-csv", delimiter: table.delimiter };
  if (best !== null && best.knownCount > 1 && !isTyped)
    return { format: "scan-csv", delimiter: best.delimiter };
  const delimiter = table?.delimiter ?? best?.delimiter;
  const csv: DetectedFormat =
    delimiter === undefined ? { format: "text" } : { format: "scan-csv", delimiter };
  return os === null || (os.format === "linux-nmcli-terse" && table?.isComplete === true) ? csv : os;
}

/** A first line that may be a table's: then what the table says is heard before an operating system's text. */
const DELIMITED_START = /^\s*\S[^\r\n]*[,;\t]/;

const NO_NAMES: ReadonlySet<string> = new Set();

/** A first line that calls one of the commands: the names of fields stand in it too. */
const COMMAND = /^[^\r\n]*\b(?:nmcli|netsh|wpa_cli|iw)(?:\.exe)? /;
const LONGEST_COMMAND_COUNT = 1_000;

function osText(head: string): DetectedFormat | null {
  const { format, rivals, strays } = osTextVotes(head);
  if (format === null) return null;
  return rivals.length === 0 ? { format, strays } : { format: "mixed", formats: [format, ...rivals] };
}

function firstRecord(text: string, delimiter: Delimiter, isWhole: boolean): readonly string[] {
  const end = csvRecordEnd(text, 0, delimiter, isWhole);
  if (end.kind !== "record") return [];
  const record = text.slice(0, end.endIndex);
  return record.includes(delimiter) ? (csvCells(record, delimiter)[0] ?? []) : [];
}
