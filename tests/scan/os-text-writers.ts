import fc from "fast-check";

// Writers of the texts that operating systems print, after each format's own conventions (from memory),
// so that what is written can be compared with what is read back.

/** One radio as a test makes it up. */
export interface Radio {
  readonly address: string;
  readonly name: string;
  readonly channel: number;
  /** 0..100, even, so that its level is a whole number of dBm. */
  readonly percent: number;
}

/** Names of visible characters, with those that formats escape or count as wide among them. */
const nameArbitrary = fc
  .array(fc.constantFrom(..."abcXYZ0127 :\\\"',;|*%-_[](){}éßñ日本🎭".match(/./gu)!), {
    minLength: 1,
    maxLength: 24,
  })
  .map((characters) => characters.join("").trim())
  .filter((name) => name !== "" && name !== "--" && !/ {2}/.test(name) && !/^'.*'$/.test(name));

const radioArbitrary = fc.record({
  address: fc
    .array(fc.integer({ min: 0, max: 255 }), { minLength: 5, maxLength: 5 })
    .map((octets) => ["02", ...octets.map((octet) => octet.toString(16).padStart(2, "0"))].join(":")),
  name: nameArbitrary,
  channel: fc.integer({ min: 1, max: 13 }),
  percent: fc.integer({ min: 0, max: 50 }).map((half) => 2 * half),
});

export const surveyArbitrary = fc.uniqueArray(radioArbitrary, {
  minLength: 1,
  maxLength: 12,
  selector: ({ address }) => address,
});

const FIELDS: Readonly<Record<string, (radio: Radio) => string>> = {
  "IN-USE": ({ percent }) => (percent === 100 ? "*" : " "),
  BSSID: ({ address }) => address.toUpperCase(),
  SSID: ({ name }) => name,
  MODE: () => "Infra",
  CHAN: ({ channel }) => String(channel),
  FREQ: ({ channel }) => `${2407 + 5 * channel} MHz`,
  RATE: () => "130 Mbit/s",
  SIGNAL: ({ percent }) => String(percent),
  BARS: ({ percent }) => (percent > 55 ? "▂▄▆_" : "▂▄__"),
  SECURITY: ({ channel }) => (channel === 3 ? "" : "WPA2"),
};

/** Lists of fields that hold what a row needs. */
export const fieldsArbitrary = fc
  .shuffledSubarray(Object.keys(FIELDS), { minLength: 4 })
  .filter((fields) => ["BSSID", "SSID", "FREQ", "CHAN", "SIGNAL"].every((field) => fields.includes(field)));

export function nmcliTerse(radios: readonly Radio[], fields: readonly string[]): string {
  const escaped = (text: string): string => text.replace(/[:\\]/g, "\\$&");
  return lines(radios.map((radio) => fields.map((field) => escaped(FIELDS[field]!(radio))).join(":")));
}

export function nmcliTable(radios: readonly Radio[], fields: readonly string[]): string {
  const rows = [fields, ...radios.map((radio) => fields.map((field) => FIELDS[field]!(radio) || "--"))];
  const widths = fields.map((_, index) => Math.max(...rows.map((row) => row[index]!.length)));
  return lines(rows.map((row) => row.map((cell, index) => cell.padEnd(widths[index]!)).join("  ")));
}

export function nmcliMultiline(radios: readonly Radio[], fields: readonly string[]): string {
  return lines(
    radios.flatMap((radio) =>
      fields.map((field) => `${field}:`.padEnd(40) + (FIELDS[field]!(radio) || "--")),
    ),
  );
}

/** @param words the keys of network type, signal, radio type, channel and rates, in any language */
export function netsh(radios: readonly Radio[], words: readonly string[]): string {
  const [type = "", signal = "", radioType = "", channel = "", rates = ""] = words;
  const line = (indent: number, key: string, value: string): string =>
    `${(" ".repeat(indent) + key).padEnd(28)}: ${value}`;
  return lines(
    radios.flatMap((radio, index) => [
      `SSID ${index + 1} : ${radio.name}`,
      line(4, type, "Infrastructure"),
      line(4, "BSSID 1", radio.address),
      line(9, signal, `${radio.percent}%  `),
      line(9, radioType, "802.11n"),
      line(9, channel, `${radio.channel} `),
      line(9, `${rates} (Mbps)`, "11"),
      "",
    ]),
  );
}

export function wpaCli(radios: readonly Radio[]): string {
  const bytes = (text: string): string =>
    [...new TextEncoder().encode(text)].map((byte) => `\\x${byte.toString(16).padStart(2, "0")}`).join("");
  const escaped = (name: string): string =>
    name.replace(/["\\]/g, "\\$&").replace(/[^ -~]+/gu, (run) => bytes(run));
  const row = ({ address, channel, percent, name }: Radio): string =>
    [address, 2407 + 5 * channel, percent / 2 - 100, "[WPA2-PSK-CCMP][ESS]", escaped(name)].join("\t");
  return lines(["bssid / frequency / signal level / flags / ssid", ...radios.map(row)]);
}

export function iwScan(radios: readonly Radio[]): string {
  const bytes = (text: string): string =>
    [...new TextEncoder().encode(text)].map((byte) => `\\x${byte.toString(16).padStart(2, "0")}`).join("");
  return lines(
    radios.flatMap(({ address, channel, percent, name }) => [
      `BSS ${address}(on wlan0)`,
      `\tfreq: ${2407 + 5 * channel}`,
      `\tsignal: ${(percent / 2 - 100).toFixed(2)} dBm`,
      `\tSSID: ${name.replace(/[^ -[\]-~]+/gu, (run) => bytes(run))}`,
    ]),
  );
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
