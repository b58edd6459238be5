import { antennaPractice } from "./antenna-practice.js";
import type { PracticeCheck } from "./antenna-practice.js";
import { brokenKeepOuts } from "./antenna-keep-outs.js";
import type { ReceiverBudget } from "./receiver-budgets.js";
import { bothVertical } from "./site-practice.js";
import type { Place } from "./venue-room.js";
import type { TransmitterPlace, VenueSystem } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/**
 * {@link antennaPractice} with what a venue's positions decide: of the receivers the one that is worst off
 * counts; access points are the sources that the venue file gives a place.
 * @param receivers the system's, judged from that place
 * @see {@link venueSite}
 */
export function venuePractice(
  { venue }: VenueSite,
  system: VenueSystem,
  transmitter: TransmitterPlace,
  receivers: readonly Pick<ReceiverBudget, "receiver" | "judged">[],
): PracticeCheck[] {
  const accessPoints = venue.sources.flatMap(({ at }) => (at === null ? [] : [at]));
  const others = venue.systems.flatMap((other) =>
    other.name === system.name || other.transmitter === null ? [] : [other.transmitter.at],
  );
  const boxes = receivers.map(({ receiver }) => receiver);
  const enclosureOf = ({ enclosure }: (typeof boxes)[number]): string =>
    enclosure ?? system.profile.enclosure.value;
  const luminaires = luminairePlaces(venue);
  return antennaPractice({
    txHeightM: transmitter.heightM,
    ...(boxes.length > 0 && {
      txInRoom: boxes.every(({ room }) => room === transmitter.room),
      txInSight: receivers.every(({ judged }) => judged.link.inSight),
      allVertical: bothVertical(transmitter.antenna, ...boxes.map(({ antenna }) => antenna)),
    }),
    ...(transmitter.inRack !== null && { txInRack: transmitter.inRack }),
    ...(luminaires.length > 0 && {
      txUnderLuminaire: brokenKeepOuts(transmitter, { luminaires }).includes("under-luminaire"),
    }),
    ...nearest("txToAccessPointM", [transmitter.at], accessPoints),
    ...nearest("txToNextTxM", [transmitter.at], others),
    ...nearest(
      "rxToAccessPointM",
      boxes.map(({ at }) => at),
      accessPoints,
    ),
    ...(boxes.some((box) => enclosureOf(box) === "closed-metal") && { rxToMetalM: 0 }),
  });
}

/** Lowest edges of the luminaires whose trim is known. */
function luminairePlaces({ luminaires, rooms, storeys }: VenueSite["venue"]): Place[] {
  return luminaires.flatMap(({ room, x, y, trimHeightM }) => {
    if (trimHeightM === null) return [];
    const storey = rooms.find(({ name }) => name === room)?.storey;
    const floorM = storeys.find(({ name }) => name === storey)?.floorM ?? 0;
    return [{ x, y, z: floorM + trimHeightM }];
  });
}

function nearest<Key extends string>(
  key: Key,
  from: readonly Place[],
  to: readonly Place[],
): Partial<Record<Key, number>> {
  if (from.length === 0 || to.length === 0) return {};
  const distances = from.flatMap((one) =>
    to.map((other) => Math.hypot(one.x - other.x, one.y - other.y, one.z - other.z)),
  );
  return { [key]: distances.reduce((least, distance) => Math.min(least, distance), Infinity) } as Record<
    Key,
    number
  >;
}
