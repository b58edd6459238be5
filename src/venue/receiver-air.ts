import type { Emitter, SweepLevels } from "../band/index.js";
import type { RadioProfile } from "../radio/index.js";
import { crowdHandsets } from "./crowd-handsets.js";
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

/** What there is to hear, the system itself apart. */
export interface AirTerms {
  /** By room; a room that isn't in it was not scanned. */
  readonly survey: ReadonlyMap<string, RoomSurvey>;
  /** Wi-Fi channels that people's handsets use; the site's, else those of the survey's strong sources unless given. */
  readonly channels?: readonly number[] | undefined;
  /** What else a receiver hears, at an isotropic antenna: the venue's other systems, say. Nothing unless given. */
  readonly further?: ((receiver: VenueReceiver) => readonly Emitter[]) | undefined;
}

/** What reaches a receiver, at an isotropic antenna. */
export interface Heard {
  readonly emitters: readonly Emitter[];
  readonly sweeps: readonly SweepLevels[];
}

/** A scan at or below this height was made from the floor, and a receiver above it hangs, m. */
export const FLOOR_SCAN_UP_TO_M = 2;

/**
 * What a receiver hears: the scanned sources of its room (raised where the scan was made from the floor and the
 * receiver hangs above it), the crowd's handsets and the venue file's other emitters; worked out once a receiver.
 * @throws {ArgumentError} as `crowdHandsets`
 */
export function receiverAir(
  site: VenueSite,
  profile: RadioProfile,
  { survey, channels, further }: AirTerms,
): (receiver: VenueReceiver) => Heard {
  const scanned = [...survey.values()].flatMap(({ emitters }) => emitters);
  const handsetsAt = crowdHandsets(site, channels ?? site.handsetChannels ?? wifiChannelsInUse(scanned));
  const devicesAt = placedEmitters(site, profile);
  const known = new Map<string, Heard>();
  return (receiver) => {
    const before = known.get(receiver.name);
    if (before !== undefined) return before;
    const { emitters, sweeps } = scannedAt(site, receiver, survey);
    const all = [
      ...emitters,
      ...handsetsAt(receiver),
      ...devicesAt(receiver),
      ...(further === undefined ? [] : further(receiver)),
    ];
    // Any order will do; this one is near to what the scorer sorts them into, channel by channel.
    const heard = { emitters: all.sort((a, b) => b.levelDbm - a.levelDbm), sweeps };
    known.set(receiver.name, heard);
    return heard;
  };
}

/** The scanned sources of a receiver's room, at its height. */
export function scannedAt(site: VenueSite, receiver: VenueReceiver, survey: AirTerms["survey"]): Heard {
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
