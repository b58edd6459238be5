import type { CrewFigures, HangPoint, RoomTrim } from "../install/index.js";
import type { Luminaire } from "./venue-luminaire.js";
import type { Venue } from "./venue.js";
import type { VenueReceiver } from "./venue-system.js";

/**
 * A venue's luminaires as the hang sheet takes them. A receiver weighs on the luminaire at which it hangs: where
 * several share one, on the first of them if it hangs there, on none if it has a place of its own.
 * @param luminaires in the order of hanging
 * @param figuresOf the crew's own columns, by luminaire
 */
export function hangPoints(
  luminaires: readonly Luminaire[],
  { receivers }: Pick<Venue, "receivers">,
  figuresOf: ReadonlyMap<string, CrewFigures>,
): HangPoint[] {
  return luminaires.map((luminaire) => {
    const { name, room, group, ceilingHeightM, trimHeightM, weightKg, emergency } = luminaire;
    const { hang, point } = figuresOf.get(name) ?? { hang: {}, point: {} };
    const { floorOffsetM, trimFrom, hangIndex } = point;
    return {
      ...{ name, room, group, ceilingHeightM, trimHeightM, weightKg, emergency },
      ...(floorOffsetM !== undefined && { floorOffsetM }),
      ...(trimFrom !== undefined && { trimFrom }),
      ...(hangIndex !== undefined && { hangIndex }),
      ...(!carriesReceiver(luminaire, receivers) && { receiverKg: 0 }),
      ...hang,
    };
  });
}

/** Trim and laser line of each room; a line that is given for all stands where a room has none of its own. */
export function roomTrims({ rooms }: Pick<Venue, "rooms">, laserLineM: number | null): RoomTrim[] {
  return rooms.map(({ name, trimHeightM, laserLineM: ownM }) => ({
    ...{ room: name, trimHeightM, laserLineM: ownM ?? laserLineM },
  }));
}

/** Two points of the plan nearer than this are one. */
const SAME_POINT_M = 0.01;

function carriesReceiver({ name, x, y }: Luminaire, receivers: readonly VenueReceiver[]): boolean {
  const receiver = receivers.find(({ luminaires }) => luminaires.includes(name));
  if (receiver === undefined || receiver.name === name) return true;
  const isHere = Math.hypot(receiver.at.x - x, receiver.at.y - y) < SAME_POINT_M;
  return isHere && receiver.luminaires[0] === name;
}
