import { parseOsAddress } from "./os-text-address.js";

/** One line of `netsh` output that has a colon. */
export interface NetshLine {
  /** What stands before the colon, trimmed; in the language of the system. */
  readonly key: string;
  /** The number that ends the key, as in `SSID 3`, from 1; null where there is none. */
  readonly keyIndex: number | null;
  /** What stands after the colon; a single blank behind it is not part of it. */
  readonly value: string;
  /** Blanks in front of the key. */
  readonly indentCount: number;
}

/**
 * Cuts a line at its first colon (the full-width one too).
 * @returns null when the line has none, or nothing before it
 * @example netshLine("    BSSID 1  : 02:1a:00:00:00:01")?.keyIndex; // => 1
 */
export function netshLine(text: string): NetshLine | null {
  const colonIndex = text.search(/[:：]/);
  if (colonIndex === -1) return null;
  const key = text.slice(0, colonIndex).trim();
  if (key === "") return null;
  const digits = /(?:^|[^\d])(\d{1,5})$/.exec(key)?.[1];
  const indentCount = text.length - text.trimStart().length;
  const value = text.slice(colonIndex + 1).replace(/^ /, "");
  return { key, keyIndex: digits === undefined ? null : Number(digits), value, indentCount };
}

/** Does the line open a network: a numbered key that stands outermost, or `SSID` and a number? */
export function opensNetwork({ key, keyIndex, indentCount }: NetshLine): boolean {
  if (keyIndex === null) return false;
  return /^SSID\s+\d+$/i.test(key) || (indentCount === 0 && !/^BSSID\b/i.test(key) && !/[>\\$#]/.test(key));
}

/** Does the line open a radio of a network: `BSSID` and a number, or any numbered key and an address? */
export function opensRadio({ key, keyIndex, value, indentCount }: NetshLine): boolean {
  if (keyIndex === null) return false;
  return /^BSSID\s+\d+$/i.test(key) || (indentCount > 0 && parseOsAddress(value) !== null);
}
