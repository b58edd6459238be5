import { ArgumentError, requirePositive } from "../issues/index.js";
import type { Antenna } from "../propagation/index.js";
import { isInsideOutline, outlineBounds } from "./plan-polygon.js";
import type { Room } from "./venue-room.js";
import type { TransmitterPlace } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** An even grid over the floors of some rooms. */
export interface PlaceGrid {
  /** Names of rooms. */
  readonly rooms: readonly string[];
  /** m, > 0. */
  readonly stepM: number;
  /** Of the antenna above each room's floor, m; no higher than 0.3 m under the ceiling. */
  readonly heightM: number;
  readonly antenna: Antenna | null;
}

/** A transmitter stays this far under the ceiling, m (assumed). */
const UNDER_CEILING_M = 0.3;
const MOST_POINTS = 1_000_000;

/**
 * The points of a grid within the rooms' outlines, row by row: half a step in from each room's least x and y.
 * @throws {ArgumentError} for an unknown room, a step or height not > 0, more than a million points
 */
export function gridPlaces(
  { venue }: VenueSite,
  { rooms, stepM, heightM, antenna }: PlaceGrid,
): TransmitterPlace[] {
  requirePositive("stepM", stepM);
  requirePositive("heightM", heightM);
  return rooms.flatMap((name) => {
    const room = venue.rooms.find((one) => one.name === name);
    if (room === undefined)
      throw new ArgumentError("rooms", venue.rooms.map((one) => one.name).join(", "), name);
    const floorM = venue.storeys.find((storey) => storey.name === room.storey)?.floorM ?? 0;
    const underM = antennaHeightM(room, heightM);
    return gridPoints(room, stepM).map(({ x, y }) => ({
      name: `${name} ${x.toFixed(2)}, ${y.toFixed(2)}`,
      at: { x, y, z: floorM + underM },
      heightM: underM,
      room: name,
      antenna,
      inRack: null,
      inSight: null,
    }));
  });
}

/**
 * How high above the floor an antenna hangs that should be at a height: no higher than 0.3 m under the ceiling, or
 * half way up a room too low for that.
 * @param heightM above the floor that was asked for, m
 * @returns above the floor, m
 * @example antennaHeightM({ heightM: 2.8 }, 3); // => 2.5
 */
export function antennaHeightM(room: Pick<Room, "heightM">, heightM: number): number {
  return Math.min(heightM, Math.max(room.heightM / 2, room.heightM - UNDER_CEILING_M));
}

function gridPoints({ outline }: Room, stepM: number): { readonly x: number; readonly y: number }[] {
  const { least, most } = outlineBounds(outline);
  const columns = Math.max(1, Math.ceil((most.x - least.x) / stepM - 1e-9));
  const rows = Math.max(1, Math.ceil((most.y - least.y) / stepM - 1e-9));
  if (columns * rows > MOST_POINTS)
    throw new ArgumentError("stepM", `a step that gives at most ${MOST_POINTS} points a room`, stepM);
  const points: { readonly x: number; readonly y: number }[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const point = { x: least.x + (column + 0.5) * stepM, y: least.y + (row + 0.5) * stepM };
      if (isInsideOutline(outline, point)) points.push(point);
    }
  return points;
}
