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
 * its nearest handset: never too quiet.
 * @param channels Wi-Fi channels in use (see `wifiChannelsInUse`)
 * @throws {ArgumentError} for a channel that is none of 2.4 GHz, or none at all
 * @see {@link venueSite}
 */
export function crowdHandsets(site: VenueSite, channels: readonly number[]): HandsetsAt {
  const centres = channels.map((channel) => ({ channel, centreMhz: requiredCentreMhz(channel) }));
  if (centres.length === 0) throw new ArgumentError("channels", "at least one Wi-Fi channel", "none");
  const blocks = site.audiences.map((audience) => ({
    room: audience.room,
    cells: seatCells(audience, audience.topM - HEADS_ABOVE_HANDSETS_M),
  }));
  const tables = site.tables();
  const { carriedRatio, onAirRatio } = site.venue.crowd;
  const airtimeRatio = (carriedRatio * onAirRatio) / centres.length; // a head, on one channel
  return (receiver) =>
    blocks.flatMap(({ room, cells }) =>
      merged(cellLevels(site, tables, cells, receiver), airtimeRatio).flatMap((level, index) =>
        centres.map(({ channel, centreMhz }) => ({
          id: `handsets in ${room}, Wi-Fi ch ${channel}, part ${index + 1}`,
          centreMhz,
          shape: transmitShapes.ht20,
          levelDbm: level.levelDbm,
          airtimeRatio: Math.min(1, level.peopleCount * airtimeRatio),
          airtimeAssumed: true,
          contentionChannel: channel,
        })),
      ),
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
): HandsetLevel[] {
  const model = pathModelIn(site, receiver.room);
  return cells.map(({ seats, peopleCount }) => {
    const seat = nearestSeat(seats, receiver.at);
    const distanceM = Math.max(LEAST_DISTANCE_M, distanceBetweenM(seat, receiver.at));
    const lossDb =
      pathLossDb(model, { distanceM, frequencyMhz: BAND_MIDDLE_MHZ }) +
      quickObstaclesDb(site, tables, seat, receiver.at) +
      crowdLossDb(site, seat, receiver.at, ROW_M);
    return { levelDbm: site.venue.crowd.handsetEirpDbm - lossDb, peopleCount };
  });
}

/** Loudest first, merged upwards. */
function merged(levels: HandsetLevel[], airtimeRatio: number): HandsetLevel[] {
  levels.sort((a, b) => b.levelDbm - a.levelDbm);
  const parts: HandsetLevel[] = [];
  let peopleCount = 0;
  let part = -1;
  for (const level of levels) {
    peopleCount += level.peopleCount;
    const next = TOLD_APART_RATIOS.findIndex((ratio) => peopleCount * airtimeRatio <= ratio);
    const last = parts[parts.length - 1];
    if (last !== undefined && next === part)
      parts[parts.length - 1] = { ...last, peopleCount: last.peopleCount + level.peopleCount };
    else parts.push(level);
    part = next;
  }
  return parts;
}

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
