import { mToFeet } from "../units/index.js";
import type { LengthUnit } from "./pen.js";

/** @returns `value` with a fixed number of places, never "-0"; "none" where there is no number */
export function fixed(value: number | null, placeCount: number): string {
  if (value === null || !Number.isFinite(value)) return "none";
  const text = value.toFixed(placeCount);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** @example dB(12.34); // => "12.3 dB" */
export function dB(valueDb: number | null): string {
  return `${fixed(valueDb, 1)} dB`;
}

/** @example dBm(-61.24); // => "-61.2 dBm" */
export function dBm(levelDbm: number | null): string {
  return `${fixed(levelDbm, 1)} dBm`;
}

/** A length in the reader's unit: whole feet; metres with one place below 10. */
export function lengthText(lengthM: number, unit: LengthUnit): string {
  if (unit === "ft") return `${fixed(mToFeet(lengthM), 0)} ft`;
  return `${fixed(lengthM, Number.isInteger(lengthM) || lengthM >= 10 ? 0 : 1)} m`;
}

/** A reach in both units, never rounded up. @example bothLengths(31.9); // => "31 m (104 ft)" */
export function bothLengths(lengthM: number): string {
  return `${Math.floor(lengthM + 1e-9)} m (${Math.floor(mToFeet(lengthM) + 1e-9)} ft)`;
}

/** A share of time near one, never rounded up to 100. @example sharePercent(0.99996); // => "99.99 %" */
export function sharePercent(ratio: number): string {
  if (ratio >= 1) return "100 %";
  const percent = Math.floor(ratio * 1e4) / 100;
  return `${percent.toFixed(2)} %`;
}

/** A share as whole per cent. @example wholePercent(0.254); // => "25 %" */
export function wholePercent(ratio: number): string {
  return `${Math.round(ratio * 100)} %`;
}

/** A loss ratio for tables, never rounded down to nothing. @example lossPercent(0.00004); // => "<0.01 %" */
export function lossPercent(ratio: number): string {
  if (ratio <= 0) return "0 %";
  if (ratio < 1e-4) return "<0.01 %";
  return ratio < 0.0995 ? `${(ratio * 100).toFixed(2)} %` : `${(ratio * 100).toFixed(1)} %`;
}

/** Frames lost a minute, in whole words. @example framesAMinute(0.3); // => "under 1 frame a minute" */
export function framesAMinute(lostPerMinute: number): string {
  if (lostPerMinute <= 0) return "no frames";
  if (lostPerMinute < 0.95) return "under 1 frame a minute";
  const rounded = Math.round(lostPerMinute);
  return `${rounded} ${rounded === 1 ? "frame" : "frames"} a minute`;
}
