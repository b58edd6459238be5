import { brickWall } from "../band/index.js";
import type { Emitter } from "../band/index.js";
import { channelInterference } from "./channel-interference.js";
import type { OverlapCache } from "./channel-interference.js";
import { clearAirRatio } from "./clear-air-ratio.js";
import { exceededLevelDbm } from "./exceeded-level.js";

/** One MHz of the band, as an isotropic antenna at the scan's places takes it in. */
export interface OccupancyCell {
  readonly fromMhz: number;
  readonly toMhz: number;
  /** Power in the cell, thermal noise of 290 K included, exceeded for no more than the busy share of time, dBm. */
  readonly levelDbm: number;
  /** Share of time in which the cell holds more than the threshold. */
  readonly busyRatio: number;
}

/** Thermal noise of one MHz at 290 K, dBm: −174 dBm/Hz + 60 dB. */
const NOISE_DBM_PER_MHZ = -114;

/**
 * Occupancy of the band by MHz: level and busy time, from the sources' masks, levels and airtimes.
 * @param options thresholdDbm: busy from this power in the cell, dBm; busyShareRatio: share of time that may exceed
 *   `levelDbm`, 0..1
 * @returns a cell for each whole MHz between the edges, rising
 * @see {@link rankChannels}
 */
export function occupancy(options: {
  readonly emitters: readonly Emitter[];
  readonly lowMhz: number;
  readonly highMhz: number;
  readonly thresholdDbm: number;
  readonly busyShareRatio: number;
}): OccupancyCell[] {
  const { emitters, lowMhz, highMhz, thresholdDbm, busyShareRatio } = options;
  const receiver = { selectivity: brickWall(1), noiseFloorDbm: NOISE_DBM_PER_MHZ, gainDb: 0 };
  const cache: OverlapCache = new Map();
  return Array.from({ length: Math.floor(highMhz - lowMhz) }, (_, index) => {
    const fromMhz = lowMhz + index;
    const { distribution } = channelInterference(emitters, { ...receiver, centreMhz: fromMhz + 0.5 }, cache);
    return {
      fromMhz,
      toMhz: fromMhz + 1,
      levelDbm: exceededLevelDbm(distribution, busyShareRatio),
      busyRatio: 1 - clearAirRatio(distribution, thresholdDbm),
    };
  });
}
