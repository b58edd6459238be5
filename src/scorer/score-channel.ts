import type { Emitter, SweepLevels } from "../band/index.js";
import { beaconLevelDbm } from "./beacon-level.js";
import { channelInterference } from "./channel-interference.js";
import type { ChannelInterference, OverlapCache, TunedReceiver } from "./channel-interference.js";
import { clearAirRatio } from "./clear-air-ratio.js";
import type { Contributor } from "./contention.js";
import { exceededLevelDbm } from "./exceeded-level.js";
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

/** What a receiver hears on one channel, whatever is wanted there. */
export interface HeardChannel extends ChannelInterference {
  /** Exceeded for no more than the busy share of time, by the beacon lists, dBm. */
  readonly exceededDbm: number;
  readonly swept: readonly SweptLevels[];
  /** Which spoke unless the other is worse. */
  readonly otherwise: SpokenBy;
}

/**
 * Everything of `scoreChannel` that doesn't depend on the wanted level: one hearing serves many transmitters.
 * @param busyShareRatio share of time that may be worse, 0..1
 * @see {@link rankChannels}
 */
export function hearChannel(
  emitters: readonly Emitter[],
  receiver: TunedReceiver,
  busyShareRatio: number,
  cache?: OverlapCache,
  sweeps: readonly SweepLevels[] = [],
): HeardChannel {
  const interference = channelInterference(emitters, receiver, cache);
  const swept = sweptAtReceiver(sweeps, receiver);
  return {
    ...interference,
    exceededDbm: exceededLevelDbm(interference.distribution, busyShareRatio),
    swept,
    otherwise: emitters.length > 0 || sweeps.length === 0 ? "beacons" : swept.length > 0 ? "sweep" : null,
  };
}

/**
 * Margin, clear air and contributors of one receiver on one channel:
 * marginDb = wantedDbm − interferenceDbm(q) − requiredCiDb. Where both beacon lists and sweeps cover the
 * channel, the higher interference and the smaller clear air count.
 * @see {@link rankChannels}
 */
export function scoreChannel(
  emitters: readonly Emitter[],
  receiver: TunedReceiver,
  terms: ScoreTerms,
  cache?: OverlapCache,
  sweeps: readonly SweepLevels[] = [],
): ChannelMerit {
  return scoreHeard(hearChannel(emitters, receiver, terms.busyShareRatio, cache, sweeps), terms);
}

/**
 * `scoreChannel` of a channel that was heard before.
 * @param terms with the busy share that it was heard for
 * @see {@link rankChannels}
 */
export function scoreHeard(heard: HeardChannel, terms: ScoreTerms): ChannelMerit {
  const { wantedDbm, requiredCiDb, busyShareRatio } = terms;
  const { distribution, contributors, exceededDbm, swept, otherwise } = heard;
  const ceilingDbm = wantedDbm - requiredCiDb;
  const clear = clearAirRatio(distribution, ceilingDbm);
  const beaconsDbm = beaconLevelDbm(exceededDbm, distribution, terms, () => clear);
  const sweptDbm = sweptInterferenceDbm(swept, busyShareRatio) ?? -Infinity;
  const sweptClear = sweptClearAirRatio(swept, ceilingDbm) ?? Infinity;
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
