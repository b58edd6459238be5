import { receivedDbm } from "../../propagation/index.js";
import { peakGainDbi } from "../peak-gain.js";
import { enclosureLossDb, venueLink } from "../venue-link.js";
import type { VenueSite } from "../venue-site.js";
import type { TransmitterPlace, VenueReceiver, VenueSystem } from "../venue-system.js";

/** Echoes fill the nulls of both antennas and turn the polarisation: no more than this is lost to them, dB (assumed). */
const MOST_ANTENNA_LOSS_DB = 20;
/** Two antennas are taken as no nearer to each other than this, m. */
const LEAST_DISTANCE_M = 0.1;

/**
 * What one system's transmitter puts into a receiver of another on the same channel: the budget of that path, walls,
 * floors, audience and canopy included, both antennas towards each other, yet no more than 20 dB below their peaks.
 * @param receiving the system that the receiver belongs to: its gain and canopy count
 * @returns dBm in the receiver, all of the other's power, while it is on the air
 * @throws {ArgumentError} as `venueLink`
 */
export function systemIntoReceiverDbm(
  site: VenueSite,
  other: { readonly system: VenueSystem; readonly transmitter: TransmitterPlace },
  receiving: VenueSystem,
  receiver: VenueReceiver,
  frequencyMhz: number,
): number {
  const { txPowerDbm, txFeederLossDb, txGainDbi } = other.system.profile;
  const profile = { ...receiving.profile, txPowerDbm, txFeederLossDb, txGainDbi };
  const transmitter = apartFrom(other.transmitter, receiver);
  const { lines } = venueLink(site, { profile, transmitter, receiver, frequencyMhz });
  const peakDbi =
    peakGainDbi(transmitter.antenna, txGainDbi.value) +
    peakGainDbi(receiver.antenna, receiving.profile.rxGainDbi.value);
  const towardsDbi = lines.txGainDbi + lines.rxGainDbi - lines.polarisationLossDb;
  const antennasDbi = Math.max(towardsDbi, peakDbi - MOST_ANTENNA_LOSS_DB);
  return receivedDbm({ ...lines, txGainDbi: antennasDbi, rxGainDbi: 0, polarisationLossDb: 0 });
}

/** Peak gain of a receiver's antenna less its canopy: by that the levels at an isotropic antenna are moved, dB. */
export function receiverGainDb({ profile }: Pick<VenueSystem, "profile">, receiver: VenueReceiver): number {
  return peakGainDbi(receiver.antenna, profile.rxGainDbi.value) - enclosureLossDb(profile, receiver);
}

function apartFrom(transmitter: TransmitterPlace, { at }: VenueReceiver): TransmitterPlace {
  const { x, y, z } = transmitter.at;
  if (Math.hypot(x - at.x, y - at.y, z - at.z) >= LEAST_DISTANCE_M) return transmitter;
  return { ...transmitter, at: { x, y, z: at.z + LEAST_DISTANCE_M } };
}
