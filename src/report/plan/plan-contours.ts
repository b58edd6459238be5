import type { MarginField } from "../../venue/index.js";
import { limitsReachedCount, verdictMark } from "../verdict-mark.js";
import { DOWN, LEFT, lineMark, RIGHT, UP } from "./line-cells.js";
import { marginAt } from "./margin-at.js";
import { pointAt } from "./plan-scale.js";
import type { PlanScale } from "./plan-scale.js";
import type { PlanMarks } from "./plan-walls.js";

/**
 * A field of margins over a room's floor: thin lines where it crosses a verdict limit, and between them, here
 * and there, the verdict's mark.
 */
export function contourMarks(scale: PlanScale, field: MarginField): PlanMarks {
  const marks: PlanMarks = new Map();
  const levelAt = (column: number, row: number): number | null => {
    const marginDb = marginAt(field, pointAt(scale, { columnIndex: column, rowIndex: row }));
    return marginDb === null ? null : limitsReachedCount(marginDb);
  };
  for (let row = 0; row < scale.rowCount; row++)
    for (let column = 0; column < scale.columnCount; column++) {
      const mark = crossingMark(levelAt, column, row) ?? fillMark(scale, field, column, row);
      if (mark !== null) marks.set(row * scale.columnCount + column, mark);
    }
  return marks;
}

/** The line through a cell, by which of its sides it crosses; null where none does. */
function crossingMark(
  levelAt: (column: number, row: number) => number | null,
  column: number,
  row: number,
): string | null {
  const corner = (right: number, down: number): number | null =>
    levelAt(column + right - 0.5, row + down - 0.5);
  const [upperLeft, upperRight, lowerLeft, lowerRight] = [
    corner(0, 0),
    corner(1, 0),
    corner(0, 1),
    corner(1, 1),
  ];
  const differ = (one: number | null, other: number | null): boolean =>
    one !== null && other !== null && one !== other;
  const directions =
    (differ(upperLeft, upperRight) ? UP : 0) |
    (differ(upperRight, lowerRight) ? RIGHT : 0) |
    (differ(lowerLeft, lowerRight) ? DOWN : 0) |
    (differ(upperLeft, lowerLeft) ? LEFT : 0);
  return directions === 0 ? null : lineMark(directions, "thin");
}

const EVERY_COLUMNS = 8;
const EVERY_ROWS = 4;

function fillMark(scale: PlanScale, field: MarginField, column: number, row: number): string | null {
  if (column % EVERY_COLUMNS !== 4 || row % EVERY_ROWS !== 2) return null;
  const marginDb = marginAt(field, pointAt(scale, { columnIndex: column, rowIndex: row }));
  return marginDb === null ? null : verdictMark(marginDb);
}
