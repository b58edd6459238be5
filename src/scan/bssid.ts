const COLONS = /^[0-9a-f]{2}(?::[0-9a-f]{2}){5}$/;
const HYPHENS = /^[0-9a-f]{2}(?:-[0-9a-f]{2}){5}$/;

/**
 * An address of six octets, with colons or hyphens, in lower case with colons. The all-zero and the
 * broadcast address are no radio's own: they are refused, so that no two radios become one.
 * @returns null when the text is no such address
 * @source IEEE 802-2014 clause 8 (written forms of an address)
 * @example parseBssid("02-00-5E-10-00-01"); // => "02:00:5e:10:00:01"
 */
export function parseBssid(text: string): string | null {
  const lower = text.trim().toLowerCase();
  if (!COLONS.test(lower) && !HYPHENS.test(lower)) return null;
  const address = lower.replaceAll("-", ":");
  return NOBODY.has(address) ? null : address;
}

const NOBODY: ReadonlySet<string> = new Set(["00:00:00:00:00:00", "ff:ff:ff:ff:ff:ff"]);
