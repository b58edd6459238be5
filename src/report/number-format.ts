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

/** A reach in both units, the reader's first, never rounded up. @example reachLengths(31.9, "m"); // => "31 m (104 ft)" */
export function reachLengths(lengthM: number, unit: LengthUnit): string {
  return inBoth(Math.floor(lengthM + 1e-9), Math.floor(mToFeet(lengthM) + 1e-9), unit);
}

/** A distance that someone chose, in both units. @example chosenLengths(20, "m"); // => "20 m (66 ft)" */
export function chosenLengths(lengthM: number, unit: LengthUnit): string {
  const metres = Number(lengthM.toFixed(Number.isInteger(lengthM) || unit === "ft" ? 0 : 1));
  return inBoth(metres, Math.round(mToFeet(lengthM)), unit);
}

function inBoth(metres: number, feet: number, unit: LengthUnit): string {
  return unit === "m" ? `${metres} m (${feet} ft)` : `${feet} ft (${metres} m)`;
}

/** A share that an option set, with the places that it has. @example exactPercent(0.999); // => "99.9 %" */
export function exactPercent(ratio: number): string {
  return `${Number((ratio * 100).toPrecision(9))} %`;
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
