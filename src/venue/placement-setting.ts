import { median } from "d3-array";
import { ArgumentError, throwIfAborted } from "../issues/index.js";
import { linkBudget } from "../propagation/index.js";
import type { LinkBudget } from "../propagation/index.js";
import type { MarginSearchTerms } from "./margin-search.js";
import type { ReceiverBudgetOptions } from "./receiver-budgets.js";
import { receiverScene } from "./receiver-scene.js";
import { fadeAllowances } from "./sight.js";
import { usableChannels } from "./usable-channels.js";
import { channelsInBand } from "./channels-in-band.js";
import { enclosureLossDb, venueLink } from "./venue-link.js";
import type { TransmitterPlace, VenueReceiver, VenueSystem } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** A system to be placed: its channel, its receivers and the interference at each of them. */
export interface PlacementSetting extends MarginSearchTerms {
  /** Null for a hopping radio. */
  readonly channel: number | null;
}

/**
 * What a placement rests on. The interference doesn't depend on where the transmitter stands, so that the
 * channel can be settled first: the one asked for, the system's own, or the one on which the loudest
 * interference at any receiver is least, inside the region's band. A hopping radio counts each receiver's median over its frequencies.
 * @throws {ArgumentError} for a system without receivers or usable channels, and as `receiverScene`
 * @see {@link venueSite}
 */
export function placementSetting(
  site: VenueSite,
  system: VenueSystem,
  options: ReceiverBudgetOptions,
): PlacementSetting {
  const { profile } = system;
  const receivers = site.venue.receivers.filter((receiver) => receiver.system === system.name);
  if (receivers.length === 0) throw new ArgumentError("system", "a system with receivers", system.name);
  const fixed = profile.hopping === null ? (options.channel ?? system.channel) : null;
  const usable =
    fixed === null ? channelsInBand(site, system) : usableChannels({ profile, allowedChannels: [fixed] });
  if (usable.length === 0)
    throw new ArgumentError("system", "a system with a channel inside the band", system.name);
  const score = receiverScene(site, profile, options);
  const heard = usable.map(({ channel, centreMhz }) => {
    throwIfAborted(options.signal);
    return {
      channel,
      frequencyMhz: centreMhz,
      interferenceDbm: receivers.map(
        (receiver) =>
          score(receiver, { centreMhz, wantedDbm: 0, enclosureLossDb: enclosureLossDb(profile, receiver) })
            .interferenceDbm,
      ),
    };
  });
  const common = { profile, receivers, allowances: fadeAllowances(options) };
  if (profile.hopping === null) return { ...common, ...quietest(heard) };
  return {
    ...common,
    channel: null,
    frequencyMhz: median(heard, ({ frequencyMhz }) => frequencyMhz)!,
    interferenceDbm: receivers.map((_, index) => median(heard, (one) => one.interferenceDbm[index]!)!),
  };
}

interface HeardChannel {
  readonly channel: number;
  readonly frequencyMhz: number;
  readonly interferenceDbm: readonly number[];
}

function quietest(heard: readonly HeardChannel[]): HeardChannel {
  const loudestDbm = ({ interferenceDbm }: HeardChannel): number => Math.max(...interferenceDbm);
  return heard.reduce((best, one) => (loudestDbm(one) < loudestDbm(best) - 1e-9 ? one : best));
}

/** A budget from a place, and whether the transmitter is seen from the receiver. */
export interface PlacedBudget extends LinkBudget {
  readonly inSight: boolean;
}

/** @returns the whole budget of one receiver from a place: walls exactly at their incidence */
export function placedBudget(
  site: VenueSite,
  setting: PlacementSetting,
  transmitter: TransmitterPlace,
  receiverIndex: number,
): PlacedBudget {
  const { profile, frequencyMhz, allowances } = setting;
  const receiver: VenueReceiver = setting.receivers[receiverIndex]!;
  const link = venueLink(site, { profile, transmitter, receiver, frequencyMhz });
  const budget = linkBudget({
    ...link.lines,
    sensitivityDbm: profile.sensitivityDbm.value,
    interferenceDbm: setting.interferenceDbm[receiverIndex]!,
    requiredCiDb: profile.requiredCiDb.value,
    fadeAllowanceDb: link.inSight ? allowances.inSightDb : allowances.hiddenDb,
  });
  return { ...budget, inSight: link.inSight };
}
