import { distanceToEdgeM } from "./plan-polygon.js";
import type { PlanPoint } from "./venue-room.js";

/**
 * What is wrong with an outline.
 * - `too-few-corners`: fewer than three
 * - `repeated-corner`: a corner at the place of the one before (a closed outline repeats its first)
 * - `edges-meet`: two edges that are no neighbours cross or touch, or neighbours fold back on each other
 */
export interface OutlineFault {
  readonly code: "too-few-corners" | "repeated-corner" | "edges-meet";
  /** The corner, or the one at which the first of the two edges starts. */
  readonly cornerIndex: number;
  /** The corner at which the other edge starts; null where there is only one. */
  readonly otherIndex: number | null;
}

/** Nearer than this, m, two things on the plan are one: a thousandth of a thousandth of a millimetre. */
export const SAME_PLACE_M = 1e-9;

/**
 * The first fault of an outline that is to bound a room.
 * @returns null for a simple polygon
 * @example outlineFault([{ x: 0, y: 0 }, { x: 2, y: 2 }, { x: 2, y: 0 }, { x: 0, y: 2 }]).code; // => "edges-meet"
 */
export function outlineFault(outline: readonly PlanPoint[]): OutlineFault | null {
  const count = outline.length;
  if (count < 3) return { code: "too-few-corners", cornerIndex: 0, otherIndex: null };
  const corner = (index: number): PlanPoint => outline[index % count]!;
  for (let index = 0; index < count; index++) {
    const [from, to] = [corner(index), corner(index + 1)];
    if (Math.hypot(to.x - from.x, to.y - from.y) <= SAME_PLACE_M)
      return { code: "repeated-corner", cornerIndex: (index + 1) % count, otherIndex: index };
  }
  for (let one = 0; one < count; one++)
    for (let other = one + 1; other < count; other++) {
      const meet = { code: "edges-meet", cornerIndex: one, otherIndex: other } as const;
      const [a, b, c, d] = [corner(one), corner(one + 1), corner(other), corner(other + 1)];
      if (other === one + 1 || (one === 0 && other === count - 1)) {
        if (other === one + 1 ? foldsBack(a, b, d) : foldsBack(c, a, b)) return meet;
      } else if (edgesMeet(a, b, c, d)) return meet;
    }
  return null;
}

/** Does the path from a by way of b to c turn back upon itself? */
function foldsBack(a: PlanPoint, b: PlanPoint, c: PlanPoint): boolean {
  return distanceToEdgeM(a, b, c) <= SAME_PLACE_M || distanceToEdgeM(b, c, a) <= SAME_PLACE_M;
}

function edgesMeet(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint): boolean {
  const touching = [
    distanceToEdgeM(a, b, c),
    distanceToEdgeM(a, b, d),
    distanceToEdgeM(c, d, a),
    distanceToEdgeM(c, d, b),
  ];
  if (Math.min(...touching) <= SAME_PLACE_M) return true;
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}

function side(a: PlanPoint, b: PlanPoint, point: PlanPoint): number {
  return Math.sign((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x));
}
