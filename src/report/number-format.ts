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
  return valueDb === null || !Number.isFinite(valueDb) ? "none" : `${fixed(valueDb, 1)} dB`;
}

/** A reach in both units, the reader's first, never rounded up, nor down to none. @example reachLengths(31.9, "m"); // => "31 m (104 ft)" */
export function reachLengths(lengthM: number, unit: LengthUnit): string {
  const [metres, feet] = [Math.floor(lengthM + 1e-9), Math.floor(mToFeet(lengthM) + 1e-9)];
  return inBoth(metres === 0 ? "under 1" : metres, feet === 0 ? "under 1" : feet, unit);
}

/** A distance that someone chose, in both units. @example chosenLengths(20, "m"); // => "20 m (66 ft)" */
export function chosenLengths(lengthM: number, unit: LengthUnit): string {
  const metres = Number(lengthM.toFixed(Number.isInteger(lengthM) || unit === "ft" ? 0 : 1));
  return inBoth(metres, Math.round(mToFeet(lengthM)), unit);
}

/** A distance in a table, in the reader's unit. @example distanceCell(2.5, "m"); // => "2.5 m" */
export function distanceCell(distanceM: number, unit: LengthUnit): string {
  return unit === "ft"
    ? `${fixed(mToFeet(distanceM), 0)} ft`
    : `${fixed(distanceM, Number.isInteger(distanceM) ? 0 : 1)} m`;
}

function inBoth(metres: number | string, feet: number | string, unit: LengthUnit): string {
  return unit === "m" ? `${metres} m (${feet} ft)` : `${feet} ft (${metres} m)`;
}

/**
 * A share that an option set, with the places that it has; one near 1 that was worked out, and has more of them
 * than anyone reads, is rounded down to two places of what is missing.
 * @example exactPercent(0.999); // => "99.9 %"
 * @example exactPercent(0.99949761); // => "99.949 %"
 */
export function exactPercent(ratio: number): string {
  const percent = Number((ratio * 100).toPrecision(9));
  const isExact = percent <= ratio * 100 + 1e-10 && (percent < 100 || ratio >= 1);
  const isShort = String(percent).length <= LONGEST_SHARE && isExact;
  if (ratio <= 0.5 || isShort) return `${percent} %`;
  const missing = 100 - ratio * 100;
  const placeCount = Math.max(0, 1 - Math.floor(Math.log10(missing)));
  const step = 10 ** -placeCount;
  return `${fixed(100 - Math.ceil(missing / step - 1e-6) * step, placeCount)} %`;
}

const LONGEST_SHARE = "99.9999".length;

/**
 * A chance, never rounded to none or to certainty. @example chancePercent(0.8179); // => "82 %"
 * @example chancePercent(1e-9); // => "under 0.1 %"
 */
export function chancePercent(probability: number): string {
  if (probability < 0.001) return "under 0.1 %";
  if (probability > 0.999) return "over 99.9 %";
  const near = probability < 0.0995 || probability > 0.99;
  return `${fixed(probability * 100, near ? 1 : 0)} %`;
}

/** A time that something lasts: two digits or more, in s or min. @example lastingTime(0.182); // => "0.18 s" */
export function lastingTime(timeS: number): string {
  if (timeS >= 120) return `${fixed(timeS / 60, 0)} min`;
  return `${fixed(timeS, timeS < 1 ? 2 : timeS < 10 ? 1 : 0)} s`;
}

/** A share of positions that hold, never rounded up to all nor down to none. @example heldPercent(0.99995); // => "over 99.99 %" */
export function heldPercent(ratio: number): string {
  if (ratio > 0 && ratio < 1e-4) return "under 0.01 %";
  return ratio > 0.9999 ? "over 99.99 %" : sharePercent(ratio);
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

/** A loss ratio for tables, never rounded to nothing or to all. @example lossPercent(0.00004); // => "<0.01 %" */
export function lossPercent(ratio: number): string {
  if (ratio <= 0) return "0 %";
  if (ratio < 1e-4) return "<0.01 %";
  if (ratio >= 0.9995 && ratio < 1) return sharePercent(ratio);
  return ratio < 0.0995 ? `${(ratio * 100).toFixed(2)} %` : `${(ratio * 100).toFixed(1)} %`;
}

/** Frames lost a minute, in whole words. @example framesAMinute(0.3); // => "under 1 frame a minute" */
export function framesAMinute(lostPerMinute: number): string {
  if (lostPerMinute <= 0) return "no frames";
  if (lostPerMinute < 0.95) return "under 1 frame a minute";
  const rounded = Math.round(lostPerMinute);
  return `${rounded} ${rounded === 1 ? "frame" : "frames"} a minute`;
}
