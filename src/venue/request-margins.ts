import type { Emitter } from "../band/index.js";
import { channelMarginDb, inChannelDbm } from "../scorer/index.js";
import type { OverlapCache } from "../scorer/index.js";
import { handsetsFollow } from "./handsets-follow.js";
import { narrowed } from "./narrowed.js";
import { canMove, onWifiChannel } from "./on-wifi-channel.js";
import { onWorstWifi } from "./on-worst-wifi.js";
import { radiosMoved } from "./radio-places.js";
import type { RadioPlaces } from "./radio-places.js";
import { receiverAir, scannedAt } from "./receiver-air.js";
import type { RoomSurvey } from "./receiver-air.js";
import { earsOf } from "./request-ears.js";
import type { Ear } from "./request-ears.js";
import type { RequestingSystem, RequestOptions } from "./request-options.js";
import { fadeAllowances } from "./sight.js";
import type { VenueSite } from "./venue-site.js";

/** One system's margins with the building's radios moved about. */
export interface SystemMargins {
  readonly name: string;
  /** Why there are none; null where there are. */
  readonly reason: string | null;
  readonly isHopping: boolean;
  /** Working margin of the weakest receiver as things stand, dB. */
  readonly todayDb: number;
  /** The same with radios elsewhere. */
  readonly leastDb: (places: RadioPlaces) => number;
  /**
   * How far a radio, on a Wi-Fi channel at 20 MHz (null: on its worst of 1, 6, 11), lies above what a
   * receiver bears, at the receiver where it is most, dB; −Infinity where none hears it.
   */
  readonly excessDb: (emitter: string, wifiChannel: number | null) => number;
}

/** All systems' margins. */
export interface RequestMargins {
  readonly systems: readonly SystemMargins[];
  /** The building's Wi-Fi radios that were heard, by id, with the Wi-Fi channel of each. */
  readonly buildingIds: readonly string[];
  readonly scannedChannels: ReadonlyMap<string, number>;
}

/** Lays out the systems' links once, so that many what-ifs can be asked of them. */
export function requestMargins(site: VenueSite, options: RequestOptions): RequestMargins {
  const { survey, buildingIds } = options;
  const scannedChannels = new Map<string, number>();
  for (const { emitters } of survey.values())
    for (const emitter of emitters)
      if (buildingIds.has(emitter.id) && canMove(emitter))
        scannedChannels.set(emitter.id, emitter.contentionChannel!);
  const moving = new Set(scannedChannels.keys());
  return {
    systems: options.systems.map((one) => systemMargins(site, options, one, moving)),
    buildingIds: [...moving].sort((a, b) => (a < b ? -1 : 1)),
    scannedChannels,
  };
}

function systemMargins(
  site: VenueSite,
  options: RequestOptions,
  one: RequestingSystem,
  moving: ReadonlySet<string>,
): SystemMargins {
  const { profile, name } = one.system;
  const { survey } = options;
  const cache: OverlapCache = new Map();
  const isHopping = profile.hopping !== null;
  const ears = isHopping || one.channel === null ? [] : earsOf(site, one, fadeAllowances(options));
  const least = leastOver(site, one, ears, { options, cache, moving });
  const reason = reasonOf(isHopping, ears);
  return {
    name,
    reason,
    isHopping,
    todayDb: reason === null ? least(survey) : 0,
    leastDb: (places) =>
      least(
        elsewhere(survey, (emitters) => radiosMoved(emitters, places, moving, ears[0]!.tuned, cache)),
        places.off !== undefined,
      ),
    excessDb: (emitter, wifiChannel) =>
      ears.reduce((mostDb, ear) => {
        const heard = scannedAt(site, ear.receiver, survey).emitters.find(({ id }) => id === emitter);
        if (heard === undefined) return mostDb;
        const [there] =
          wifiChannel === null
            ? onWorstWifi([heard], moving, ear.tuned, cache)
            : [onWifiChannel(narrowed(heard), wifiChannel)];
        return Math.max(mostDb, inChannelDbm(there!, ear.tuned, cache) - ear.edgeDbm);
      }, -Infinity),
  };
}

/** Working margin of the weakest receiver with what is heard in the rooms; with nobody's handset where that is off. */
function leastOver(
  site: VenueSite,
  { system: { profile } }: RequestingSystem,
  ears: readonly Ear[],
  terms: {
    readonly options: RequestOptions;
    readonly cache: OverlapCache;
    readonly moving: ReadonlySet<string>;
  },
): (heard: ReadonlyMap<string, RoomSurvey>, isOff?: boolean) => number {
  const { survey, busyShareRatio = 0.01 } = terms.options;
  const channelsWith = handsetsFollow(site, allIn(survey), terms.moving);
  const requiredCiDb = profile.requiredCiDb.value;
  const todayChannels = channelsWith(allIn(survey)).join(" ");
  const todayDb = new Map<Ear, number>();
  return (heard, isOff = false) => {
    const channels = channelsWith(allIn(heard));
    const air = receiverAir(isOff ? { ...site, audiences: [] } : site, profile, { survey: heard, channels });
    const isCrowdAsToday = !isOff && channels.join(" ") === todayChannels;
    const marginOf = (ear: Ear): number => {
      const { receiver, tuned, wantedDbm, sensitivityMarginDb, fadeDb } = ear;
      const isToday = isCrowdAsToday && heard.get(receiver.room) === survey.get(receiver.room);
      const known = isToday ? todayDb.get(ear) : undefined;
      if (known !== undefined) return known;
      const { emitters, sweeps } = air(receiver);
      const scored = { wantedDbm, requiredCiDb, busyShareRatio };
      const marginDb = channelMarginDb(emitters, tuned, scored, terms.cache, sweeps);
      const workingDb = Math.min(sensitivityMarginDb, marginDb) - fadeDb;
      if (isToday) todayDb.set(ear, workingDb);
      return workingDb;
    };
    return ears.reduce((leastDb, ear) => Math.min(leastDb, marginOf(ear)), Infinity);
  };
}

function reasonOf(isHopping: boolean, ears: readonly Ear[]): string | null {
  if (isHopping) return "it hops: its ranges are chosen around the radios as they are";
  if (ears.length === 0) return "it has no receiver";
  return ears.some(({ wantedDbm }) => wantedDbm === -Infinity)
    ? "no wanted signal arrives at its weakest receiver"
    : null;
}

function allIn(survey: ReadonlyMap<string, RoomSurvey>): Emitter[] {
  return [...survey.values()].flatMap(({ emitters }) => emitters);
}

function elsewhere(
  survey: ReadonlyMap<string, RoomSurvey>,
  move: (emitters: readonly Emitter[]) => readonly Emitter[],
): ReadonlyMap<string, RoomSurvey> {
  return new Map(
    [...survey].map(([name, room]) => {
      const emitters = move(room.emitters);
      // A room in which nothing moved stays what it was.
      const isSame =
        emitters.length === room.emitters.length &&
        emitters.every((one, index) => one === room.emitters[index]);
      return [name, isSame ? room : { ...room, emitters }];
    }),
  );
}
