import type { PlanPoint } from "./venue-room.js";

/**
 * Whether a point of the plan lies within an outline: even-odd rule. On an edge it may be either; ask
 * {@link distanceToOutlineM} where that matters.
 * @param outline corners in order, not closed
 * @returns is the point inside, or on the edge?
 * @example isInsideOutline([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 0, y: 4 }], { x: 1, y: 1 }); // => true
 */
export function isInsideOutline(outline: readonly PlanPoint[], { x, y }: PlanPoint): boolean {
  let inside = false;
  let before = outline[outline.length - 1];
  for (const corner of outline) {
    if (before!.y > y !== corner.y > y) {
      const edgeX = before!.x + ((y - before!.y) / (corner.y - before!.y)) * (corner.x - before!.x);
      if (x < edgeX) inside = !inside;
    }
    before = corner;
  }
  return inside;
}

/**
 * Distance on the plan from a point to the nearest edge of an outline, from within and from without alike.
 * @returns m; Infinity for an outline without corners
 * @example distanceToOutlineM([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 4, y: 4 }, { x: 0, y: 4 }], { x: 1, y: 2 }); // => 1
 */
export function distanceToOutlineM(outline: readonly PlanPoint[], point: PlanPoint): number {
  return outline.reduce((leastM, corner, index) => {
    const before = outline[index === 0 ? outline.length - 1 : index - 1]!;
    return Math.min(leastM, distanceToEdgeM(before, corner, point));
  }, Infinity);
}

/**
 * Distance on the plan from a point to a straight piece between two others.
 * @returns m
 * @example distanceToEdgeM({ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 7, y: 4 }); // => 5
 */
export function distanceToEdgeM(from: PlanPoint, to: PlanPoint, point: PlanPoint): number {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const squared = x * x + y * y;
  const along = squared === 0 ? 0 : ((point.x - from.x) * x + (point.y - from.y) * y) / squared;
  const within = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - within * x, point.y - from.y - within * y);
}

/** @returns the smallest upright rectangle round an outline, m */
export function outlineBounds(outline: readonly PlanPoint[]): {
  readonly least: PlanPoint;
  readonly most: PlanPoint;
} {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  return {
    least: { x: Math.min(...xs), y: Math.min(...ys) },
    most: { x: Math.max(...xs), y: Math.max(...ys) },
  };
}
