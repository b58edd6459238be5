import type { PlanCell } from "./plan-scale.js";

/** Directions that a line leaves a cell in, as bits. */
export const UP = 1;
export const RIGHT = 2;
export const DOWN = 4;
export const LEFT = 8;

const THIN = " ╵╶└╷│┌├╴┘─┴┐┤┬┼";
const HEAVY = " ┃━┗┃┃┏┣━┛━┻┓┫┳╋";

/**
 * The character for the directions that lines leave a cell in.
 * @param directionsIndex sum of {@link UP}, {@link RIGHT}, {@link DOWN} and {@link LEFT}
 * @example lineMark(UP | DOWN, "thin"); // => "│"
 */
export function lineMark(directionsIndex: number, weight: "thin" | "heavy"): string {
  return (weight === "thin" ? THIN : HEAVY)[directionsIndex]!;
}

/** The cells of a straight line, each beside, above or below the one before it. */
export function cellsBetween(from: PlanCell, to: PlanCell): PlanCell[] {
  const [columns, rows] = [
    Math.abs(to.columnIndex - from.columnIndex),
    Math.abs(to.rowIndex - from.rowIndex),
  ];
  const right = Math.sign(to.columnIndex - from.columnIndex);
  const down = Math.sign(to.rowIndex - from.rowIndex);
  const cells = [from];
  let { columnIndex, rowIndex } = from;
  let [passedColumns, passedRows] = [0, 0];
  while (passedColumns < columns || passedRows < rows) {
    const isAcross = passedRows >= rows || (passedColumns + 0.5) / columns < (passedRows + 0.5) / rows;
    if (isAcross && passedColumns < columns) {
      passedColumns++;
      columnIndex += right;
    } else {
      passedRows++;
      rowIndex += down;
    }
    cells.push({ columnIndex, rowIndex });
  }
  return cells;
}

/** The direction from a cell to one that touches it. */
export function directionTo(from: PlanCell, to: PlanCell): number {
  if (from.columnIndex !== to.columnIndex) return to.columnIndex > from.columnIndex ? RIGHT : LEFT;
  return to.rowIndex > from.rowIndex ? DOWN : UP;
}
