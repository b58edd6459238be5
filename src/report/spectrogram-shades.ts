import { fixed } from "./number-format.js";

/** Shades of a spectrogram, blank apart. */
const SHADE_COUNT = 4;
const STEP_DB = 10;

/**
 * Lower edges of a spectrogram's shades, the strongest first: over the level that spoils the receiver, rounded to a
 * whole dB, then down by ten dB each; blank is what is less.
 */
export function shadeEdgesDbm(spoiltDbm: number): number[] {
  return Array.from({ length: SHADE_COUNT }, (_, index) => Math.round(spoiltDbm) - index * STEP_DB);
}

/** @returns which shade a level has, 0 the strongest; null: blank */
export function shadeIndex(levelDbm: number, spoiltDbm: number): number | null {
  const index = shadeEdgesDbm(spoiltDbm).findIndex((edgeDbm) => levelDbm > edgeDbm);
  return index < 0 ? null : index;
}

/** What each shade means, the strongest first. */
export function shadeWords(spoiltDbm: number): string[] {
  return shadeEdgesDbm(spoiltDbm).map((edgeDbm, index) => {
    const level = `over ${fixed(edgeDbm, 0)}`;
    return index === 0 ? `${level} dBm (spoils the receiver)` : level;
  });
}
