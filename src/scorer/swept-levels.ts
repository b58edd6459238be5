import { sweepLevelDbm } from "../band/index.js";
import type { SweepChannelLevels, SweepLevels } from "../band/index.js";
import { SLACK, toDbm, toMw } from "../units/index.js";
import type { TunedReceiver } from "./channel-interference.js";

/** What one place's sweeps put into a receiver, its own noise included. */
export interface SweptLevels {
  readonly place: string;
  readonly crowd: SweepLevels["crowd"];
  /** Levels at the receiver, rising, and the passes in each. */
  readonly levels: SweepChannelLevels;
}

/**
 * What the sweeps heard in a receiver's channel, as it reaches the receiver: level + gain, plus its noise.
 * @returns one for each place and crowd of which some pass covered the channel
 * @see {@link rankChannels}
 */
export function sweptAtReceiver(sweeps: readonly SweepLevels[], receiver: TunedReceiver): SweptLevels[] {
  const noiseMw = toMw(receiver.noiseFloorDbm);
  return sweeps.flatMap(({ place, crowd, channels }) => {
    const heard = channels.find(({ centreMhz }) => Math.abs(centreMhz - receiver.centreMhz) < SAME_MHZ);
    if (heard === undefined || heard.passCount === 0) return [];
    const levelsDbm = heard.levelsDbm.map((levelDbm) => toDbm(toMw(levelDbm + receiver.gainDb) + noiseMw));
    return [{ place, crowd, levels: { ...heard, levelsDbm } }];
  });
}

const SAME_MHZ = 1e-6;

/**
 * Interference plus noise by the sweeps: exceeded in no more than a share of the passes, at the worst place.
 * @param busyShareRatio q, 0..1
 * @returns dBm; null where no sweep covers the channel
 * @example sweptInterferenceDbm([], 0.01); // => null
 */
export function sweptInterferenceDbm(swept: readonly SweptLevels[], busyShareRatio: number): number | null {
  const levelsDbm = swept
    .map(({ levels }) => sweepLevelDbm(levels, busyShareRatio))
    .filter((dbm) => dbm !== null);
  return levelsDbm.length === 0 ? null : Math.max(...levelsDbm);
}

/**
 * Clear air by the sweeps: the share of passes at or below a ceiling, at the worst place.
 * @param ceilingDbm wanted level − required C/I, dBm, compared with a slack of 1e-9 dB
 * @returns 0..1; null where no sweep covers the channel
 * @example sweptClearAirRatio([], -70); // => null
 */
export function sweptClearAirRatio(swept: readonly SweptLevels[], ceilingDbm: number): number | null {
  const shares = swept.map(({ levels: { levelsDbm, atLevelCount, passCount } }) => {
    const clear = atLevelCount.filter((_, index) => levelsDbm[index]! <= ceilingDbm + SLACK);
    return clear.reduce((sum, count) => sum + count, 0) / passCount;
  });
  return shares.length === 0 ? null : Math.min(...shares);
}
