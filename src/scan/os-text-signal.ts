import { isLevel, LEVEL_EXPECTED } from "./level-range.js";
import type { IwSignal } from "./iw-signal.js";

/** What {@link parseOsSignal} reads, in words. */
export const SIGNAL_EXPECTED = `a signal from 0 to 100 %, or ${LEVEL_EXPECTED}`;

/**
 * A signal as operating systems print it: a quality from 0 to 100 with or without its percent sign, taken
 * as quality/2 − 100 dBm (assumed); or a negative number, which is a level in dBm.
 * @returns null when the text is neither
 * @source quality/2 − 100 dBm: common practice, no source
 * @example parseOsSignal("70%"); // => { signalDbm: -65, signalAssumed: true }
 */
export function parseOsSignal(text: string): IwSignal | null {
  const digits = /^(?:(\d{1,3})\s*%?|[%٪]\s*(\d{1,3}))$/.exec(text.trim());
  if (digits === null) return parseOsLevel(text);
  const quality = Number(digits[1] ?? digits[2]);
  return quality <= 100 ? { signalDbm: quality / 2 - 100, signalAssumed: true } : null;
}

/**
 * A level in dBm, with or without its unit.
 * @returns null when the text is no level that a receiver has
 * @example parseOsLevel("-60"); // => { signalDbm: -60, signalAssumed: false }
 */
export function parseOsLevel(text: string): IwSignal | null {
  const level = /^-(\d{1,3}(?:[.,]\d{1,3})?)(?:\s*dBm)?$/i.exec(text.trim());
  if (level === null) return null;
  const signalDbm = -Number(level[1]!.replace(",", "."));
  return isLevel(signalDbm) ? { signalDbm, signalAssumed: false } : null;
}
