import { isInsideOutline, outlineBounds } from "./plan-polygon.js";
import { HEADS_ABOVE_HANDSETS_M } from "./reference-crowd.js";
import type { PlanPoint, Place, Room, Storey } from "./venue-room.js";

/** How full the venue is. */
export type VenueCrowd = "empty" | "part" | "full";

/** The people of one room as a block that paths may run through. */
export interface Audience {
  readonly room: string;
  readonly outline: readonly PlanPoint[];
  /** From the floor to the heads, m above the lowest storey's floor. */
  readonly bottomM: number;
  readonly topM: number;
  readonly peopleCount: number;
  /** The rectangle round the outline, where somebody has worked it out. */
  readonly bounds?: ReturnType<typeof outlineBounds> | undefined;
}

/**
 * @returns one for each room with people in it: over its seating, or all of it where no seating is drawn
 * @see {@link pathObstacles}
 */
export function audiencesOf(
  rooms: readonly Room[],
  storeys: readonly Storey[],
  crowd: VenueCrowd,
): Audience[] {
  return rooms
    .filter(({ people }) => people[crowd] > 0)
    .map((room) => {
      const bottomM = storeys.find(({ name }) => name === room.storey)?.floorM ?? 0;
      const outline = room.seating ?? room.outline;
      return {
        room: room.name,
        outline,
        bounds: outlineBounds(outline),
        bottomM,
        topM: bottomM + room.handsetHeightM + HEADS_ABOVE_HANDSETS_M,
        peopleCount: room.people[crowd],
      };
    });
}

/**
 * How far a straight path runs through an audience: below the heads, within the seating.
 * @returns m along the path, 0 where it passes over or beside
 * @example throughAudienceM({ room: "hall", outline: [{ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 9, y: 9 }, { x: 0, y: 9 }],
 *   bottomM: 0, topM: 1.4, peopleCount: 80 }, { x: -3, y: 4, z: 1 }, { x: 12, y: 4, z: 1 }); // => 9
 */
export function throughAudienceM(audience: Audience, from: Place, to: Place): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const dz = to.z - from.z;
  const [start, end] = heightSpan(audience, from.z, dz);
  if (!(end > start) || isBeside(audience, from, dx, dy, start, end)) return 0;
  const cuts = [start, end];
  const { outline } = audience;
  outline.forEach((corner, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const [ex, ey] = [next.x - corner.x, next.y - corner.y];
    const turn = dx * ey - dy * ex;
    if (turn === 0) return;
    const share = ((corner.x - from.x) * ey - (corner.y - from.y) * ex) / turn;
    if (share > start && share < end) cuts.push(share);
  });
  cuts.sort((a, b) => a - b);
  let within = 0;
  for (let index = 1; index < cuts.length; index++) {
    const middle = (cuts[index - 1]! + cuts[index]!) / 2;
    if (isInsideOutline(outline, { x: from.x + middle * dx, y: from.y + middle * dy }))
      within += cuts[index]! - cuts[index - 1]!;
  }
  return within * Math.sqrt(dx * dx + dy * dy + dz * dz);
}

/**
 * Does a straight path run through an audience for more than a stretch? As `throughAudienceM` has it; most paths
 * leave it so soon that their height alone answers.
 */
export function isThroughAudience(audience: Audience, from: Place, to: Place, beyondM: number): boolean {
  const { bottomM, topM } = audience;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const dz = to.z - from.z;
  if (Math.min(from.z, to.z) > topM || Math.max(from.z, to.z) < bottomM) return false;
  if (dz !== 0) {
    const start = Math.max(0, Math.min((bottomM - from.z) / dz, (topM - from.z) / dz));
    const end = Math.min(1, Math.max((bottomM - from.z) / dz, (topM - from.z) / dz));
    if (isBeside(audience, from, dx, dy, start, end)) return false;
    if ((end - start) * Math.sqrt(dx * dx + dy * dy + dz * dz) < beyondM) return false;
  }
  return throughAudienceM(audience, from, to) > beyondM;
}

/** Does that part of the path keep out of the rectangle round the seating? Most paths of a large house do. */
function isBeside(
  { outline, bounds = outlineBounds(outline) }: Audience,
  from: Place,
  dx: number,
  dy: number,
  start: number,
  end: number,
): boolean {
  const { least, most } = bounds;
  const [x1, x2] = [from.x + start * dx, from.x + end * dx];
  const [y1, y2] = [from.y + start * dy, from.y + end * dy];
  return (
    Math.max(x1, x2) < least.x ||
    Math.min(x1, x2) > most.x ||
    Math.max(y1, y2) < least.y ||
    Math.min(y1, y2) > most.y
  );
}

/** The shares of the path between which it is no higher than the heads and no lower than the floor. */
function heightSpan({ bottomM, topM }: Audience, z: number, dz: number): [number, number] {
  if (dz === 0) return z >= bottomM && z <= topM ? [0, 1] : [1, 0];
  const [one, other] = [(bottomM - z) / dz, (topM - z) / dz];
  return [Math.max(0, Math.min(one, other)), Math.min(1, Math.max(one, other))];
}
