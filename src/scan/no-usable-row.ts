import type { ScanTally } from "./scan-tally.js";

/** What a scan file may be, in words. */
const LOOKED_FOR =
  "at least one usable row: a scan CSV (a header with signal_dbm, channel or centre_mhz, and bssid or ssid)" +
  " or the text that one of these prints: iw dev <interface> scan, nmcli device wifi list, wpa_cli scan_results," +
  " netsh wlan show networks mode=bssid";

/** Says that a file has no usable row, what was looked for, and what stood there instead. */
export function sayNoUsableRow(tally: ScanTally, foundWithoutRows: string): void {
  const value = tally.rowCount === 0 ? foundWithoutRows : foundRows(tally);
  tally.say({ code: "no-usable-row", severity: "error", value, expected: LOOKED_FOR, action: "stopped" });
}

function foundRows({ rowCount, rejectedCount, outOfBandCount }: ScanTally): string {
  if (rejectedCount === 0) return `only rows outside 2400–2500 MHz, as 5 or 6 GHz (${outOfBandCount})`;
  return `${rowCount} rows: ${rejectedCount} rejected, ${outOfBandCount} outside 2400–2500 MHz`;
}

/**
 * What a text is that is no scan, in words: nothing, bytes, a table's headers, or how it begins.
 * @example describeText("name;colour\n"); // => "the headers name, colour"
 */
export function describeText(head: string): string {
  if (head === "") return "an empty file";
  if (isNoText(head) || head.includes("\0")) return "binary data";
  const firstLine = /\S[^\r\n]*/.exec(head)?.[0].trim();
  if (firstLine === undefined) return "only blank lines";
  const cells = firstLine.split(/[,;\t]/).map((cell) => cell.trim());
  if (cells.length >= 2) return describeHeaders(cells);
  return `text that begins ${firstLine.slice(0, 40)}`;
}

const MOST_HEADERS_COUNT = 30;
const LONGEST_HEADER_COUNT = 100;

/**
 * The headers of a table in words, long ones cut and many left out.
 * @example describeHeaders(["name", "colour"]); // => "the headers name, colour"
 */
export function describeHeaders(headers: readonly string[]): string {
  const shown = headers.slice(0, MOST_HEADERS_COUNT).map((header) => header.slice(0, LONGEST_HEADER_COUNT));
  const restCount = headers.length - shown.length;
  return `the headers ${shown.join(", ")}${restCount > 0 ? ` and ${restCount} more` : ""}`;
}

/** So much of the start is judged. */
const JUDGED_COUNT = 4_096;
/** Bytes of no text have so many of both; hidden names, or another code page, bring one kind alone. */
const LEAST_CONTROL_RATIO = 0.04;
const LEAST_INVALID_RATIO = 0.15;

/**
 * Is it no text at all: control characters and invalid bytes throughout?
 * @param head the start of a file, as text
 * @example isNoText("\u0001\ufffdPK\u0003\ufffd\ufffd"); // => true
 */
export function isNoText(head: string): boolean {
  const start = head.slice(0, JUDGED_COUNT);
  const ratioOf = (pattern: RegExp): number => (start.match(pattern)?.length ?? 0) / start.length;
  return (
    ratioOf(/\ufffd/g) > LEAST_INVALID_RATIO &&
    ratioOf(/[\u0001-\u0008\u000b\u000c\u000e-\u001a\u001c-\u001f]/g) > LEAST_CONTROL_RATIO
  );
}
