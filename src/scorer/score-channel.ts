import type { Emitter } from "../band/index.js";
import { SLACK } from "../units/index.js";
import { channelInterference } from "./channel-interference.js";
import type { OverlapCache, TunedReceiver } from "./channel-interference.js";
import { clearAirRatio } from "./clear-air-ratio.js";
import type { Contributor } from "./contention.js";
import { exceededLevelDbm } from "./exceeded-level.js";
import type { InterferenceDistribution } from "./interference-distribution.js";

/** How well one channel serves one receiver, and why. */
export interface ChannelMerit {
  /** Local-mean level of the wanted signal, before any fade allowance, dBm. */
  readonly wantedDbm: number;
  /** wanted − interference − required C/I, dB. */
  readonly marginDb: number;
  /** Interference plus noise that is exceeded for no more than the busy share of time, dBm. */
  readonly interferenceDbm: number;
  /** Share of time in which C/(I+N) suffices at an instant. */
  readonly clearAirRatio: number;
  readonly contributors: readonly Contributor[];
  readonly distribution: InterferenceDistribution;
}

/** What a channel is judged by. */
export interface ScoreTerms {
  readonly wantedDbm: number;
  readonly requiredCiDb: number;
  /** Share of time that may be worse, 0..1. */
  readonly busyShareRatio: number;
}

/**
 * Margin, clear air and contributors of one receiver on one channel:
 * marginDb = wantedDbm − interferenceDbm(q) − requiredCiDb.
 */
export function scoreChannel(
  emitters: readonly Emitter[],
  receiver: TunedReceiver,
  { wantedDbm, requiredCiDb, busyShareRatio }: ScoreTerms,
  cache?: OverlapCache,
): ChannelMerit {
  const { distribution, contributors } = channelInterference(emitters, receiver, cache);
  const ceilingDbm = wantedDbm - requiredCiDb;
  const clear = clearAirRatio(distribution, ceilingDbm);
  const levelDbm = exceededLevelDbm(distribution, busyShareRatio);
  // Merged states never cross the threshold: where the exact clear air says that it holds, the level does too.
  const holds = busyShareRatio > 0 && clear >= 1 - busyShareRatio - SLACK;
  const interferenceDbm = holds ? Math.min(levelDbm, Math.max(ceilingDbm, distribution.restDbm)) : levelDbm;
  return {
    wantedDbm,
    marginDb: wantedDbm - interferenceDbm - requiredCiDb,
    interferenceDbm,
    clearAirRatio: clear,
    contributors,
    distribution,
  };
}
