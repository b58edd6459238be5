import { LINE_PX, TEXT_PX, textWidthPx } from "./drawing.js";
import type { DrawnPoint } from "./path.js";

/** A mark that a short text goes with. */
export interface Marked {
  readonly at: DrawnPoint;
  readonly text: string;
}

/** Where texts may go. */
export interface TextRoom {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
  /** From a mark's middle to the near edge of its text. */
  readonly apartPx: number;
  /** Points of lines that a text had better not cover. */
  readonly lines?: readonly DrawnPoint[] | undefined;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly halfWidthPx: number;
  readonly halfHeightPx: number;
}

const RINGS = 5;
/** Right, left, above, below, then between. */
const DIRECTIONS = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
] as const;

/**
 * A place for each mark's text, its middle: beside the mark, or as near as no mark and no text before it is in the
 * way; right of its mark where there is no room at all.
 */
export function besideMarks(marks: readonly Marked[], room: TextRoom): DrawnPoint[] {
  const taken: Box[] = [
    ...marks.map(({ at }) => ({ ...at, halfWidthPx: 6, halfHeightPx: 6 })),
    ...(room.lines ?? []).map((at) => ({ ...at, halfWidthPx: 1, halfHeightPx: 1 })),
  ];
  return marks.map(({ at, text }) => {
    const halfWidthPx = textWidthPx(text) / 2;
    const tries = placesAround(at, halfWidthPx, room.apartPx);
    const boxAt = (point: DrawnPoint): Box => ({ ...point, halfWidthPx, halfHeightPx: TEXT_PX / 2 - 1 });
    const found = tries.find((point) => {
      const box = boxAt(point);
      return isInside(box, room) && taken.every((other) => !overlap(box, other));
    });
    const point = found ?? tries[0]!;
    taken.push(boxAt(point));
    return point;
  });
}

function placesAround({ x, y }: DrawnPoint, halfWidthPx: number, apartPx: number): DrawnPoint[] {
  return Array.from({ length: RINGS }, (_, ring) =>
    DIRECTIONS.map(([right, down]) => ({
      x: x + right * (apartPx + halfWidthPx + ring * LINE_PX * 0.7),
      y: y + down * (apartPx + TEXT_PX / 2 - 2 + ring * LINE_PX * 0.7),
    })),
  ).flat();
}

function isInside(
  { x, y, halfWidthPx, halfHeightPx }: Box,
  { leftPx, rightPx, topPx, bottomPx }: TextRoom,
): boolean {
  return (
    x - halfWidthPx >= leftPx &&
    x + halfWidthPx <= rightPx &&
    y - halfHeightPx >= topPx &&
    y + halfHeightPx <= bottomPx
  );
}

function overlap(a: Box, b: Box): boolean {
  return (
    Math.abs(a.x - b.x) < a.halfWidthPx + b.halfWidthPx &&
    Math.abs(a.y - b.y) < a.halfHeightPx + b.halfHeightPx
  );
}
