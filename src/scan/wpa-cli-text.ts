import { LEVEL_EXPECTED } from "./level-range.js";
import { parseOsAddress } from "./os-text-address.js";
import type { OsTextRow, SignalRule } from "./os-text-row.js";
import { parseOsLevel } from "./os-text-signal.js";
import type { OsTextSink } from "./os-text-sink.js";
import type { TextLine } from "./text-lines.js";
import { decodeWpaCliSsid } from "./wpa-cli-ssid.js";

/** `wpa_cli` prints levels in dBm. */
export const WPA_CLI_SIGNAL: SignalRule = { expected: LEVEL_EXPECTED, parse: parseOsLevel };

/**
 * Reads what `wpa_cli scan_results` prints: a row is a line of address, MHz, level, flags and name with tabs
 * between, or with blanks where a terminal replaced the tabs. Other lines are passed over.
 * @source columns as the command's own heading names them, from memory
 */
export class WpaCliReader {
  constructor(private readonly sink: OsTextSink) {}

  read({ line, text }: TextLine): void {
    const row = wpaCliRow(text, line);
    if (row !== null) this.sink.add(row);
  }

  finish(): void {}
}

const TABBED = /^[ >]*([^\t ]{11,18})\t([^\t]*)(?:\t([^\t]*)(?:\t([^\t]*)(?:\t(.*))?)?)?$/s;
const BLANKS = /^[ >]*([^\s]{11,18})\s+(\d{4,5})\s+(-?\d{1,4})(?:\s+((?:\[[^\]]*\])+))?(?:\s+(.*))?$/s;

/**
 * Is it a line that no other format has: an address, MHz, a level and flags in brackets, or none of them?
 * @example isWpaCliLine("02:1a:00:00:00:01\t2437\t-60\t[ESS]\tFoyer"); // => true
 */
export function isWpaCliLine(text: string): boolean {
  return SURE.test(text);
}

const SURE =
  /^[ >]*[0-9a-fx*?#:]{11,18}(?:\t\d{4,5}\t-?\d{1,4}\t(?:\[[^\t]*|)\t|\s+\d{4,5}\s+-?\d{1,4}\s+\[)/i;

/** @returns the row in a line; null when the line is none */
export function wpaCliRow(text: string, line: number): OsTextRow | null {
  const cells = TABBED.exec(text) ?? BLANKS.exec(text);
  if (cells === null) return null;
  const [, address = "", frequency = "", signal = "", , name = ""] = cells;
  if (parseOsAddress(address) === null && !/^(?:[^:]{2}:){5}[^:]{2}$/.test(address)) return null;
  return { line, address, frequency, signal, name: decodeWpaCliSsid(name) };
}
