import type { Fault } from "./fault.js";
import type { IwBlock } from "./iw-block.js";
import { parseIwSignal } from "./iw-signal.js";
import { LEVEL_EXPECTED } from "./level-range.js";

/** How the text of a key is read; `parse` returns null when it can't be what is expected. */
interface Field<T> {
  readonly key: string;
  readonly expected: string;
  readonly parse: (text: string) => T | null;
}

/** The side of the secondary channel of 40 MHz; `none` for 20 MHz. */
export type SecondarySide = "none" | "above" | "below";

const CHANNEL_EXPECTED = "a Wi-Fi channel from 1 to 14";

/**
 * The lines of a BSS block that are read.
 * @source iw scan.c output format (Linux nl80211 tool), read; BSS Load: IEEE 802.11 clause 9.4.2.27
 */
export const IW_FIELDS = {
  frequencyMhz: field("freq", "a frequency in MHz", (text) => numberIn(/^(\d{4,6}(?:\.\d+)?)$/, text)),
  signal: field("signal", `${LEVEL_EXPECTED}, or N/100`, parseIwSignal),
  ageMs: field("last seen", "an age as N ms ago", (text) => numberIn(/^(\d+) ms ago$/, text)),
  dsChannel: field("ds parameter set", CHANNEL_EXPECTED, (text) => channelIn(/^channel (\d+)$/, text)),
  primaryChannel: field("ht operation/primary channel", CHANNEL_EXPECTED, (text) =>
    channelIn(/^(\d+)$/, text),
  ),
  secondarySide: field("ht operation/secondary channel offset", "no secondary, above or below", sideIn),
  stationWidth: field("ht operation/sta channel width", "20 MHz or any", (text) =>
    text === "20 MHz" || text === "any" ? text : null,
  ),
  stationCount: field("bss load/station count", "a whole number up to 65535", (text) =>
    numberIn(/^(\d+)$/, text, 65_535),
  ),
  airtimeRatio: field("bss load/channel utilisation", "N/255", (text) => {
    const busyCount = numberIn(/^(\d+)\/255$/, text, 255);
    return busyCount === null ? null : busyCount / 255;
  }),
} as const;

/** Reads the fields of one block; the first text that can't be what it should be is kept as the fault. */
export class IwFieldReader {
  fault: Fault | null = null;

  constructor(private readonly block: IwBlock) {}

  /** @returns null where the block hasn't got the field, or (a fault) it isn't what is expected */
  read<T>({ key, expected, parse }: Field<T>): T | null {
    const text = this.block.get(key);
    if (text === undefined) return null;
    const value = parse(text);
    if (value === null && !this.block.isTorn(key))
      this.fault ??= { code: "bad-cell", column: key, value: text, expected };
    return value;
  }

  /** Notes that a field that every row needs is missing. */
  missing({ key, expected }: Field<unknown>): void {
    this.fault ??= { code: "missing-cell", column: key, expected };
  }
}

function field<T>(key: string, expected: string, parse: (text: string) => T | null): Field<T> {
  return { key, expected, parse };
}

function numberIn(pattern: RegExp, text: string, highest = Number.MAX_SAFE_INTEGER): number | null {
  const digits = pattern.exec(text)?.[1];
  const value = Number(digits ?? Number.NaN);
  return value <= highest ? value : null;
}

function channelIn(pattern: RegExp, text: string): number | null {
  const channel = numberIn(pattern, text, 14);
  return channel === 0 ? null : channel;
}

function sideIn(text: string): SecondarySide | null {
  if (text === "above" || text === "below") return text;
  return text === "no secondary" || text.startsWith("[reserved") ? "none" : null;
}
