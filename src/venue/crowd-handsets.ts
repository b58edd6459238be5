import { transmitShapes, wifiChannelCentreMhz } from "../band/index.js";
import type { Emitter } from "../band/index.js";
import { ArgumentError } from "../issues/index.js";
import { pathLossDb } from "../propagation/index.js";
import { HEADS_ABOVE_HANDSETS_M, ROW_M } from "./reference-crowd.js";
import type { LossTables } from "./loss-tables.js";
import { quickObstaclesDb } from "./quick-obstacles.js";
import { seatCells } from "./seat-cells.js";
import type { SeatCell } from "./seat-cells.js";
import { crowdLossDb } from "./venue-link.js";
import type { VenueReceiver } from "./venue-system.js";
import type { Place } from "./venue-room.js";
import { pathModelIn } from "./venue-site.js";
import type { VenueSite } from "./venue-site.js";
import type { Venue } from "./venue.js";

/**
 * The nearest handsets of a room are told apart by the time they are on the air together, on one channel: up to
 * 0.25 %, 1 % and 4 % of it, then the rest. A busy share of 1 % falls between two of these.
 */
const TOLD_APART_RATIOS = [0.0025, 0.01, 0.04, Infinity];
/** Middle of the band: the path loss of a handset is taken there for all channels. */
const BAND_MIDDLE_MHZ = 2442;

/** What people's handsets put into a place, for any receiver there. */
export type HandsetsAt = (receiver: Pick<VenueReceiver, "at" | "room">) => Emitter[];

/**
 * The handsets that the site's crowd carries, as emitters at a receiver: people × carried share, spread evenly
 * over the seats and over the Wi-Fi channels in use, each a member of its channel's contention group. Of each
 * cell of three by three seats the nearest counts; its walls, floors and the audience on its path (beyond its
 * own row) are looked at from there. Those of a room are merged upwards into four levels at most, each that of
 * its nearest handset, into one where the loudest stays below −100 dBm: never too quiet.
 * @param channels Wi-Fi channels in use (see `wifiChannelsInUse`)
 * @throws {ArgumentError} for a channel that is none of 2.4 GHz, or none at all
 * @see {@link venueSite}
 */
export function crowdHandsets(site: VenueSite, channels: readonly number[]): HandsetsAt {
  const centres = channels.map((channel) => ({ channel, centreMhz: requiredCentreMhz(channel) }));
  if (centres.length === 0) throw new ArgumentError("channels", "at least one Wi-Fi channel", "none");
  const known: KnownHandsets = KNOWN.get(site) ?? { levelsAt: levelsOf(site), byChannels: new Map() };
  KNOWN.set(site, known);
  const { carriedRatio, onAirRatio } = site.venue.crowd;
  const airtimeRatio = (carriedRatio * onAirRatio) / centres.length; // a head, on one channel
  const key = channels.join(" ");
  const handsetsAt =
    known.byChannels.get(key) ??
    remembered((receiver) =>
      known.levelsAt(receiver).flatMap((own) =>
        merged(own, airtimeRatio).flatMap((level, index) =>
          centres.map(({ channel, centreMhz }) => ({
            id: `handsets in ${own.room}, Wi-Fi ch ${channel}, part ${index + 1}`,
            centreMhz,
            shape: transmitShapes.ht20,
            levelDbm: level.levelDbm,
            airtimeRatio: Math.min(1, level.peopleCount * airtimeRatio),
            airtimeAssumed: true,
            contentionChannel: channel,
          })),
        ),
      ),
    );
  known.byChannels.set(key, handsetsAt);
  return handsetsAt;
}

interface KnownHandsets {
  readonly levelsAt: AtPlace<readonly RoomHandsets[]>;
  readonly byChannels: Map<string, HandsetsAt>;
}

/** What a site's handsets put into a place is worked out once, whoever asks and on whatever channels they are. */
const KNOWN = new WeakMap<VenueSite, KnownHandsets>();

/** How loud handsets are somewhere is a matter of where people are, not of how many. */
function levelsOf(site: VenueSite): AtPlace<readonly RoomHandsets[]> {
  const { venue, audiences, pathModel, building } = site;
  const ofVenue = KNOWN_LEVELS.get(venue) ?? new Map<string, AtPlace<readonly RoomShares[]>>();
  KNOWN_LEVELS.set(venue, ofVenue);
  const key = JSON.stringify([audiences.map(({ room }) => room), pathModel, building]);
  const sharesAt = ofVenue.get(key) ?? handsetShares(site);
  ofVenue.set(key, sharesAt);
  const peopleCounts = audiences.map(({ peopleCount }) => peopleCount);
  return (receiver) =>
    sharesAt(receiver).map((room, index) => ({ ...room, peopleCount: peopleCounts[index]! }));
}

const KNOWN_LEVELS = new WeakMap<Venue, Map<string, AtPlace<readonly RoomShares[]>>>();

type AtPlace<T> = (receiver: Pick<VenueReceiver, "at" | "room">) => T;

function remembered<T>(find: AtPlace<T>): AtPlace<T> {
  const known = new Map<string, T>();
  return (receiver) => {
    const key = `${receiver.at.x} ${receiver.at.y} ${receiver.at.z} ${receiver.room}`;
    if (!known.has(key)) known.set(key, find(receiver));
    return known.get(key)!;
  };
}

/** A room's handsets at a receiver, the loudest first: how loud, and which share of its people. */
interface RoomShares {
  readonly room: string;
  readonly levelDbm: Float64Array;
  readonly peopleRatio: Float64Array;
}

interface RoomHandsets extends RoomShares {
  readonly peopleCount: number;
}

function handsetShares(site: VenueSite): AtPlace<readonly RoomShares[]> {
  const blocks = site.audiences.map((audience) => ({
    room: audience.room,
    cells: seatCells(audience, audience.topM - HEADS_ABOVE_HANDSETS_M),
  }));
  const tables = site.tables();
  return remembered((receiver) =>
    blocks.map(({ room, cells }) => ({ room, ...cellLevels(site, tables, cells, receiver) })),
  );
}

function requiredCentreMhz(channel: number): number {
  const centreMhz = wifiChannelCentreMhz(channel);
  if (centreMhz === null) throw new ArgumentError("channels", "Wi-Fi channels 1 to 14", channel);
  return centreMhz;
}

/** People whose handsets arrive at one level, at an isotropic antenna. */
interface HandsetLevel {
  readonly levelDbm: number;
  readonly peopleCount: number;
}

function cellLevels(
  site: VenueSite,
  tables: LossTables,
  cells: readonly SeatCell[],
  receiver: Pick<VenueReceiver, "at" | "room">,
): Omit<RoomShares, "room"> {
  const model = pathModelIn(site, receiver.room);
  const { handsetEirpDbm } = site.venue.crowd;
  const levelsDbm = Float64Array.from(cells, ({ seats }) => {
    const seat = nearestSeat(seats, receiver.at);
    const distanceM = Math.max(LEAST_DISTANCE_M, distanceBetweenM(seat, receiver.at));
    const lossDb =
      pathLossDb(model, { distanceM, frequencyMhz: BAND_MIDDLE_MHZ }) +
      quickObstaclesDb(site, tables, seat, receiver.at) +
      crowdLossDb(site, seat, receiver.at, ROW_M);
    return handsetEirpDbm - lossDb;
  });
  const order = Uint16Array.from(cells, (_, index) => index).sort((a, b) => levelsDbm[b]! - levelsDbm[a]!);
  return {
    levelDbm: Float64Array.from(order, (index) => levelsDbm[index]!),
    peopleRatio: Float64Array.from(order, (index) => cells[index]!.peopleRatio),
  };
}

/** Merged upwards; those that stay below the faintest level that counts are one. */
function merged(
  { levelDbm, peopleRatio, peopleCount }: RoomHandsets,
  airtimeRatio: number,
): readonly HandsetLevel[] {
  const parts: { levelDbm: number; peopleCount: number }[] = [];
  const isFaint = levelDbm[0]! < FAINT_DBM;
  let sumCount = 0;
  let part = -1;
  for (const [index, ratio] of peopleRatio.entries()) {
    const people = ratio * peopleCount;
    sumCount += people;
    const next = isFaint ? 0 : TOLD_APART_RATIOS.findIndex((limit) => sumCount * airtimeRatio <= limit);
    if (parts.length > 0 && next === part) parts[parts.length - 1]!.peopleCount += people;
    else parts.push({ levelDbm: levelDbm[index]!, peopleCount: people });
    part = next;
  }
  return parts;
}

/**
 * A room whose loudest handset stays below this is told as one level: of 20 MHz a 1 MHz receiver takes 13 dB less,
 * which is 9 dB below its noise (kTB and a noise figure of 10 dB), so that being too loud can't cost half a decibel.
 */
const FAINT_DBM = -100;

/** Two antennas are taken as no nearer to each other than this, m. */
const LEAST_DISTANCE_M = 0.1;

function nearestSeat(seats: readonly Place[], at: Place): Place {
  let nearest = seats[0]!;
  let nearestM = Infinity;
  for (const seat of seats) {
    const distanceM = distanceBetweenM(seat, at);
    if (distanceM >= nearestM) continue;
    nearest = seat;
    nearestM = distanceM;
  }
  return nearest;
}

function distanceBetweenM(one: Place, other: Place): number {
  return Math.sqrt((one.x - other.x) ** 2 + (one.y - other.y) ** 2 + (one.z - other.z) ** 2);
}
