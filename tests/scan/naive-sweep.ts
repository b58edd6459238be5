import { findProfile } from "../../src/radio/index.js";
import type { SweepChannelLevels } from "../../src/band/index.js";

/** One bin of one pass: its edges in MHz and its level; NaN: none. */
export interface Bin {
  readonly fromMhz: number;
  readonly toMhz: number;
  readonly levelDbm: number;
}

const SAMPLES = 400;

/** Selectivity as a ratio on the straight lines between its breakpoints; nothing outside. */
function selectivityRatio(offsetMhz: number): number {
  const { points } = findProfile("raster-13").selectivity.value;
  const end = points.findIndex(([edgeMhz]) => edgeMhz > offsetMhz);
  if (end <= 0) return 0;
  const [fromMhz, fromDb] = points[end - 1]!;
  const [toMhz, toDb] = points[end]!;
  return 10 ** ((fromDb + ((offsetMhz - fromMhz) / (toMhz - fromMhz)) * (toDb - fromDb)) / 10);
}

const known = new Map<string, number>();

/** Mean of the selectivity over a bin, by the midpoints of a fine grid. */
function meanRatio(fromMhz: number, toMhz: number, centreMhz: number): number {
  const key = `${(fromMhz - centreMhz).toFixed(6)} ${(toMhz - fromMhz).toFixed(6)}`;
  const ratio = known.get(key) ?? integrated(fromMhz, toMhz, centreMhz);
  known.set(key, ratio);
  return ratio;
}

function integrated(fromMhz: number, toMhz: number, centreMhz: number): number {
  let sum = 0;
  for (let sample = 0; sample < SAMPLES; sample++)
    sum += selectivityRatio(fromMhz + ((sample + 0.5) / SAMPLES) * (toMhz - fromMhz) - centreMhz);
  return sum / SAMPLES;
}

/**
 * In-channel level of one pass, summed as the design has it: Σ 10^(L/10) · (spacing / RBW) · H.
 * @returns dBm; null where the pass doesn't cover the passband of 1 MHz
 */
export function naiveLevelDbm(bins: readonly Bin[], centreMhz: number, rbwMhz: number): number | null {
  let sumMw = 0;
  let coveredMhz = 0;
  for (const { fromMhz, toMhz, levelDbm } of bins) {
    const middleMhz = (fromMhz + toMhz) / 2;
    if (middleMhz < 2400 - 1e-9 || middleMhz > 2500 + 1e-9 || Number.isNaN(levelDbm)) continue;
    sumMw += 10 ** (levelDbm / 10) * ((toMhz - fromMhz) / rbwMhz) * meanRatio(fromMhz, toMhz, centreMhz);
    coveredMhz += Math.max(0, Math.min(toMhz, centreMhz + 0.5) - Math.max(fromMhz, centreMhz - 0.5));
  }
  return coveredMhz < 0.998 ? null : 10 * Math.log10(sumMw);
}

/** How many passes lie at or below each edge, by our histogram. */
export function countUpTo({ levelsDbm, atLevelCount }: SweepChannelLevels, edgeDbm: number): number {
  return levelsDbm.reduce((sum, level, index) => sum + (level <= edgeDbm ? atLevelCount[index]! : 0), 0);
}
