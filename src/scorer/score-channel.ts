import type { Emitter, SweepLevels } from "../band/index.js";
import { beaconLevelDbm } from "./beacon-level.js";
import { channelInterference } from "./channel-interference.js";
import type { OverlapCache, TunedReceiver } from "./channel-interference.js";
import { clearAirRatio } from "./clear-air-ratio.js";
import type { Contributor } from "./contention.js";
import type { InterferenceDistribution } from "./interference-distribution.js";
import type { ScoreTerms } from "./score-terms.js";
import { sweptAtReceiver, sweptClearAirRatio, sweptInterferenceDbm } from "./swept-levels.js";
import type { SweptLevels } from "./swept-levels.js";

/** Which evidence gave a figure; null: there are sweeps alone, and none covers the channel. */
export type SpokenBy = "beacons" | "sweep" | null;

/** How well one channel serves one receiver, and why. */
export interface ChannelMerit {
  /** Local-mean level of the wanted signal, before any fade allowance, dBm. */
  readonly wantedDbm: number;
  /** wanted − interference − required C/I, dB. */
  readonly marginDb: number;
  /** Interference plus noise that is exceeded for no more than the busy share of time, dBm. */
  readonly interferenceDbm: number;
  /** Which gave the interference: where both cover the channel, the higher. */
  readonly spokenBy: SpokenBy;
  /** Share of time in which C/(I+N) suffices at an instant. */
  readonly clearAirRatio: number;
  /** Which gave the clear air: where both cover the channel, the smaller. */
  readonly clearAirSpokenBy: SpokenBy;
  readonly contributors: readonly Contributor[];
  /** By the beacon lists. */
  readonly distribution: InterferenceDistribution;
  /** By the sweeps that cover the channel. */
  readonly swept: readonly SweptLevels[];
}

/**
 * Margin, clear air and contributors of one receiver on one channel:
 * marginDb = wantedDbm − interferenceDbm(q) − requiredCiDb. Where both beacon lists and sweeps cover the
 * channel, the higher interference and the smaller clear air count.
 */
export function scoreChannel(
  emitters: readonly Emitter[],
  receiver: TunedReceiver,
  terms: ScoreTerms,
  cache?: OverlapCache,
  sweeps: readonly SweepLevels[] = [],
): ChannelMerit {
  const { wantedDbm, requiredCiDb, busyShareRatio } = terms;
  const { distribution, contributors } = channelInterference(emitters, receiver, cache);
  const ceilingDbm = wantedDbm - requiredCiDb;
  const clear = clearAirRatio(distribution, ceilingDbm);
  const beaconsDbm = beaconLevelDbm(distribution, terms, () => clear);
  const swept = sweptAtReceiver(sweeps, receiver);
  const sweptDbm = sweptInterferenceDbm(swept, busyShareRatio) ?? -Infinity;
  const sweptClear = sweptClearAirRatio(swept, ceilingDbm) ?? Infinity;
  const otherwise =
    emitters.length > 0 || sweeps.length === 0 ? "beacons" : swept.length > 0 ? "sweep" : null;
  const interferenceDbm = Math.max(beaconsDbm, sweptDbm);
  return {
    wantedDbm,
    marginDb: wantedDbm - interferenceDbm - requiredCiDb,
    interferenceDbm,
    spokenBy: sweptDbm > beaconsDbm ? "sweep" : otherwise,
    clearAirRatio: Math.min(clear, sweptClear),
    clearAirSpokenBy: sweptClear < clear ? "sweep" : otherwise,
    contributors,
    distribution,
    swept,
  };
}
