import { RADIO_BAND_MHZ } from "../band/index.js";
import type { Emitter, SweepLevels } from "../band/index.js";
import { ArgumentError, requireFinite, requireRatio, tellProgress } from "../issues/index.js";
import type { LongWork } from "../issues/index.js";
import type { RadioProfile } from "../radio/index.js";
import { SLACK } from "../units/index.js";
import type { OverlapCache } from "./channel-interference.js";
import type { ChannelChoice, ChannelScore } from "./channel-score.js";
import { byMargin } from "./by-margin.js";
import { chooseBackup } from "./choose-backup.js";
import { hopSet } from "./hop-set.js";
import type { HopSet } from "./hop-set.js";
import { receiverOf } from "./receiver-of.js";
import { scoreChannel } from "./score-channel.js";

/** What is ranked: the radio, what reaches it, and what else is on the air. */
export interface RankChannelsOptions extends LongWork {
  readonly emitters: readonly Emitter[];
  /** Power sweeps, summed for this profile's channels; none unless given. */
  readonly sweeps?: readonly SweepLevels[];
  readonly profile: RadioProfile;
  /** Local-mean received level, dBm: one for all channels, or one for each of `profile.channels` in its order. */
  readonly wantedDbm: number | readonly number[];
  /** Share of time that may be worse, 0..1; 0.01 unless given. */
  readonly busyShareRatio?: number;
  /** Edges that the radio must stay within; 2400–2483.5 MHz unless given. */
  readonly bandMhz?: readonly [lowMhz: number, highMhz: number];
  /** Overlaps to reuse between calls for one profile. */
  readonly overlapCache?: OverlapCache;
}

/** A radio's channels in order of merit, and what to use. */
export interface ChannelRanking {
  readonly ranking: readonly ChannelScore[];
  readonly recommended: ChannelChoice;
  readonly backup: ChannelChoice;
  /** Null for a fixed-channel profile. */
  readonly hopSet: HopSet | null;
}

/**
 * Ranks a radio's channels for one receiver: greatest margin, then greatest clear air (both compared at
 * 1e-9), then lowest channel number; channels that no scan
 * covers after those, channels outside the band last.
 * @returns every channel of the profile, the best first
 * @throws {ArgumentError} when a level is not finite (a wanted one may be −Infinity: none arrives, and so is
 * its margin), q is not in 0..1, or levels and channels differ in number
 * @throws the signal's reason when it is aborted
 * @example const emitters = [{ id: "02:00:00:00:00:01", centreMhz: 2437, shape: transmitShapes.ht20, levelDbm: -48,
 *   airtimeRatio: 0.5, airtimeAssumed: true, contentionChannel: 6 }];
 * const profile = findProfile("raster-13");
 * const { ranking, recommended, backup } = rankChannels({ emitters, profile, wantedDbm: -60 });
 * [recommended.channel, ranking.at(-1).clearAirRatio]; // => [13, 0.5]
 * chooseBackup(ranking).channel === backup.channel; // => true
 * const receiver = { ...receiverOf(profile), centreMhz: 2437 };
 * const terms = { wantedDbm: -60, requiredCiDb: 14, busyShareRatio: 0.01 };
 * channelInterference(emitters, receiver).contributors.length; // => 1
 * scoreChannel(emitters, receiver, terms).clearAirRatio; // => 0.5
 * scoreHeard(hearChannel(emitters, receiver, 0.01), terms).clearAirRatio; // => 0.5
 * sweptAtReceiver([], receiver); // => []
 * const hopping = findProfile("hop-79");
 * const all = rankChannels({ emitters, profile: hopping, wantedDbm: -60 });
 * hopSet(all.ranking, hopping.hopping).channels.length; // => 79
 * const span = { emitters, busyShareRatio: 0.01 };
 * bandProfile({ ...span, profile, startMhz: 2400, stepMhz: 1, stepCount: 84 }).aboveNoiseDb.length; // => 84
 * occupancy({ ...span, lowMhz: 2400, highMhz: 2484, thresholdDbm: -80 }).length; // => 84
 */
export function rankChannels(options: RankChannelsOptions): ChannelRanking {
  const {
    emitters,
    sweeps = [],
    profile,
    wantedDbm,
    busyShareRatio = 0.01,
    bandMhz = RADIO_BAND_MHZ,
  } = options;
  requireRatio("busyShareRatio", busyShareRatio);
  const { channels } = profile;
  const wanted = typeof wantedDbm === "number" ? channels.map(() => wantedDbm) : wantedDbm;
  if (wanted.length !== channels.length)
    throw new ArgumentError("wantedDbm", `one level for each of ${channels.length} channels`, wanted.length);
  for (const { id, levelDbm, airtimeRatio } of emitters) {
    requireFinite(`levelDbm of ${id}`, levelDbm);
    requireRatio(`airtimeRatio of ${id}`, airtimeRatio);
  }
  const receiver = receiverOf(profile);
  const cache = options.overlapCache ?? new Map();
  const scored = channels.map((channel, index): Omit<ChannelScore, "rank"> => {
    tellProgress(options, "channels", index, channels.length);
    if (wanted[index] !== -Infinity) requireFinite("wantedDbm", wanted[index]!);
    const terms = { wantedDbm: wanted[index]!, requiredCiDb: profile.requiredCiDb.value, busyShareRatio };
    const merit = scoreChannel(emitters, { ...receiver, centreMhz: channel.centreMhz }, terms, cache, sweeps);
    const reason = bandBreach(channel.centreMhz, profile.bandwidthMhz.value, bandMhz);
    return { ...channel, ...merit, allowed: reason === null, reason };
  });
  const ranking = scored.sort(byMerit).map((score, index) => ({ rank: index + 1, ...score }));
  return { ranking, ...choices(ranking, profile) };
}

function choices(ranking: readonly ChannelScore[], profile: RadioProfile): Omit<ChannelRanking, "ranking"> {
  if (profile.hopping !== null) {
    const none = {
      channel: null,
      reason: "the radio hops over its frequencies: there is no one channel to choose",
    };
    return { recommended: none, backup: none, hopSet: hopSet(ranking, profile.hopping) };
  }
  const best = ranking[0];
  if (best === undefined || !best.allowed) {
    const none = { channel: null, reason: "no channel of this profile lies inside the band" };
    return { recommended: none, backup: none, hopSet: null };
  }
  if (best.spokenBy === null) {
    const none = { channel: null, reason: "no scan covers any channel of this profile" };
    return { recommended: none, backup: none, hopSet: null };
  }
  const backup = chooseBackup(ranking);
  return {
    recommended: { channel: best.channel, reason: null },
    backup:
      backup === null
        ? { channel: null, reason: "no other channel is allowed" }
        : { channel: backup.channel, reason: null },
    hopSet: null,
  };
}

function byMerit(a: Omit<ChannelScore, "rank">, b: Omit<ChannelScore, "rank">): number {
  return (
    Number(b.allowed) - Number(a.allowed) ||
    Number(b.spokenBy !== null) - Number(a.spokenBy !== null) ||
    byMargin(a, b)
  );
}

function bandBreach(
  centreMhz: number,
  bandwidthMhz: number,
  [lowMhz, highMhz]: readonly [number, number],
): string | null {
  const fromMhz = centreMhz - bandwidthMhz / 2;
  const toMhz = centreMhz + bandwidthMhz / 2;
  if (fromMhz >= lowMhz - SLACK && toMhz <= highMhz + SLACK) return null;
  return `${fromMhz}–${toMhz} MHz leaves the band ${lowMhz}–${highMhz} MHz`;
}
