import { overlapDbByOffset } from "../band/index.js";
import type { Emitter, Shape } from "../band/index.js";
import { byLevel, takeTurns } from "./contention.js";
import type { Contender, Contributor } from "./contention.js";
import { interferenceDistribution } from "./interference-distribution.js";
import type { InterferenceDistribution } from "./interference-distribution.js";

/** A receiver tuned to one frequency. */
export interface TunedReceiver {
  readonly centreMhz: number;
  /** 0 dB in the passband, beyond it minus the rejection. */
  readonly selectivity: Shape;
  readonly noiseFloorDbm: number;
  /** What its antenna and housing add to a level as scanned, dB: antenna gain − enclosure loss. */
  readonly gainDb: number;
}

/** What one receiver channel hears. */
export interface ChannelInterference {
  readonly distribution: InterferenceDistribution;
  /** Every emitter above the noise floor − 10 dB in the channel, strongest first. */
  readonly contributors: readonly Contributor[];
}

/** Overlaps with one receiver that have been computed, by transmit shape and offset: many emitters share both. */
export type OverlapCache = Map<
  Shape,
  { readonly overlapDb: (offsetMhz: number) => number; readonly byOffset: Map<number, number> }
>;

/**
 * The interference in one receiver channel as a distribution: each emitter's in-channel level is its scanned level +
 * receiver gain + spectral overlap; emitters of one primary Wi-Fi channel take turns, all else is independent.
 * @param emitters any order, ids unique
 * @param cache overlaps to reuse between channels of one selectivity
 */
export function channelDistribution(
  emitters: readonly Emitter[],
  receiver: TunedReceiver,
  cache: OverlapCache = new Map(),
): InterferenceDistribution {
  const groups = new Map<number | string, Contender[]>();
  for (const emitter of emitters) {
    const key = emitter.contentionChannel ?? emitter.id;
    const contender = {
      emitter: emitter.id,
      inChannelDbm: inChannelDbm(emitter, receiver, cache),
      airtimeRatio: emitter.airtimeRatio,
      airtimeAssumed: emitter.airtimeAssumed,
    };
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [contender]);
    else group.push(contender);
  }
  return interferenceDistribution(receiver.noiseFloorDbm, [...groups.values()].map(takeTurns));
}

/**
 * The same with everyone who is heard in the channel.
 * @param emitters any order, ids unique
 * @param cache overlaps to reuse between channels of one selectivity
 * @see {@link rankChannels}
 */
export function channelInterference(
  emitters: readonly Emitter[],
  receiver: TunedReceiver,
  cache?: OverlapCache,
): ChannelInterference {
  const distribution = channelDistribution(emitters, receiver, cache);
  const audibleDbm = receiver.noiseFloorDbm - 10;
  const contributors = distribution.groups
    .flat()
    .filter(({ inChannelDbm }) => inChannelDbm > audibleDbm)
    .sort(byLevel);
  return { distribution, contributors };
}

/**
 * The power that an emitter puts into a receiver's channel: level as scanned + receiver gain + overlap.
 * @returns dBm; -Infinity where the two don't meet
 */
export function inChannelDbm(emitter: Emitter, receiver: TunedReceiver, cache: OverlapCache): number {
  const offsetMhz = receiver.centreMhz - emitter.centreMhz;
  const overlapDb = cachedOverlapDb(cache, emitter.shape, receiver.selectivity, offsetMhz);
  return emitter.levelDbm + receiver.gainDb + overlapDb;
}

function cachedOverlapDb(cache: OverlapCache, shape: Shape, selectivity: Shape, offsetMhz: number): number {
  let known = cache.get(shape);
  if (known === undefined)
    cache.set(shape, (known = { overlapDb: overlapDbByOffset(shape, selectivity), byOffset: new Map() }));
  let overlapDb = known.byOffset.get(offsetMhz);
  if (overlapDb === undefined) known.byOffset.set(offsetMhz, (overlapDb = known.overlapDb(offsetMhz)));
  return overlapDb;
}
