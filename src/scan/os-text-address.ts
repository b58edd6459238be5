import { parseBssid } from "./bssid.js";

/** An address as a text has it; of a masked one nothing is left to tell radios apart by. */
export interface OsAddress {
  /** Lower case, colons; null when it is masked. */
  readonly bssid: string | null;
}

const OCTET = "[0-9a-fx*?#]{2}";
const MASKED = new RegExp(`^(?:${OCTET}(?:[:-]${OCTET}){5}|${OCTET}(?:[:-]${OCTET}){1,4}[:-])$`, "i");

/** What {@link parseOsAddress} reads, in words. */
export const ADDRESS_EXPECTED = "the address of one radio, six pairs of hex digits";

/**
 * An address that may have been masked before the text was handed on: octets of `xx`, or left out behind a
 * trailing colon. Several radios then share one text, so it is no address. A colon after six whole octets
 * is no part of the address.
 * @returns null when the text is no address, masked or not
 * @example parseOsAddress("02:1a:xx:xx:xx:xx"); // => { bssid: null }
 */
export function parseOsAddress(text: string): OsAddress | null {
  const trimmed = text.trim();
  const bssid = parseBssid(trimmed) ?? parseBssid(trimmed.replace(/[:-]$/, ""));
  if (bssid !== null) return { bssid };
  const isWhole = /^(?:[0-9a-f]{2}[:-]){5}[0-9a-f]{2}$/i.test(trimmed);
  return !isWhole && MASKED.test(trimmed) ? { bssid: null } : null;
}
