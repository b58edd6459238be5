import type { KeepOuts, Place, VenueSystem } from "../venue/index.js";
import type { VenueScene } from "./venue-scene.js";

/** Wi-Fi radios whose places are known, the other systems' transmitters, and the fixtures. */
export function placeKeepOuts({ venue, sourcePlaces }: VenueScene, system: VenueSystem): KeepOuts {
  const floorOf = new Map(
    venue.rooms.map((room) => [
      room.name,
      venue.storeys.find(({ name }) => name === room.storey)?.floorM ?? 0,
    ]),
  );
  return {
    accessPoints: [...sourcePlaces.values()],
    transmitters: venue.systems.flatMap(({ name, transmitter }) =>
      name === system.name || transmitter === null ? [] : [transmitter.at],
    ),
    luminaires: [
      ...venue.receivers.map(({ at }) => at),
      ...venue.luminaires.map(({ x, y, room, trimHeightM, ceilingHeightM }): Place => ({
        x,
        y,
        z: (floorOf.get(room) ?? 0) + (trimHeightM ?? ceilingHeightM ?? Infinity),
      })),
    ],
  };
}
