import { enclosureLosses } from "../radio/index.js";
import type { RadioProfile } from "../radio/index.js";
import { pathLoss, placedLink } from "../propagation/index.js";
import type { Caveat, LinkEnd, ReceivedLines } from "../propagation/index.js";
import { isThroughAudience } from "./audience.js";
import { pathObstacles } from "./path-obstacles.js";
import type { PathObstacles } from "./path-obstacles.js";
import { isInSight } from "./sight.js";
import type { TransmitterPlace, VenueReceiver } from "./venue-system.js";
import type { Place } from "./venue-room.js";
import { pathModelIn } from "./venue-site.js";
import type { VenueSite } from "./venue-site.js";

/** One transmitter and one receiver of a venue. */
export interface VenueLinkQuery {
  readonly profile: RadioProfile;
  readonly transmitter: TransmitterPlace;
  readonly receiver: VenueReceiver;
  /** Centre of the radio channel, MHz. */
  readonly frequencyMhz: number;
}

/** What two places of a venue bring to a link. */
export interface VenueLink {
  /** The lines of the budget up to the received level; floors count with the path loss. */
  readonly lines: ReceivedLines;
  readonly distanceM: number;
  readonly obstacles: PathObstacles;
  readonly inSight: boolean;
  /** The receiver lies within a null of the transmitter's antenna. */
  readonly txNull: boolean;
  /** The transmitter lies within a null of the receiver's antenna. */
  readonly rxNull: boolean;
  readonly caveats: readonly Caveat[];
}

/**
 * The link from a transmitter to a receiver through the venue: path loss by the model of the receiver's room,
 * floors, walls at their incidence, both antennas towards each other, the canopy, the audience where the path
 * runs through it.
 * @throws {ArgumentError} as `placedLink`, `pathLoss` and `wallLoss`; both at one place
 * @see {@link venueSite}
 */
export function venueLink(site: VenueSite, query: VenueLinkQuery): VenueLink {
  return venueLinkByFrequency(site, query)(query.frequencyMhz);
}

/**
 * The same for many frequencies: of the link only the path loss moves with them.
 * @throws {ArgumentError} as `placedLink` and `wallLoss`; the function returned, as `pathLoss`
 */
export function venueLinkByFrequency(
  site: VenueSite,
  query: Omit<VenueLinkQuery, "frequencyMhz">,
): (frequencyMhz: number) => VenueLink {
  const { profile, transmitter, receiver } = query;
  const obstacles = pathObstacles(site, transmitter.at, receiver.at);
  const link = placedLink({
    transmitter: transmitterEnd(profile, transmitter),
    receiver: receiverEnd(profile, receiver),
    transmitterAtM: transmitter.at,
    receiverAtM: receiver.at,
  });
  const { distanceM, txGainDbi, rxGainDbi, polarisationLossDb, txNull, rxNull } = link;
  const model = pathModelIn(site, receiver.room);
  const inSight = isInSight(transmitter.inSight, obstacles.wallLossDb + obstacles.floorLossDb);
  const canopyDb = enclosureLossDb(profile, receiver);
  const crowdDb = crowdLossDb(site, transmitter.at, receiver.at);
  return (frequencyMhz) => {
    const path = pathLoss(model, { distanceM, frequencyMhz });
    return {
      lines: {
        txPowerDbm: profile.txPowerDbm.value,
        txFeederLossDb: profile.txFeederLossDb.value,
        txGainDbi,
        pathLossDb: path.lossDb + obstacles.floorLossDb,
        wallLossDb: obstacles.wallLossDb,
        enclosureLossDb: canopyDb,
        crowdLossDb: crowdDb,
        polarisationLossDb,
        rxGainDbi,
      },
      ...{ distanceM, obstacles, inSight, txNull, rxNull },
      caveats: path.caveats,
    };
  };
}

/** @returns the transmitter as an end of a link: its antenna, or the profile's gain all round */
export function transmitterEnd(
  profile: RadioProfile,
  { antenna }: Pick<TransmitterPlace, "antenna">,
): LinkEnd {
  return { antenna, gainDbi: profile.txGainDbi.value };
}

/** @returns the receiver as an end of a link: its antenna, or the profile's gain all round */
export function receiverEnd(profile: RadioProfile, { antenna }: Pick<VenueReceiver, "antenna">): LinkEnd {
  return { antenna, gainDbi: profile.rxGainDbi.value };
}

/** @returns the loss of the canopy round a receiver's antenna, dB: its own, or the profile's */
export function enclosureLossDb(
  profile: RadioProfile,
  { enclosure }: Pick<VenueReceiver, "enclosure">,
): number {
  return enclosure === null ? profile.enclosureLossDb.value : enclosureLosses[enclosure].value;
}

/**
 * The audience's loss on a path: once for each audience that the path runs through, however far.
 * @param fromM a stretch no longer than this doesn't count, m
 * @returns dB
 */
export function crowdLossDb(site: VenueSite, from: Place, to: Place, fromM = 0): number {
  let crossedCount = 0;
  for (const audience of site.audiences) if (isThroughAudience(audience, from, to, fromM)) crossedCount++;
  return crossedCount * site.venue.crowd.bodyLossDb;
}
