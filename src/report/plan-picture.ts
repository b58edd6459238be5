import type { Room } from "../venue/index.js";
import type { TextStyle } from "./pen.js";
import { contourMarks } from "./plan/plan-contours.js";
import { wallsOfStorey } from "./plan-model.js";
import type { PlanModel } from "./plan-model.js";
import { rowLabel, scaleLines } from "./plan/plan-ruler.js";
import { planScale, SCALE_COLUMNS } from "./plan/plan-scale.js";
import { spotMarks } from "./plan/plan-spots.js";
import { cellKey, wallMarks } from "./plan/plan-walls.js";

/** A plan is no wider on a wide terminal: its field would have to be worked out again. */
export const PLAN_COLUMNS = 78;

/**
 * One room from above, x to the right and y upwards: its walls as heavy lines with gaps for the openings, dots
 * where its outline has no wall, spots by their marks, and thin lines where the margin crosses a verdict limit.
 * @returns lines of at most `style.columnCount` columns, the scale last
 */
export function planPicture(model: PlanModel, style: TextStyle): string[] {
  const { room, spots, field } = model;
  const scale = planScale(room.outline, style.units, style.columnCount);
  const beneath = field === null ? new Map<number, string>() : contourMarks(scale, field);
  const house = wallMarks(scale, room.outline, wallsOfStorey(model));
  const marked = spotMarks(scale, spots, house);
  // A verdict's mark beside a number would look like that receiver's own.
  const nearSpot = (column: number, row: number): boolean =>
    [-2, -1, 1, 2].some((aside) =>
      marked.has(cellKey(scale, { columnIndex: column + aside, rowIndex: row })),
    );
  const { faint, strong } = style.pen;
  const faintly = (mark: string): string => (mark === " " ? mark : faint(mark));
  const lines = Array.from({ length: scale.rowCount }, (_, row) => {
    const cells = Array.from({ length: scale.columnCount }, (_, column) => {
      const key = cellKey(scale, { columnIndex: column, rowIndex: row });
      const spot = marked.get(key);
      if (spot !== undefined) return spot === " " ? spot : strong(spot);
      const below = beneath.get(key) ?? " ";
      const isLine = !VERDICT_MARKS.includes(below);
      return house.get(key) ?? (isLine || !nearSpot(column, row) ? faintly(below) : " ");
    });
    return `${faint(rowLabel(scale, row, style.units).padStart(SCALE_COLUMNS - 1))} ${cells.join("")}`.trimEnd();
  });
  return [...lines, ...scaleLines(scale, style).map(faint)];
}

/** Width of a column of that picture, m: the step that a field for it needs. */
export function planStepM(
  outline: Room["outline"],
  { units, columnCount }: Pick<TextStyle, "units" | "columnCount">,
): number {
  return planScale(outline, units, columnCount).columnM;
}

/** What the signs of a picture mean, in a line or two. */
export function planLegend(hasField: boolean): string[] {
  return [
    "━ wall, its gaps doors and panes; · the room's edge without a wall",
    ...(hasField ? ["thin lines at 0, 6 and 15 dB; between them x fails, ! thin, o sound, * ample"] : []),
  ];
}

const VERDICT_MARKS = "x!o*";
