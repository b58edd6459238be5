import { antennaPeakGainDbi, gainTowards, pathLossDb, polarisationLossDb } from "../propagation/index.js";
import type { Antenna, LinkEnd } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";
import { HIDDEN_FROM_LOSS_DB } from "./sight.js";
import type { FadeAllowances } from "./sight.js";
import { quickObstaclesDb } from "./quick-obstacles.js";
import { pathObstacles } from "./path-obstacles.js";
import { crowdLossDb, enclosureLossDb, receiverEnd, transmitterEnd } from "./venue-link.js";
import type { TransmitterPlace, VenueReceiver } from "./venue-system.js";
import type { Place } from "./venue-room.js";
import { pathModelIn } from "./venue-site.js";
import type { VenueSite } from "./venue-site.js";

/** A system to find a place for: all but the place. */
export interface MarginSearchTerms {
  readonly profile: RadioProfile;
  readonly frequencyMhz: number;
  readonly receivers: readonly VenueReceiver[];
  /** Interference plus noise at each receiver, dBm. */
  readonly interferenceDbm: readonly number[];
  readonly allowances: FadeAllowances;
}

/** What a search needs to know of a transmitter's place. */
export type SearchPlace = Pick<TransmitterPlace, "at" | "antenna" | "inSight">;

/** The working margins of a system's receivers from any place of the transmitter, quick and nearly right. */
export interface MarginSearch {
  /** Of one receiver, dB. */
  readonly marginDb: (receiverIndex: number, from: SearchPlace) => number;
  /** No wall, an antenna at its peak, in sight: never below `marginDb`. */
  readonly boundDb: (receiverIndex: number, from: SearchPlace) => number;
  /** How far a margin may be off, dB. */
  readonly errorDb: number;
}

/**
 * Works out once what doesn't depend on the transmitter's place. Walls are looked up by incidence in tables;
 * all else is as in `receiverChannel`.
 * @throws {ArgumentError} as `gainTowards` and `pathLossDb`; `marginDb` as `polarisationLossDb`, both at one place
 */
export function marginSearch(site: VenueSite, terms: MarginSearchTerms): MarginSearch {
  const tables = site.tables();
  const hidingDb = terms.allowances.hiddenDb - terms.allowances.inSightDb;
  const gains = new Map<Antenna | null, QuickGain>();
  const txGain = ({ antenna }: SearchPlace): QuickGain => {
    const known = gains.get(antenna) ?? gainOf(transmitterEnd(terms.profile, { antenna }));
    gains.set(antenna, known);
    return known;
  };
  const rows = terms.receivers.map((receiver, index) => receiverRow(site, terms, receiver, index));
  const errorDb = WALLS_ON_A_PATH * tables.errorDb + 1e-9;
  return {
    errorDb,
    boundDb: (index, from) => {
      const row = rows[index]!;
      return inTheOpenDb(row, from.at) + txGain(from).peakDbi + row.rxGain.peakDbi;
    },
    marginDb: (index, { at, antenna, inSight }) => {
      const row = rows[index]!;
      const towards = { x: row.at.x - at.x, y: row.at.y - at.y, z: row.at.z - at.z };
      const obstacleDb = quickObstaclesDb(site, tables, at, row.at);
      const hidden = inSight === null ? isHidden(site, at, row.at, obstacleDb, errorDb) : !inSight;
      return (
        inTheOpenDb(row, at) +
        txGain({ at, antenna, inSight }).towards(towards) +
        row.rxGain.towards({ x: -towards.x, y: -towards.y, z: -towards.z }) -
        mismatchDb(antenna, row.antenna, towards) -
        obstacleDb -
        (hidden ? hidingDb : 0) -
        crowdLossDb(site, at, row.at)
      );
    },
  };
}

/** Working margin in the open and in sight, antennas at 0 dBi, dB. */
function inTheOpenDb(row: ReceiverRow, at: Place): number {
  const dx = row.at.x - at.x;
  const dy = row.at.y - at.y;
  const dz = row.at.z - at.z;
  return row.atOneMetreDb - row.slopeDb * Math.log10(dx * dx + dy * dy + dz * dz);
}

/** Errors of so many looked-up walls may add up on a path (assumed; further ones hide everything anyway). */
const WALLS_ON_A_PATH = 8;

/** Whether obstacles hide the transmitter: a hair's breadth from it, they are worked out exactly. */
function isHidden(site: VenueSite, from: Place, to: Place, obstacleDb: number, doubtDb: number): boolean {
  if (Math.abs(obstacleDb - HIDDEN_FROM_LOSS_DB) > doubtDb) return obstacleDb >= HIDDEN_FROM_LOSS_DB;
  const { wallLossDb, floorLossDb } = pathObstacles(site, from, to);
  return wallLossDb + floorLossDb >= HIDDEN_FROM_LOSS_DB;
}

interface QuickGain {
  readonly towards: (direction: Place) => number;
  readonly peakDbi: number;
}

function gainOf({ antenna, gainDbi }: LinkEnd): QuickGain {
  if (antenna === null) return { towards: () => gainDbi, peakDbi: gainDbi };
  return { towards: gainTowards(antenna), peakDbi: antennaPeakGainDbi(antenna) };
}

function mismatchDb(transmitter: Antenna | null, receiver: Antenna | null, direction: Place): number {
  if (transmitter === null || receiver === null || (isVertical(transmitter) && isVertical(receiver)))
    return 0;
  return polarisationLossDb({ transmitter, receiver, direction });
}

/** Two vertical rods lie in one plane with the line of sight: nothing is lost. */
function isVertical({ kind, mounting = "upright", tiltDeg = 0 }: Antenna): boolean {
  return (kind === "dipole" || kind === "collinear") && mounting !== "sideways" && tiltDeg === 0;
}

interface ReceiverRow {
  readonly at: Place;
  readonly antenna: Antenna | null;
  readonly rxGain: QuickGain;
  /** Working margin at 1 m in the open and in sight, antennas at 0 dBi, dB. */
  readonly atOneMetreDb: number;
  /** What a tenfold square of the distance takes, dB: every path model is a straight line in log distance. */
  readonly slopeDb: number;
}

function receiverRow(
  site: VenueSite,
  terms: MarginSearchTerms,
  receiver: VenueReceiver,
  index: number,
): ReceiverRow {
  const { profile, frequencyMhz, allowances } = terms;
  const model = pathModelIn(site, receiver.room);
  const oneMetreDb = pathLossDb(model, { distanceM: 1, frequencyMhz });
  const neededDbm = Math.max(
    profile.sensitivityDbm.value,
    terms.interferenceDbm[index]! + profile.requiredCiDb.value,
  );
  return {
    at: receiver.at,
    antenna: receiver.antenna,
    rxGain: gainOf(receiverEnd(profile, receiver)),
    atOneMetreDb:
      profile.txPowerDbm.value -
      profile.txFeederLossDb.value -
      oneMetreDb -
      enclosureLossDb(profile, receiver) -
      neededDbm -
      allowances.inSightDb,
    slopeDb: (pathLossDb(model, { distanceM: 10, frequencyMhz }) - oneMetreDb) / 2,
  };
}
