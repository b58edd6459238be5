import type { TransmitterPlace, VenueReceiver } from "../venue-system.js";
import type { FileSpot } from "./file-spot.js";
import type { FiledSystem } from "./read-systems.js";

/** Antennas nearer to each other than this are at one place, m: a slip of the pen. */
const ONE_PLACE_M = 0.01;

/** Tells of transmitters and candidates that stand where a receiver is: no path is that short. */
export function tellSharedPlaces(systems: readonly FiledSystem[], receivers: readonly VenueReceiver[]): void {
  for (const { transmitter, candidates, spot } of systems) {
    if (transmitter !== null) tellShared(transmitter, receivers, spot.key("transmitter"));
    for (const candidate of candidates) tellShared(candidate, receivers, spot.key("candidates"));
  }
}

function tellShared(
  { name, at }: TransmitterPlace,
  receivers: readonly VenueReceiver[],
  spot: FileSpot,
): void {
  const box = receivers.find(
    (other) => Math.hypot(at.x - other.at.x, at.y - other.at.y, at.z - other.at.z) < ONE_PLACE_M,
  );
  if (box !== undefined) spot.error(name, `a place apart from the receiver ${box.name}`, "contradiction");
}
