import type { MarginField, PlanPoint } from "../../venue/index.js";

/** The margin of the field's cell that a point lies in; null outside the room. */
export function marginAt(
  { from, stepM, columnCount, rowCount, leastMarginDb }: MarginField,
  { x, y }: PlanPoint,
): number | null {
  const column = Math.floor((x - from.x) / stepM + 1e-9);
  const row = Math.floor((y - from.y) / stepM + 1e-9);
  if (column < 0 || column >= columnCount || row < 0 || row >= rowCount) return null;
  return leastMarginDb[row * columnCount + column] ?? null;
}
