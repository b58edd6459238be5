import type { RadioProfile } from "../radio/index.js";
import { channelMarginDb, hearChannel, receiverOf, scoreHeard } from "../scorer/index.js";
import type { ChannelMerit, HeardChannel, OverlapCache, TunedReceiver } from "../scorer/index.js";
import { deviceOf } from "./emitter-signals.js";
import { peakGainDbi } from "./peak-gain.js";
import { receiverAir } from "./receiver-air.js";
import type { AirTerms, Heard } from "./receiver-air.js";
import type { VenueReceiver } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** Everything on the band but the system itself. */
export interface SceneTerms extends AirTerms {
  /** Share of time that may be worse, 0..1; 0.01 unless given. */
  readonly busyShareRatio?: number | undefined;
  /** What earlier scenes of the same house, crowd and survey heard; looked up and filled. */
  readonly memory?: SceneMemory | undefined;
}

/** What receivers hear, whatever is wanted there; a radio's profile has one survey in it. */
export interface SceneMemory {
  readonly airs: Map<RadioProfile, (receiver: VenueReceiver) => Heard>;
  /** By frequency, antenna and busy share. */
  readonly channels: Map<Heard, Map<string, HeardChannel>>;
}

/**
 * An empty one.
 * @see {@link venueSite}
 */
export function sceneMemory(): SceneMemory {
  return { airs: new Map(), channels: new Map() };
}

/** Scores one receiver on one frequency: wanted level in, margin and clear air out. */
export type SceneScore = (
  receiver: VenueReceiver,
  tuned: { readonly centreMhz: number; readonly wantedDbm: number; readonly enclosureLossDb: number },
) => ChannelMerit;

/**
 * The interference at a system's receivers: the scanned sources of a receiver's room (raised where the scan
 * was made from the floor and the receiver hangs above it), the crowd's handsets and the venue file's other
 * emitters, at the peak gain of the receiver's antenna, behind its canopy.
 * @throws {ArgumentError} as `crowdHandsets`; the function returned, as `hearChannel`
 * @see {@link venueSite}
 */
export function receiverScene(site: VenueSite, profile: RadioProfile, terms: SceneTerms): SceneScore {
  const { busyShareRatio = 0.01, memory = sceneMemory() } = terms;
  const heardBy = memory.airs.get(profile) ?? receiverAir(site, profile, terms);
  memory.airs.set(profile, heardBy);
  const hopping = new Set(site.venue.emitters.map(({ name }) => name));
  const requiredCiDb = profile.requiredCiDb.value;
  const cache: OverlapCache = new Map();
  return (receiver, { centreMhz, wantedDbm, enclosureLossDb }) => {
    const tuned = tunedTo(profile, receiver, centreMhz, enclosureLossDb);
    const heard = heardBy(receiver);
    const known = memory.channels.get(heard) ?? new Map<string, HeardChannel>();
    memory.channels.set(heard, known);
    const key = `${centreMhz} ${tuned.gainDb} ${busyShareRatio}`;
    const channel = known.get(key) ?? hearChannel(heard.emitters, tuned, busyShareRatio, cache, heard.sweeps);
    known.set(key, channel);
    const merit = scoreHeard(channel, {
      wantedDbm: Math.max(wantedDbm, NOTHING_DBM),
      requiredCiDb,
      busyShareRatio,
    });
    return { ...merit, wantedDbm, contributors: byDevice(merit.contributors, hopping) };
  };
}

/**
 * The interference of {@link receiverScene} alone, for whoever asks for nothing else: a third of the work.
 * @returns dBm, of one receiver on one frequency
 * @throws {ArgumentError} as `receiverScene`
 */
export function receiverLevels(
  site: VenueSite,
  profile: RadioProfile,
  terms: Omit<SceneTerms, "memory">,
): (...asked: Parameters<SceneScore>) => number {
  const { busyShareRatio = 0.01 } = terms;
  const heardBy = receiverAir(site, profile, terms);
  const requiredCiDb = profile.requiredCiDb.value;
  const cache: OverlapCache = new Map();
  return (receiver, { centreMhz, wantedDbm, enclosureLossDb }) => {
    const { emitters, sweeps } = heardBy(receiver);
    const scored = { wantedDbm: Math.max(wantedDbm, NOTHING_DBM), requiredCiDb, busyShareRatio };
    const tuned = tunedTo(profile, receiver, centreMhz, enclosureLossDb);
    const marginDb = channelMarginDb(emitters, tuned, scored, cache, sweeps);
    return scored.wantedDbm - marginDb - requiredCiDb;
  };
}

/** The receiver's antenna at its best, behind its canopy. */
export function tunedTo(
  profile: RadioProfile,
  { antenna }: VenueReceiver,
  centreMhz: number,
  enclosureLossDb: number,
): TunedReceiver {
  const gainDb = peakGainDbi(antenna, profile.rxGainDbi.value) - enclosureLossDb;
  return { ...receiverOf(profile), centreMhz, gainDb };
}

/** Stands in for no wanted signal at all. */
const NOTHING_DBM = -1000;

/** One line for a device that hops: its loudest hop, and the time of all that are heard. */
function byDevice(
  contributors: ChannelMerit["contributors"],
  hopping: ReadonlySet<string>,
): ChannelMerit["contributors"] {
  if (hopping.size === 0) return contributors;
  const lines = new Map<string, ChannelMerit["contributors"][number]>();
  for (const contributor of contributors) {
    const emitter = deviceOf(contributor.emitter, hopping);
    const line = lines.get(emitter);
    lines.set(
      emitter,
      line === undefined
        ? { ...contributor, emitter }
        : {
            ...line,
            airtimeRatio: line.airtimeRatio + contributor.airtimeRatio,
            onRatio: line.onRatio + contributor.onRatio,
          },
    );
  }
  return [...lines.values()];
}
