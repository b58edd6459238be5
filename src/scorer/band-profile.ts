import type { Emitter, SweepLevels } from "../band/index.js";
import type { RadioProfile } from "../radio/index.js";
import { channelDistribution } from "./channel-interference.js";
import type { OverlapCache } from "./channel-interference.js";
import { exceededLevelDbm } from "./exceeded-level.js";
import { receiverOf } from "./receiver-of.js";
import { sweptAtReceiver, sweptInterferenceDbm } from "./swept-levels.js";

/** What the radio's receiver would take in if it were tuned anywhere in the band. */
export interface BandProfile {
  readonly startMhz: number;
  readonly stepMhz: number;
  /** `aboveNoiseDb[i]` belongs to a receiver tuned to startMhz + (i + ½)·stepMhz; 0 is its own noise alone. */
  readonly aboveNoiseDb: readonly number[];
}

/**
 * Interference plus noise across the band, in dB above the receiver's noise, exceeded for no more than a
 * share of time. For pictures: at a channel's own centre it is the figure that the ranking uses.
 * What a sweep heard in a channel is drawn from half-way to the channel below to half-way to the one above.
 * @param options gainDb: of this very receiver's antenna less its canopy; the profile's unless given
 * @see {@link rankChannels}
 */
export function bandProfile(options: {
  readonly emitters: readonly Emitter[];
  readonly sweeps?: readonly SweepLevels[];
  readonly profile: RadioProfile;
  readonly gainDb?: number;
  readonly busyShareRatio: number;
  readonly startMhz: number;
  readonly stepMhz: number;
  readonly stepCount: number;
}): BandProfile {
  const { emitters, sweeps = [], profile, busyShareRatio, startMhz, stepMhz, stepCount } = options;
  const tuned = receiverOf(profile);
  const receiver = { ...tuned, gainDb: options.gainDb ?? tuned.gainDb };
  const cache: OverlapCache = new Map();
  const aboveNoiseDb = Array.from({ length: stepCount }, (_, index) => {
    const centreMhz = startMhz + (index + 0.5) * stepMhz;
    const distribution = channelDistribution(emitters, { ...receiver, centreMhz }, cache);
    const nearest = profile.channels.reduce<number | null>(
      (best, channel) =>
        best === null || Math.abs(channel.centreMhz - centreMhz) < Math.abs(best - centreMhz)
          ? channel.centreMhz
          : best,
      null,
    );
    const isNear = nearest !== null && Math.abs(nearest - centreMhz) <= HALF_RASTER_MHZ;
    const swept = isNear ? sweptAtReceiver(sweeps, { ...receiver, centreMhz: nearest }) : [];
    const sweptDbm = sweptInterferenceDbm(swept, busyShareRatio) ?? -Infinity;
    return Math.max(exceededLevelDbm(distribution, busyShareRatio), sweptDbm) - receiver.noiseFloorDbm;
  });
  return { startMhz, stepMhz, aboveNoiseDb };
}

/** Half of the widest spacing of channels, MHz. */
const HALF_RASTER_MHZ = 2.5;
