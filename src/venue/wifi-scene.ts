import type { Emitter, SweepLevels } from "../band/index.js";
import { channelMarginDb, receiverOf } from "../scorer/index.js";
import type { OverlapCache, TunedReceiver } from "../scorer/index.js";
import type { ChannelPlan, PlannedChannel } from "./plan-channel.js";

/** What a plan was made from, and whose the sources are. */
export interface WifiScene {
  readonly emitters: readonly Emitter[];
  /** Power sweeps: they can't be moved, and count as they are. */
  readonly sweeps?: readonly SweepLevels[];
  /** Ids of the building's own sources. */
  readonly buildingIds: ReadonlySet<string>;
  /** Overlaps to reuse, all of the plan's receiver. */
  readonly overlapCache?: OverlapCache;
}

/** The plan's receiver on one of its channels. */
export function tunedReceiver({ setting }: ChannelPlan, centreMhz: number): TunedReceiver {
  return { ...receiverOf(setting.profile), centreMhz };
}

/** A channel's margin with other sources on the air than those it was planned with, dB. */
export function marginAmong(
  emitters: readonly Emitter[],
  { setting }: ChannelPlan,
  { wantedDbm, centreMhz }: PlannedChannel,
  sweeps: readonly SweepLevels[],
  overlapCache: OverlapCache,
): number {
  const { profile, busyShareRatio } = setting;
  const terms = { wantedDbm, requiredCiDb: profile.requiredCiDb.value, busyShareRatio };
  return channelMarginDb(emitters, { ...receiverOf(profile), centreMhz }, terms, overlapCache, sweeps);
}

/**
 * Working margin of a channel at the reference distance for some interference margin:
 * min(sensitivity margin, interference margin) − fade allowance.
 * @param marginDb interference margin, dB
 */
export function workingWithDb(
  { setting, link }: ChannelPlan,
  score: PlannedChannel,
  marginDb: number,
): number {
  const sensitivityMarginDb = score.wantedDbm - setting.profile.sensitivityDbm.value;
  return Math.min(sensitivityMarginDb, marginDb) - link.fadeAllowanceDb;
}
