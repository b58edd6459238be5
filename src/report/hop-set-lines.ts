import type { HopSet } from "../scorer/index.js";
import { dB, sharePercent } from "./number-format.js";

/** The hop set, the ranges to keep out, and what that gains. */
export function hopSetLines({ channels, excludedRanges, clearAirRatio, marginDb, whole }: HopSet): string[] {
  const now = `mean clear air ${sharePercent(clearAirRatio)}, median margin ${dB(marginDb)}`;
  if (excludedRanges.length === 0) return [`${channels.length} frequencies, none kept out: ${now}.`];
  const ranges = excludedRanges.map(({ fromMhz, toMhz }) => `${fromMhz}–${toMhz} MHz`).join(", ");
  return [
    `${channels.length} frequencies with ${ranges} kept out: ${now}.`,
    `The gain: without keeping any out, mean clear air ${sharePercent(whole.clearAirRatio)}, median margin ${dB(whole.marginDb)}.`,
  ];
}
