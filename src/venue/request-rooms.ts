import { canMove } from "./on-wifi-channel.js";
import { distanceToOutlineM, isInsideOutline } from "./plan-polygon.js";
import type { RequestOptions } from "./request-options.js";
import type { Place, Room } from "./venue-room.js";
import type { VenueSite } from "./venue-site.js";

/** One of the building's radios in or beside a room where a system works. */
export interface RadioNearby {
  readonly emitter: string;
  readonly room: string;
  /** By the place that the venue file gives it; by its level where it gives none. */
  readonly known: "in" | "beside" | "by-level";
}

/** A radio this near to a room, on the plan, is beside it, m (assumed). */
const BESIDE_M = 5;
/** Where its place is not known: a radio this strong in a room is in or beside it, dBm (assumed). */
const BESIDE_FROM_DBM = -55;

/**
 * The building's Wi-Fi radios in and beside the rooms where the systems' receivers are: by their places on the
 * plan, whatever the storey; by their level in the room where the venue file gives no place.
 * @returns one line a radio: the room that it is in, else the nearest; rooms in the venue's order
 */
export function radiosInAndBeside({ venue }: VenueSite, options: RequestOptions): RadioNearby[] {
  const systems = new Set(options.systems.map(({ system }) => system.name));
  const names = new Set(venue.receivers.filter(({ system }) => systems.has(system)).map(({ room }) => room));
  const rooms = venue.rooms.filter(({ name }) => names.has(name));
  const levels = levelsOf(options);
  const found = [...levels].flatMap(([emitter, byRoom]): RadioNearby[] => {
    const at = options.sourcePlaces?.get(emitter);
    return at === undefined ? byLevel(emitter, rooms, byRoom) : byPlace(emitter, rooms, at);
  });
  const orderOf = (name: string): number => rooms.findIndex((room) => room.name === name);
  return found.sort((a, b) => orderOf(a.room) - orderOf(b.room) || (a.emitter < b.emitter ? -1 : 1));
}

function levelsOf({ survey, buildingIds }: RequestOptions): Map<string, Map<string, number>> {
  const levels = new Map<string, Map<string, number>>();
  for (const [room, { emitters }] of survey)
    for (const emitter of emitters) {
      if (!buildingIds.has(emitter.id) || !canMove(emitter)) continue;
      levels.set(
        emitter.id,
        (levels.get(emitter.id) ?? new Map<string, number>()).set(room, emitter.levelDbm),
      );
    }
  return levels;
}

function byPlace(emitter: string, rooms: readonly Room[], at: Place): RadioNearby[] {
  const inside = rooms.find(({ outline }) => isInsideOutline(outline, at));
  if (inside !== undefined) return [{ emitter, room: inside.name, known: "in" }];
  const [nearest] = rooms
    .map(({ name, outline }) => ({ name, distanceM: distanceToOutlineM(outline, at) }))
    .sort((a, b) => a.distanceM - b.distanceM);
  if (nearest === undefined || nearest.distanceM > BESIDE_M) return [];
  return [{ emitter, room: nearest.name, known: "beside" }];
}

function byLevel(
  emitter: string,
  rooms: readonly Room[],
  levels: ReadonlyMap<string, number>,
): RadioNearby[] {
  const [loudest] = rooms
    .map(({ name }) => ({ name, levelDbm: levels.get(name) ?? -Infinity }))
    .sort((a, b) => (b.levelDbm === a.levelDbm ? 0 : b.levelDbm - a.levelDbm));
  if (loudest === undefined || loudest.levelDbm < BESIDE_FROM_DBM) return [];
  return [{ emitter, room: loudest.name, known: "by-level" }];
}
