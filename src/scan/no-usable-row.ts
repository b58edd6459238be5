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
  if (head.includes("\0")) return "binary data";
  const firstLine = /\S[^\r\n]*/.exec(head)?.[0].trim();
  if (firstLine === undefined) return "only blank lines";
  const cells = firstLine.split(/[,;\t]/).map((cell) => cell.trim());
  if (cells.length >= 2) return `the headers ${cells.join(", ")}`;
  return `text that begins ${firstLine.slice(0, 40)}`;
}
