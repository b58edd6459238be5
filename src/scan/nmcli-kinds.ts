/** What a column of `nmcli` output holds; `other` is not read. */
export type NmcliKind =
  "address" | "name" | "nameHex" | "channel" | "frequency" | "width" | "signal" | "bars" | "inUse" | "other";

/**
 * The headings by which `nmcli` names its columns where it speaks English, this version's and older ones'.
 * @source `nmcli device wifi list`, from memory
 */
const HEADINGS: Readonly<Record<string, NmcliKind>> = {
  NAME: "other",
  SSID: "name",
  "SSID-HEX": "nameHex",
  BSSID: "address",
  MODE: "other",
  CHAN: "channel",
  FREQ: "frequency",
  RATE: "other",
  BANDWIDTH: "width",
  SIGNAL: "signal",
  BARS: "bars",
  SECURITY: "other",
  "WPA-FLAGS": "other",
  "RSN-FLAGS": "other",
  DEVICE: "other",
  ACTIVE: "other",
  "IN-USE": "inUse",
  "*": "inUse",
  "DBUS-PATH": "other",
};

/**
 * @param headings the cells of a heading line, or the keys of a block
 * @returns a kind for each; null where one isn't English
 * @example kindsByHeading(["SSID", "CHAN"]); // => ["name", "channel"]
 */
export function kindsByHeading(headings: readonly string[]): readonly NmcliKind[] | null {
  const kinds = headings.map((heading) => (isHeadingWord(heading) ? HEADINGS[heading] : undefined));
  return kinds.every((kind) => kind !== undefined) ? kinds : null;
}

/**
 * Is it one of those headings?
 * @example isHeadingWord("SSID-HEX"); // => true
 */
export function isHeadingWord(text: string): boolean {
  return Object.hasOwn(HEADINGS, text);
}

/** Are there the columns that a row needs: a signal, a channel or a frequency, and an address or a name? */
export function isUsable(kinds: readonly NmcliKind[]): boolean {
  const has = (...wanted: readonly NmcliKind[]): boolean => wanted.some((kind) => kinds.includes(kind));
  return has("signal") && has("channel", "frequency") && has("address", "name", "nameHex");
}
