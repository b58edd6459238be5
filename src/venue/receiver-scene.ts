import type { Emitter, SweepLevels } from "../band/index.js";
import { antennaPeakGainDbi } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";
import { receiverOf, scoreChannel } from "../scorer/index.js";
import type { ChannelMerit, OverlapCache } from "../scorer/index.js";
import { crowdHandsets } from "./crowd-handsets.js";
import { deviceOf } from "./emitter-signals.js";
import { placedEmitters } from "./placed-emitters.js";
import type { VenueReceiver } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";
import { wifiChannelsInUse } from "./wifi-channels-in-use.js";

/** What was scanned in one room, with the site's crowd in. */
export interface RoomSurvey {
  /** Levels as scanned. */
  readonly emitters: readonly Emitter[];
  readonly sweeps?: readonly SweepLevels[] | undefined;
  /** Of the scanning antenna above the floor, m; null: not known, taken as on the floor. */
  readonly scanHeightM: number | null;
}

/** Everything on the band but the system itself. */
export interface SceneTerms {
  /** By room; a room that isn't in it was not scanned. */
  readonly survey: ReadonlyMap<string, RoomSurvey>;
  /** Wi-Fi channels that people's handsets use; those of the survey's strong sources unless given. */
  readonly channels?: readonly number[] | undefined;
  /** Share of time that may be worse, 0..1; 0.01 unless given. */
  readonly busyShareRatio?: number | undefined;
}

/** Scores one receiver on one frequency: wanted level in, margin and clear air out. */
export type SceneScore = (
  receiver: VenueReceiver,
  tuned: { readonly centreMhz: number; readonly wantedDbm: number; readonly enclosureLossDb: number },
) => ChannelMerit;

/** A scan at or below this height was made from the floor, and a receiver above it hangs, m. */
export const FLOOR_SCAN_UP_TO_M = 2;

/**
 * The interference at a system's receivers: the scanned sources of a receiver's room (raised where the scan
 * was made from the floor and the receiver hangs above it), the crowd's handsets and the venue file's other
 * emitters, at the peak gain of the receiver's antenna, behind its canopy.
 * @throws {ArgumentError} as `crowdHandsets`; the function returned, as `scoreChannel`
 */
export function receiverScene(site: VenueSite, profile: RadioProfile, terms: SceneTerms): SceneScore {
  const { survey, busyShareRatio = 0.01 } = terms;
  const scanned = [...survey.values()].flatMap(({ emitters }) => emitters);
  const handsetsAt = crowdHandsets(site, terms.channels ?? wifiChannelsInUse(scanned));
  const devicesAt = placedEmitters(site, profile);
  const hopping = new Set(site.venue.emitters.map(({ name }) => name));
  const requiredCiDb = profile.requiredCiDb.value;
  const cache: OverlapCache = new Map();
  const heard = new Map<string, Heard>();
  const heardBy = (receiver: VenueReceiver): Heard => {
    const known = heard.get(receiver.name);
    if (known !== undefined) return known;
    const { emitters, sweeps } = scannedAt(site, receiver, survey);
    const fresh = { emitters: [...emitters, ...handsetsAt(receiver), ...devicesAt(receiver)], sweeps };
    heard.set(receiver.name, fresh);
    return fresh;
  };
  return (receiver, { centreMhz, wantedDbm, enclosureLossDb }) => {
    const peakDbi =
      receiver.antenna === null ? profile.rxGainDbi.value : antennaPeakGainDbi(receiver.antenna);
    const tuned = { ...receiverOf(profile), centreMhz, gainDb: peakDbi - enclosureLossDb };
    const { emitters, sweeps } = heardBy(receiver);
    const scored = { wantedDbm: Math.max(wantedDbm, NOTHING_DBM), requiredCiDb, busyShareRatio };
    const merit = scoreChannel(emitters, tuned, scored, cache, sweeps);
    return { ...merit, wantedDbm, contributors: byDevice(merit.contributors, hopping) };
  };
}

/** Stands in for no wanted signal at all. */
const NOTHING_DBM = -1000;

interface Heard {
  readonly emitters: readonly Emitter[];
  readonly sweeps: readonly SweepLevels[];
}

function scannedAt(site: VenueSite, receiver: VenueReceiver, survey: SceneTerms["survey"]): Heard {
  const room = survey.get(receiver.room);
  if (room === undefined) return { emitters: [], sweeps: [] };
  const { emitters, sweeps = [], scanHeightM } = room;
  const fromFloor = (scanHeightM ?? 0) <= FLOOR_SCAN_UP_TO_M && receiver.heightM > FLOOR_SCAN_UP_TO_M;
  if (!fromFloor) return { emitters, sweeps };
  const gainDb = site.venue.crowd.scanHeightGainDb;
  return {
    emitters: emitters.map((emitter) => ({ ...emitter, levelDbm: emitter.levelDbm + gainDb })),
    sweeps: sweeps.map((sweep) => ({
      ...sweep,
      channels: sweep.channels.map((heard) => ({
        ...heard,
        levelsDbm: heard.levelsDbm.map((levelDbm) => levelDbm + gainDb),
      })),
    })),
  };
}

/** One line for a device that hops: its loudest hop, and the time of all that are heard. */
function byDevice(
  contributors: ChannelMerit["contributors"],
  hopping: ReadonlySet<string>,
): ChannelMerit["contributors"] {
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
