import { isLevel } from "./level-range.js";

/** A level, and whether it was a percentage that had to be converted. */
export interface IwSignal {
  readonly signalDbm: number;
  readonly signalAssumed: boolean;
}

/**
 * The `signal` line of `iw`. It prints whole and hundredths of a dBm apart, each with its own sign, so
 * that −60.5 dBm stands as `-60.-50 dBm`, and −0.5 as `0.-50 dBm`. Drivers without dBm give `N/100`,
 * taken as N/2 − 100 dBm (assumed).
 * @returns null when the text is no such signal, or no level that a receiver has
 * @source iw scan.c output format (Linux nl80211 tool), read; the conversion of N is common practice, no source
 * @example parseIwSignal("-60.-50 dBm"); // => { signalDbm: -60.5, signalAssumed: false }
 */
export function parseIwSignal(text: string): IwSignal | null {
  const percent = /^(\d{1,3})\/100$/.exec(text);
  if (percent !== null) {
    const share = Number(percent[1]);
    return share <= 100 ? { signalDbm: share / 2 - 100, signalAssumed: true } : null;
  }
  const level = /^(-?)(\d+)(?:\.(-?)(\d+))? dBm$/.exec(text);
  if (level === null) return null;
  const size = Number(`${level[2]}.${level[4] ?? "0"}`);
  const signalDbm = level[1] === "-" || level[3] === "-" ? -size : size;
  return isLevel(signalDbm) ? { signalDbm, signalAssumed: false } : null;
}
