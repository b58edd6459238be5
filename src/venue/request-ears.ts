import { receivedDbm } from "../propagation/index.js";
import type { TunedReceiver } from "../scorer/index.js";
import { tunedTo } from "./receiver-scene.js";
import type { RequestingSystem } from "./request-options.js";
import type { FadeAllowances } from "./sight.js";
import { usableChannels } from "./usable-channels.js";
import { venueLink } from "./venue-link.js";
import type { VenueReceiver } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** One receiver, tuned. */
export interface Ear {
  readonly receiver: VenueReceiver;
  readonly tuned: TunedReceiver;
  readonly wantedDbm: number;
  readonly sensitivityMarginDb: number;
  readonly fadeDb: number;
  /** The interference that it bears at the edge of the share of positions, dBm. */
  readonly edgeDbm: number;
}

/**
 * A system's receivers on its channel, their links laid out.
 * @param one of a radio that stays on one channel
 */
export function earsOf(
  site: VenueSite,
  { system, transmitter, channel }: RequestingSystem,
  allowances: FadeAllowances,
): Ear[] {
  const { profile } = system;
  const { centreMhz } = usableChannels({ profile, allowedChannels: [channel!] })[0]!;
  return site.venue.receivers
    .filter((receiver) => receiver.system === system.name)
    .map((receiver) => {
      const link = venueLink(site, { profile, transmitter, receiver, frequencyMhz: centreMhz });
      const wantedDbm = receivedDbm(link.lines);
      const fadeDb = link.inSight ? allowances.inSightDb : allowances.hiddenDb;
      return {
        receiver,
        tuned: tunedTo(profile, receiver, centreMhz, link.lines.enclosureLossDb),
        wantedDbm,
        sensitivityMarginDb: wantedDbm - profile.sensitivityDbm.value,
        fadeDb,
        edgeDbm: wantedDbm - profile.requiredCiDb.value - fadeDb,
      };
    });
}
