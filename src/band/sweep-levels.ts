import { SLACK } from "../units/index.js";

/**
 * What a power sweep heard in one radio channel, pass by pass, as a histogram: in-channel power through the
 * receiver's selectivity, at an isotropic antenna.
 */
export interface SweepChannelLevels {
  readonly channel: number;
  readonly centreMhz: number;
  /** Passes that covered the channel's passband; 0: the sweep says nothing of it. */
  readonly passCount: number;
  /** Upper edges of the 1 dB cells that hold any pass, rising. */
  readonly levelsDbm: readonly number[];
  /** Passes in each of those cells. */
  readonly atLevelCount: readonly number[];
}

/** The sweeps of one place and crowd, summed for the channels of one receiver. */
export interface SweepLevels {
  /** Empty: not named. */
  readonly place: string;
  readonly crowd: "empty" | "part" | "full" | null;
  readonly channels: readonly SweepChannelLevels[];
}

/**
 * The level that is exceeded in no more than a share of the passes: the upper edge of the lowest cell with
 * no more than that share above it.
 * @param exceededRatio 0..1, compared with a slack of 1e-9; 0 is the highest pass, 0.5 the (lower) median
 * @returns dBm; null where no pass covered the channel
 * @example sweepLevelDbm({ channel: 1, centreMhz: 2412, passCount: 4, levelsDbm: [-90, -60], atLevelCount: [3, 1] }, 0.25); // => -90
 */
export function sweepLevelDbm(heard: SweepChannelLevels, exceededRatio: number): number | null {
  const { levelsDbm, atLevelCount, passCount } = heard;
  if (passCount === 0) return null;
  let aboveCount = 0;
  for (let index = levelsDbm.length - 1; index > 0; index--) {
    aboveCount += atLevelCount[index]!;
    if (aboveCount / passCount > exceededRatio + SLACK) return levelsDbm[index]!;
  }
  return levelsDbm[0]!;
}
