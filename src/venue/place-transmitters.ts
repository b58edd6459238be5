import type { Antenna } from "../propagation/index.js";
import { throwIfAborted } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { brokenKeepOuts, LEAST_HEIGHT_M, TRANSMITTERS_APART_M } from "./antenna-keep-outs.js";
import type { KeepOutCode, KeepOuts } from "./antenna-keep-outs.js";
import { bestPair } from "./best-pair.js";
import { bestPlaces } from "./best-places.js";
import { marginSearch } from "./margin-search.js";
import type { MarginSearch } from "./margin-search.js";
import { gridPlaces } from "./place-grid.js";
import { placedBudget, placementSetting } from "./placement-setting.js";
import type { PlacementSetting } from "./placement-setting.js";
import type { ReceiverBudgetOptions } from "./receiver-budgets.js";
import type { Place } from "./venue-room.js";
import type { TransmitterPlace, VenueReceiver, VenueSystem } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";
import { watchedSearch } from "./watched-search.js";

/** Among which places, by which rules, and how many to name. */
export interface PlaceTransmittersOptions extends ReceiverBudgetOptions, KeepOuts {
  /** Places to choose among; the system's candidates unless given. None: a grid over its rooms' floors. */
  readonly places?: readonly TransmitterPlace[] | undefined;
  /** Of the grid, m; 0.5 unless given. */
  readonly stepM?: number | undefined;
  /** Of a grid's antenna above the floor, m; the least height unless given. */
  readonly heightM?: number | undefined;
  /** Of a grid's transmitter; the system's transmitter's, else an upright dipole, unless given. */
  readonly antenna?: Antenna | null | undefined;
  /** How many places to name; 3 unless given. */
  readonly topCount?: number | undefined;
  /** How far they are from each other at least, m; 2 on a grid, else 0, unless given. */
  readonly apartM?: number | undefined;
  /** What `placementSetting` gave for the same site, system and options; worked out unless given. */
  readonly setting?: PlacementSetting | undefined;
}

/** Margin of one receiver from a place. */
export interface PlacedMargin {
  readonly receiver: string;
  readonly workingMarginDb: number;
  /** Whether it sees the transmitter there: as the venue file says, else by what stands between. */
  readonly inSight: boolean;
}

/** A place and what it does for the receivers. */
export interface RankedPlace {
  readonly place: TransmitterPlace;
  /** The smallest of `margins`, dB. */
  readonly leastMarginDb: number;
  readonly weakest: string;
  /** In the venue's order of receivers. */
  readonly margins: readonly PlacedMargin[];
  /** Beside the best place's smallest margin: what this one gives up, dB, ≥ 0; null where either is without level. */
  readonly givesUpDb: number | null;
  /** Rules that a named candidate breaks; empty on a grid, whose points keep them all. */
  readonly breaks: readonly KeepOutCode[];
}

/** Two transmitters that share a system's receivers: the second is a second system on its own channel. */
export interface PlacedPair {
  readonly places: readonly [TransmitterPlace, TransmitterPlace];
  /** Receivers of each. */
  readonly receivers: readonly [readonly string[], readonly string[]];
  readonly leastMarginDb: number;
  readonly margins: readonly PlacedMargin[];
}

/** The best places for one system's transmitter. */
export interface Placement {
  /** The channel that it holds for; null for a hopping radio. */
  readonly channel: number | null;
  readonly frequencyMhz: number;
  /** Best first. */
  readonly ranked: readonly RankedPlace[];
  /** Places looked at, and places left out by the keep-outs. */
  readonly triedCount: number;
  readonly keptOutCount: number;
  /** Where no single place serves every receiver; null where one does, or no pair is better. */
  readonly pair: PlacedPair | null;
}

/**
 * The best places for a system's transmitter: among candidates or over a grid inside its rooms, by the
 * smallest working margin over its receivers. Points of a grid keep the antenna practice; candidates that
 * break it are told. Places within 0.5 m of a receiver are left out.
 * @throws {ArgumentError} as `placementSetting`, `gridPlaces` and `venueLink`
 * @throws the signal's reason when it is aborted
 * @see {@link venueSite}
 */
export function placeTransmitters(
  site: VenueSite,
  system: VenueSystem,
  options: PlaceTransmittersOptions,
): Placement {
  const { setting = placementSetting(site, system, options) } = options;
  const { places, keptOutCount, isGrid } = placesToTry(site, system, options, setting.receivers);
  const search = watchedSearch(marginSearch(site, setting), options);
  const best = bestPlaces({
    places,
    receiverCount: setting.receivers.length,
    search,
    exactDb: (index) => {
      throwIfAborted(options.signal);
      return leastOf(marginsFrom(site, setting, places[index]!)).workingMarginDb;
    },
    topCount: options.topCount ?? 3,
    apartM: options.apartM ?? (isGrid ? TRANSMITTERS_APART_M : 0),
  });
  const ranked = best.map((index) => rankedPlace(site, setting, places[index]!, options));
  const bestDb = ranked[0]?.leastMarginDb ?? -Infinity;
  return {
    channel: setting.channel,
    frequencyMhz: setting.frequencyMhz,
    ranked: ranked.map((one) => ({ ...one, givesUpDb: givenUpDb(bestDb, one.leastMarginDb) })),
    triedCount: places.length,
    keptOutCount,
    pair: bestDb >= -SLACK ? null : pairOf(site, setting, places, search, bestDb),
  };
}

/** Nearer to a receiver than this no antenna is put, m (assumed; four wavelengths). */
const RECEIVER_APART_M = 0.5;

interface PlacesToTry {
  readonly places: readonly TransmitterPlace[];
  readonly keptOutCount: number;
  readonly isGrid: boolean;
}

function placesToTry(
  site: VenueSite,
  system: VenueSystem,
  options: PlaceTransmittersOptions,
  receivers: readonly VenueReceiver[],
): PlacesToTry {
  const named = options.places ?? system.candidates;
  const isGrid = named.length === 0;
  const { heightM = options.leastHeightM ?? LEAST_HEIGHT_M, stepM = 0.5 } = options;
  const { antenna = system.transmitter?.antenna ?? { kind: "dipole" } } = options;
  const all = isGrid ? gridPlaces(site, { rooms: system.rooms, stepM, heightM, antenna }) : named;
  // A room too low for the height asked for still gets its grid.
  const rules = isGrid ? { ...options, leastHeightM: 0 } : options;
  const places = all.filter(
    (place) =>
      receivers.every(({ at }) => distanceM(place.at, at) >= RECEIVER_APART_M) &&
      (!isGrid || brokenKeepOuts(place, rules).length === 0),
  );
  return { places, keptOutCount: all.length - places.length, isGrid };
}

function distanceM(one: Place, other: Place): number {
  return Math.hypot(one.x - other.x, one.y - other.y, one.z - other.z);
}

function marginsFrom(site: VenueSite, setting: PlacementSetting, place: TransmitterPlace): PlacedMargin[] {
  return setting.receivers.map(({ name }, index) => {
    const { workingMarginDb, inSight } = placedBudget(site, setting, place, index);
    return { receiver: name, workingMarginDb, inSight };
  });
}

function leastOf(margins: readonly PlacedMargin[]): PlacedMargin {
  return margins.reduce((least, one) => (one.workingMarginDb < least.workingMarginDb ? one : least));
}

function rankedPlace(
  site: VenueSite,
  setting: PlacementSetting,
  place: TransmitterPlace,
  keepOuts: KeepOuts,
): Omit<RankedPlace, "givesUpDb"> {
  const margins = marginsFrom(site, setting, place);
  const { receiver, workingMarginDb } = leastOf(margins);
  const breaks = brokenKeepOuts(place, keepOuts);
  return { place, leastMarginDb: workingMarginDb, weakest: receiver, margins, breaks };
}

function givenUpDb(bestDb: number, leastMarginDb: number): number | null {
  const dB = bestDb - leastMarginDb;
  return Number.isFinite(dB) ? Math.max(0, dB) : null;
}

function pairOf(
  site: VenueSite,
  setting: PlacementSetting,
  places: readonly TransmitterPlace[],
  search: MarginSearch,
  aloneDb: number,
): PlacedPair | null {
  const receiverCount = setting.receivers.length;
  const pair = bestPair({ places, receiverCount, search, apartM: TRANSMITTERS_APART_M });
  if (pair === null) return null;
  const [one, other] = [places[pair.oneIndex]!, places[pair.otherIndex]!];
  const fromOne = marginsFrom(site, setting, one);
  const fromOther = marginsFrom(site, setting, other);
  const isFirst = fromOne.map((margin, index) => margin.workingMarginDb >= fromOther[index]!.workingMarginDb);
  const margins = fromOne.map((margin, index) => (isFirst[index] ? margin : fromOther[index]!));
  const leastMarginDb = leastOf(margins).workingMarginDb;
  if (!(leastMarginDb > aloneDb + SLACK)) return null;
  const namesOf = (first: boolean): string[] =>
    margins.filter((_, index) => isFirst[index] === first).map(({ receiver }) => receiver);
  return { places: [one, other], receivers: [namesOf(true), namesOf(false)], leastMarginDb, margins };
}
