import { floorLossDb } from "../propagation/index.js";
import type { Building } from "../propagation/index.js";
import { distanceToOutlineM, isInsideOutline } from "./plan-polygon.js";
import { SAME_PLACE_M } from "./outline-fault.js";
import type { Place, Room, Storey } from "./venue-room.js";

/** A floor between storeys that a path goes through. */
export interface FloorHit {
  /** The storey that stands on it. */
  readonly storey: string;
  /** Its own loss, dB; null: counted with its like by the kind of building. */
  readonly lossDb: number | null;
}

/** What holds floors apart or open. */
export interface FloorPlan {
  /** Lowest first. */
  readonly storeys: readonly Storey[];
  readonly rooms: readonly Room[];
}

/**
 * The floors that the straight path between two places goes through. The lowest storey's is none of them;
 * one at which the path only starts or ends (within 1e-9 m) isn't crossed; and there is none within a room
 * that rises through it, such as a hall two storeys high.
 * @returns lowest first
 * @see {@link pathObstacles}
 */
export function floorHits({ storeys, rooms }: FloorPlan, from: Place, to: Place): FloorHit[] {
  const [lowM, highM] = [Math.min(from.z, to.z), Math.max(from.z, to.z)];
  return storeys
    .slice(1)
    .filter(({ floorM }) => floorM > lowM + SAME_PLACE_M && floorM < highM - SAME_PLACE_M)
    .filter(({ floorM }) => {
      const share = (floorM - from.z) / (to.z - from.z);
      const point = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
      return !rooms.some(
        (room) =>
          risesThrough(room, storeys, floorM) &&
          isInsideOutline(room.outline, point) &&
          distanceToOutlineM(room.outline, point) > SAME_PLACE_M,
      );
    })
    .map(({ name, floorLossDb: lossDb }) => ({ storey: name, lossDb }));
}

function risesThrough(room: Room, storeys: readonly Storey[], floorM: number): boolean {
  const bottomM = storeys.find(({ name }) => name === room.storey)?.floorM ?? 0;
  return bottomM < floorM - SAME_PLACE_M && bottomM + room.heightM > floorM + SAME_PLACE_M;
}

/**
 * The loss of the floors on a path: those with a loss of their own as given, the rest by kind of building.
 * @returns dB
 * @source ITU-R P.1238 floor law for floors without a figure
 * @example floorHitsLossDb([{ storey: "first", lossDb: null }, { storey: "second", lossDb: 20 }], "commercial"); // => 26
 */
export function floorHitsLossDb(hits: readonly FloorHit[], building: Building): number {
  const known = hits.filter(({ lossDb }) => lossDb !== null);
  return (
    known.reduce((sum, { lossDb }) => sum + lossDb!, 0) + floorLossDb(building, hits.length - known.length)
  );
}
