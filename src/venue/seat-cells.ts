import { isInsideOutline, outlineBounds } from "./plan-polygon.js";
import type { Audience } from "./audience.js";
import type { Place, PlanPoint } from "./venue-room.js";

/** Seats side by side, as one. */
export interface SeatCell {
  readonly seats: readonly Place[];
  /** Its part of the room's people, 0..1. */
  readonly peopleRatio: number;
}

/** Seats are never nearer to each other than this, m (assumed: a seat's width). */
const CLOSEST_SEATS_M = 0.5;
/** At most about so many seats are looked at; people then share them. */
const MOST_SEATS = 3600;
/** Seats along one side of a cell. */
const CELL_SIDE = 3;

/**
 * The places of an audience's handsets: an even grid over its outline at the height given, people spread
 * evenly over it, seats taken together three by three.
 * @param handsetM height of the handsets above the lowest storey's floor
 * @returns one cell at least
 */
export function seatCells(audience: Audience, handsetM: number): SeatCell[] {
  const { least, most } = outlineBounds(audience.outline);
  const areaM = (most.x - least.x) * (most.y - least.y);
  const stepM = Math.max(CLOSEST_SEATS_M, Math.sqrt(areaM / MOST_SEATS));
  const cells = new Map<string, Place[]>();
  let seatCount = 0;
  const columns = Math.ceil((most.x - least.x) / stepM);
  const rows = Math.ceil((most.y - least.y) / stepM);
  for (let column = 0; column < columns; column++)
    for (let row = 0; row < rows; row++) {
      const x = least.x + (column + 0.5) * stepM;
      const y = least.y + (row + 0.5) * stepM;
      if (!isInsideOutline(audience.outline, { x, y })) continue;
      const key = `${Math.floor(column / CELL_SIDE)},${Math.floor(row / CELL_SIDE)}`;
      const seats = cells.get(key) ?? [];
      if (seats.length === 0) cells.set(key, seats);
      seats.push({ x, y, z: handsetM });
      seatCount++;
    }
  if (seatCount === 0) return [{ seats: [middleOf(audience.outline, handsetM)], peopleRatio: 1 }];
  return [...cells.values()].map((seats) => ({
    seats,
    peopleRatio: seats.length / seatCount,
  }));
}

function middleOf(outline: readonly PlanPoint[], z: number): Place {
  const mean = (of: (corner: PlanPoint) => number): number =>
    outline.reduce((sum, corner) => sum + of(corner), 0) / outline.length;
  return { x: mean(({ x }) => x), y: mean(({ y }) => y), z };
}
