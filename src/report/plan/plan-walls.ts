import type { PlanPoint, Wall } from "../../venue/index.js";
import { cellsBetween, directionTo, lineMark } from "./line-cells.js";
import { cellAt } from "./plan-scale.js";
import type { PlanCell, PlanScale } from "./plan-scale.js";

/** Marks by cell: `row · columnCount + column`. */
export type PlanMarks = Map<number, string>;

/**
 * A room's outline as dots, its walls over it as heavy lines, their openings as gaps.
 * @param walls those of the room's storey; what lies outside the picture is left out
 */
export function wallMarks(
  scale: PlanScale,
  outline: readonly PlanPoint[],
  walls: readonly Wall[],
): PlanMarks {
  const marks: PlanMarks = new Map();
  outline.forEach((corner, index) => {
    const before = outline[index === 0 ? outline.length - 1 : index - 1]!;
    for (const cell of cellsBetween(cellAt(scale, before), cellAt(scale, corner)))
      marks.set(cellKey(scale, cell), "·");
  });
  const directions = new Map<number, number>();
  for (const wall of walls) drawWall(scale, wall, directions);
  for (const [key, bits] of directions) marks.set(key, lineMark(bits, "heavy"));
  return marks;
}

/** @returns where a cell's mark is kept */
export function cellKey({ columnCount }: PlanScale, { columnIndex, rowIndex }: PlanCell): number {
  return rowIndex * columnCount + columnIndex;
}

/** @returns whether a cell lies within the picture */
export function isDrawn({ columnCount, rowCount }: PlanScale, { columnIndex, rowIndex }: PlanCell): boolean {
  return columnIndex >= 0 && columnIndex < columnCount && rowIndex >= 0 && rowIndex < rowCount;
}

function drawWall(scale: PlanScale, wall: Wall, directions: Map<number, number>): void {
  const cells = cellsBetween(cellAt(scale, wall.from), cellAt(scale, wall.to));
  const gaps = gapCells(wall, cells.length);
  const add = (cell: PlanCell, bits: number): void => {
    if (!isDrawn(scale, cell)) return;
    const key = cellKey(scale, cell);
    directions.set(key, (directions.get(key) ?? 0) | bits);
  };
  cells.forEach((cell, index) => {
    add(cell, 0);
    const next = cells[index + 1];
    if (next === undefined || gaps.has(index) || gaps.has(index + 1)) return;
    add(cell, directionTo(cell, next));
    add(next, directionTo(next, cell));
  });
}

/** Which of a wall's cells its openings take: each at least one, but never an end. */
function gapCells({ from, to, openings }: Wall, cellCount: number): Set<number> {
  const lengthM = Math.hypot(to.x - from.x, to.y - from.y);
  const indexOf = (alongM: number): number => (alongM / lengthM) * (cellCount - 1);
  const gaps = new Set<number>();
  for (const { fromM, toM } of openings) {
    const middle = Math.round(indexOf((fromM + toM) / 2));
    const first = Math.min(middle, Math.ceil(indexOf(fromM) + GAP_EDGE));
    const last = Math.max(middle, Math.floor(indexOf(toM) - GAP_EDGE));
    for (let index = Math.max(1, first); index <= Math.min(cellCount - 2, last); index++) gaps.add(index);
  }
  return gaps;
}

/** An opening takes a cell if it reaches so far beyond the cell's middle, in cells. */
const GAP_EDGE = 0.25;
