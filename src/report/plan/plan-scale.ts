import { feetToM, mToFeet } from "../../units/index.js";
import type { PlanPoint } from "../../venue/index.js";
import type { LengthUnit } from "../pen.js";

/** How a plan lies on character cells: the middle of the lowest left cell is that corner of the room's bounds. */
export interface PlanScale {
  readonly leftM: number;
  readonly topM: number;
  /** Width of a column; a row is twice as high, as a character is. */
  readonly columnM: number;
  readonly columnCount: number;
  readonly rowCount: number;
}

/** A cell of the picture; row 0 is the top. */
export interface PlanCell {
  readonly columnIndex: number;
  readonly rowIndex: number;
}

/** Room for the scale on the left. */
export const SCALE_COLUMNS = 6;
const MOST_ROWS = 24;
const STEPS = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8];

/**
 * The finest round scale at which a room fits into so many columns and 24 rows, in the reader's unit.
 * @param outline the room's corners, m
 */
export function planScale(outline: readonly PlanPoint[], unit: LengthUnit, columnCount: number): PlanScale {
  const [leftM, rightM] = [least(outline.map(({ x }) => x)), most(outline.map(({ x }) => x))];
  const [bottomM, topM] = [least(outline.map(({ y }) => y)), most(outline.map(({ y }) => y))];
  const leastM = Math.max(
    (rightM - leftM) / (columnCount - SCALE_COLUMNS - 1),
    (topM - bottomM) / 2 / (MOST_ROWS - 1),
  );
  const columnM = roundedUpM(leastM, unit);
  const rowCount = Math.round((topM - bottomM) / (2 * columnM)) + 1;
  return {
    leftM,
    // Rows count from the bottom, so that their labels are round.
    topM: bottomM + (rowCount - 1) * 2 * columnM,
    columnM,
    columnCount: Math.round((rightM - leftM) / columnM) + 1,
    rowCount,
  };
}

/** The cell that a point falls in; it may lie outside the picture. */
export function cellAt({ leftM, topM, columnM }: PlanScale, { x, y }: PlanPoint): PlanCell {
  return { columnIndex: Math.round((x - leftM) / columnM), rowIndex: Math.round((topM - y) / (2 * columnM)) };
}

/** The point in the middle of a cell. */
export function pointAt({ leftM, topM, columnM }: PlanScale, { columnIndex, rowIndex }: PlanCell): PlanPoint {
  return { x: leftM + columnIndex * columnM, y: topM - rowIndex * 2 * columnM };
}

function roundedUpM(lengthM: number, unit: LengthUnit): number {
  const length = unit === "ft" ? mToFeet(lengthM) : lengthM;
  const decade = 10 ** Math.floor(Math.log10(length));
  const step = STEPS.map((one) => one * decade).find((one) => one >= length - 1e-9) ?? 10 * decade;
  return unit === "ft" ? feetToM(step) : step;
}

function least(values: readonly number[]): number {
  return Math.min(...values);
}

function most(values: readonly number[]): number {
  return Math.max(...values);
}
