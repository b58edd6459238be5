import { requireFinite, requireWhole } from "../issues/index.js";
import { mToFeet } from "./length.js";

/**
 * A length in feet, inches and a fraction of an inch in lowest terms, to the nearest 1/`denominatorCount` inch,
 * halves away from zero.
 * @param denominatorCount parts of an inch, whole, 1 … 64
 * @param lengthM m
 * @returns feet and inches
 * @throws {ArgumentError} when the length is not finite or the parts are not such a number
 * @example feetInchesText(3.7719, 16); // => `12' 4 1/2"`
 * @example feetInchesText(-0.0127, 8); // => `-0' 0 1/2"`
 */
export function feetInchesText(lengthM: number, denominatorCount: number): string {
  requireFinite("lengthM", lengthM);
  requireWhole("denominatorCount", denominatorCount, 1, 64);
  const partsCount = Math.round(Math.abs(mToFeet(lengthM)) * 12 * denominatorCount + ROUNDING);
  const inches = Math.floor(partsCount / denominatorCount);
  const rest = partsCount % denominatorCount;
  const divisor = greatestDivisor(rest, denominatorCount);
  const fraction = rest === 0 ? "" : ` ${rest / divisor}/${denominatorCount / divisor}`;
  const sign = lengthM < 0 && partsCount > 0 ? "-" : "";
  return `${sign}${Math.floor(inches / 12)}' ${inches % 12}${fraction}"`;
}

/**
 * A length in metres to the millimetre, halves away from zero.
 * @param lengthM m
 * @returns metres
 * @throws {ArgumentError} when the length is not finite
 * @example metresText(3.7719); // => "3.772 m"
 */
export function metresText(lengthM: number): string {
  requireFinite("lengthM", lengthM);
  const lengthMm = Math.round(Math.abs(lengthM) * 1000 + ROUNDING);
  return `${lengthM < 0 && lengthMm > 0 ? "-" : ""}${(lengthMm / 1000).toFixed(3)} m`;
}

/** So that a half that binary fractions miss by a hair still rounds up. */
const ROUNDING = 1e-7;

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
