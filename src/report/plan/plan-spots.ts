import type { PlanSpot } from "../plan-model.js";
import { cellAt } from "./plan-scale.js";
import type { PlanCell, PlanScale } from "./plan-scale.js";
import { cellKey, isDrawn } from "./plan-walls.js";
import type { PlanMarks } from "./plan-walls.js";

const FARTHEST = 6;

/**
 * Puts spots on the picture, the first ones first: each where it is, or on the nearest cells that no wall and no
 * other spot takes. A blank stands before and behind each, so that no two run into one.
 * @param taken cells that are taken already
 */
export function spotMarks(scale: PlanScale, spots: readonly PlanSpot[], taken: PlanMarks): PlanMarks {
  const marks: PlanMarks = new Map();
  const isFree = (cell: PlanCell): boolean => {
    const key = cellKey(scale, cell);
    return isDrawn(scale, cell) && !taken.has(key) && !marks.has(key);
  };
  for (const { mark, at } of spots) {
    const start = freeStart(cellAt(scale, at), mark.length, isFree);
    if (start === null) continue;
    [...` ${mark} `].forEach((character, index) => {
      const cell = { ...start, columnIndex: start.columnIndex + index - 1 };
      const isEdge = index === 0 || index === mark.length + 1;
      if (!isEdge || isFree(cell)) marks.set(cellKey(scale, cell), character);
    });
  }
  return marks;
}

/** Where a mark begins: as near as can be. */
function freeStart(
  { columnIndex, rowIndex }: PlanCell,
  length: number,
  isFree: (cell: PlanCell) => boolean,
): PlanCell | null {
  const offsets = Array.from({ length: 2 * FARTHEST + 1 }, (_, index) => index - FARTHEST);
  const tries = offsets
    .flatMap((down) => offsets.map((right) => ({ right, down })))
    // A row is as high as two columns are wide.
    .sort((a, b) => Math.hypot(a.right, 2 * a.down) - Math.hypot(b.right, 2 * b.down));
  for (const { right, down } of tries) {
    const start = { columnIndex: columnIndex + right, rowIndex: rowIndex + down };
    const cells = Array.from({ length }, (_, index) => ({
      ...start,
      columnIndex: start.columnIndex + index,
    }));
    if (cells.every(isFree)) return start;
  }
  return null;
}
