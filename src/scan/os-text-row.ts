import { READ_BAND_MHZ } from "../band/index.js";
import { placeOnChannel, wifiChannelAtMhz } from "./channel-placement.js";
import type { ChannelPlacement } from "./channel-placement.js";
import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import type { IwSignal } from "./iw-signal.js";
import { ADDRESS_EXPECTED, parseOsAddress } from "./os-text-address.js";
import { visibleName } from "./os-text-name.js";
import type { Reading, WifiStandard } from "./reading.js";

/** One radio as a text tells of it, still as text. Null, or absent: the text hasn't got it. */
export interface OsTextRow {
  readonly line: number;
  readonly name: string;
  readonly address: string | null;
  /** As `2437` or `2437 MHz`. */
  readonly frequency?: string | null;
  readonly channel?: string | null;
  /** As `2.4 GHz`. */
  readonly band?: string | null;
  /** As `40 MHz`. */
  readonly width?: string | null;
  readonly signal: string | null;
  readonly airtimeRatio?: number | null;
  readonly stationCount?: number | null;
  readonly standard?: WifiStandard;
}

/** How the signals of one format are read. */
export interface SignalRule {
  readonly expected: string;
  readonly parse: (text: string) => IwSignal | null;
}

/**
 * One radio of an operating system's text as a reading. Out of band goes by the frequency, else by the
 * band, else by a channel above 14; nothing else of such a row is judged.
 */
export function readOsTextRow(row: OsTextRow, rule: SignalRule, fill: Fill): Reading | Fault | "out of band" {
  if (isOutOfBand(row)) return "out of band";
  const address = row.address === null ? { bssid: null } : parseOsAddress(row.address);
  if (address === null) return bad("address", row.address, ADDRESS_EXPECTED);
  const placement = placementOf(row);
  if ("code" in placement) return placement;
  if (row.signal === null) return bad("signal", null, rule.expected);
  const signal = rule.parse(row.signal);
  if (signal === null) return bad("signal", row.signal, rule.expected);
  return {
    source: fill.source,
    line: row.line,
    timeMs: fill.timeMs,
    place: fill.place,
    crowd: fill.crowd,
    bssid: address.bssid,
    ssid: visibleName(row.name),
    ...placement,
    signalDbm: signal.signalDbm,
    signalAssumed: signal.signalAssumed,
    airtimeRatio: row.airtimeRatio ?? null,
    stationCount: row.stationCount ?? null,
    standard: row.standard ?? "unknown",
    ageMs: null,
  };
}

function isOutOfBand({ frequency, band, channel }: OsTextRow): boolean {
  const frequencyMhz = megahertz(frequency);
  if (frequencyMhz !== null) return frequencyMhz < READ_BAND_MHZ[0] || frequencyMhz > READ_BAND_MHZ[1];
  const bandGhz = /^(\d)(?:[.,]\d)?\s*G/.exec(band?.trim() ?? "")?.[1];
  if (bandGhz !== undefined) return bandGhz !== "2";
  const number = wholeNumber(channel);
  return number !== null && number > 14;
}

const CHANNEL_EXPECTED = "a Wi-Fi channel from 1 to 14";

function placementOf({ frequency, channel, width }: OsTextRow): ChannelPlacement | Fault {
  const frequencyMhz = megahertz(frequency);
  if (filled(frequency) && frequencyMhz === null) return bad("frequency", frequency, "a frequency in MHz");
  const told = filled(channel) ? wholeNumber(channel) : null;
  if (filled(channel) && (told === null || told < 1)) return bad("channel", channel, CHANNEL_EXPECTED);
  const number = told ?? (frequencyMhz === null ? null : wifiChannelAtMhz(frequencyMhz));
  if (number === null) return bad("channel", filled(frequency) ? frequency : null, CHANNEL_EXPECTED);
  const widthMhz = megahertz(width);
  if (filled(width) && widthMhz === null) return bad("width", width, "a width in MHz");
  const isWide = widthMhz !== null && widthMhz > 22;
  const atPrimary = placeOnChannel(number, frequencyMhz, 20);
  if (atPrimary === null) {
    const expected = `the centre of Wi-Fi channel ${number}`;
    return { code: "contradiction", column: "frequency", value: frequency ?? "", expected };
  }
  return placeOnChannel(number, null, isWide ? 40 : 20)!;
}

function megahertz(text: string | null | undefined): number | null {
  const digits = /^(\d{2,5}(?:\.\d+)?)(?:\s*\p{L}{3})?$/u.exec(text?.trim() ?? "")?.[1];
  return digits === undefined ? null : Number(digits);
}

function wholeNumber(text: string | null | undefined): number | null {
  const trimmed = text?.trim() ?? "";
  return /^\d{1,3}$/.test(trimmed) ? Number(trimmed) : null;
}

function filled(text: string | null | undefined): text is string {
  return text !== null && text !== undefined && text.trim() !== "" && text.trim() !== "--";
}

function bad(column: string, value: string | null, expected: string): Fault {
  if (!filled(value)) return { code: "missing-cell", column, expected };
  return { code: "bad-cell", column, value, expected };
}
