import type { TransmitterPlace, VenueReceiver, VenueSystem } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** Antennas nearer to each other than this are taken as at one place, m (assumed; four wavelengths). */
const CLOSEST_M = 0.5;
/** Where nobody named a place: this high, m above the floor (common practice, no source). */
const HEIGHT_M = 3;
/** And so far to the side of the receivers' middle, m: nobody stands straight under a luminaire. */
const ASIDE_M = 1;

/**
 * Where a second transmitter might stand to serve a receiver: the system's candidates, or, where it has none
 * other, the middle of the receivers of that room.
 * @returns places half a metre or more from both the receiver and the first transmitter
 */
export function secondPlaces(
  site: VenueSite,
  system: VenueSystem,
  receiver: VenueReceiver,
  first: TransmitterPlace,
): TransmitterPlace[] {
  const named = system.candidates.filter((place) => isApart(place, first, receiver));
  if (named.length > 0) return named;
  const { venue } = site;
  const beside = venue.receivers.filter(
    ({ room, system: of }) => room === receiver.room && of === system.name,
  );
  const room = venue.rooms.find(({ name }) => name === receiver.room);
  const floorM = venue.storeys.find(({ name }) => name === room?.storey)?.floorM ?? 0;
  const mean = (of: (box: VenueReceiver) => number): number =>
    beside.reduce((sum, box) => sum + of(box), 0) / Math.max(1, beside.length);
  const middle: TransmitterPlace = {
    ...first,
    name: `middle of ${receiver.room}`,
    room: receiver.room,
    at: { x: mean(({ at }) => at.x) + ASIDE_M, y: mean(({ at }) => at.y), z: floorM + HEIGHT_M },
    heightM: HEIGHT_M,
    inRack: null,
    inSight: null,
  };
  return beside.length > 0 && isApart(middle, first, receiver) ? [middle] : [];
}

function isApart(place: TransmitterPlace, first: TransmitterPlace, { at }: VenueReceiver): boolean {
  return [first.at, at].every(
    (other) => Math.hypot(place.at.x - other.x, place.at.y - other.y, place.at.z - other.z) >= CLOSEST_M,
  );
}
