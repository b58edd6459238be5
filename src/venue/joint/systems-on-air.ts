import type { Emitter } from "../../band/index.js";
import { ratioToDb } from "../../units/index.js";
import type { VenueSite } from "../venue-site.js";
import type { TransmitterPlace, VenueReceiver, VenueSystem } from "../venue-system.js";
import { receiverGainDb, systemIntoReceiverDbm } from "./system-into-receiver.js";

/** A system as it is to run. */
export interface SystemOnAir {
  readonly system: VenueSystem;
  readonly transmitter: TransmitterPlace;
  /** Of its channel; null for a hopping radio. */
  readonly centreMhz: number | null;
}

/**
 * The other systems of a plan as emitters at a system's receivers, always on the air: at an isotropic antenna, as
 * `receiverAir` takes them. A hopping one is spread evenly over its hop frequencies.
 * @throws {ArgumentError} the function returned, as `venueLink`
 * @see {@link venueSite}
 */
export function systemsOnAir(
  site: VenueSite,
  own: SystemOnAir,
  systems: readonly SystemOnAir[],
): (receiver: VenueReceiver) => Emitter[] {
  const others = systems.filter(({ system }) => system.name !== own.system.name);
  return (receiver) =>
    others.flatMap((other) => {
      const { channels, emission } = other.system.profile;
      const centres =
        other.centreMhz === null ? channels.map(({ centreMhz }) => centreMhz) : [other.centreMhz];
      const tunedMhz =
        own.centreMhz ?? middleOf(own.system.profile.channels.map(({ centreMhz }) => centreMhz));
      const intoDbm = systemIntoReceiverDbm(site, other, own.system, receiver, tunedMhz);
      return centres.map((centreMhz) => ({
        id:
          centres.length === 1
            ? `system ${other.system.name}`
            : `system ${other.system.name}, ${centreMhz} MHz`,
        centreMhz,
        shape: emission.value,
        levelDbm: intoDbm - receiverGainDb(own.system, receiver) - ratioToDb(centres.length),
        airtimeRatio: 1,
        airtimeAssumed: true,
        contentionChannel: null,
      }));
    });
}

function middleOf(values: readonly number[]): number {
  return values[Math.floor((values.length - 1) / 2)]!;
}
