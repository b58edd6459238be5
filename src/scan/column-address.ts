import { parseBssid } from "./bssid.js";

/** What an address cell holds: a radio's address, one that is cut or masked and names no single radio, or neither. */
export type AddressCell =
  | { readonly kind: "address"; readonly bssid: string }
  | { readonly kind: "masked" }
  | { readonly kind: "none" };

const PAIRS = /^[0-9a-f]{2}(?:[:\-._ ][0-9a-f]{2}){5}[:\-.]?$/;
const GROUPS = /^[0-9a-f]{4}[.\-:][0-9a-f]{4}[.\-:][0-9a-f]{4}$/;
const BARE = /^[0-9a-f]{12}$/;
const MASKED =
  /^(?=.*[x*])(?:[0-9a-f]{2}|x{1,2}|\*{1,2})(?:[:\-._](?:[0-9a-f]{2}|x{1,2}|\*{1,2})){5}[:\-.]?$/;
const CUT = /^[0-9a-f]{2}(?:[:-][0-9a-f]{2}){2,4}[:-]$/;

/**
 * Reads an address in any of the ways in which programs write one: pairs or groups of four with colons,
 * hyphens or points, or twelve digits alone; a separator left at the end is taken off. An address with
 * octets masked by `x` or `*`, or cut after a separator, is several radios' at once: masked.
 * @example addressCell("021A.0000.0001"); // => { kind: "address", bssid: "02:1a:00:00:00:01" }
 */
export function addressCell(text: string): AddressCell {
  const lower = text.trim().toLowerCase();
  if (lower.length < 9 || lower.length > 18) return NONE;
  if (PAIRS.test(lower) || GROUPS.test(lower) || BARE.test(lower)) {
    const digits = lower.replace(/[^0-9a-f]/g, "");
    const bssid = parseBssid(digits.match(/../g)!.join(":"));
    return bssid === null ? MASK : { kind: "address", bssid };
  }
  return MASKED.test(lower) || CUT.test(lower) ? MASK : NONE;
}

const NONE: AddressCell = { kind: "none" };
const MASK: AddressCell = { kind: "masked" };
