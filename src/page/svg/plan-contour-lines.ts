import { contours } from "d3-contour";
import { marginAt, VERDICT_LIMITS_DB } from "../../report/index.js";
import type { FloorModel } from "../../report/index.js";
import { label, textWidthPx, THIN } from "./drawing.js";
import { element } from "./element.js";
import type { Attributes } from "./element.js";
import { linePath } from "./path.js";
import type { DrawnPoint } from "./path.js";
import type { PlanFrame } from "./plan-frame.js";
import { MARK_PX, markGroup, verdictShape } from "./verdict-shape.js";

type Field = NonNullable<FloorModel["field"]>;

/** Cells that the field is continued outwards by: the lines run out under the clip, so none follows the edge. */
const PAD = 2;
/** What stands for an antenna's true null, dB: far under every limit. */
const NULL_DB = -1000;

/** Lines by limit: whole, dashed, dotted. */
const STROKES: readonly Attributes[] = [
  { ...THIN, "stroke-width": 1.6 },
  { ...THIN, "stroke-width": 1.4, "stroke-dasharray": "7 4" },
  { ...THIN, "stroke-width": 1.8, "stroke-dasharray": "0.1 4.5", "stroke-linecap": "round" },
];

/** Thin lines where the margin crosses a verdict limit, to be clipped to the room. */
export function planContours(field: Field, { pointOf }: PlanFrame): string[] {
  const { columnCount, rowCount, from, stepM } = field;
  const grid = contours().size([columnCount + 2 * PAD, rowCount + 2 * PAD]);
  const values = continued(field);
  return VERDICT_LIMITS_DB.flatMap((limitDb, index) => {
    const rings = grid.contour(values, limitDb).coordinates.flat();
    const d = rings
      .map((ring) =>
        linePath(
          ring
            .slice(0, -1)
            .map(([column, row]) =>
              pointOf({ x: from.x + (column! - PAD) * stepM, y: from.y + (row! - PAD) * stepM }),
            ),
          true,
        ),
      )
      .join("");
    return d === "" ? [] : [element("path", { ...STROKES[index], class: `limit-${limitDb}`, d })];
  });
}

/** The field with its edge cells continued outwards, and cells outside the room as their nearest neighbour inside. */
function continued(field: Field): number[] {
  const { columnCount, rowCount } = field;
  const inside = nearestInside(field);
  return Array.from({ length: (columnCount + 2 * PAD) * (rowCount + 2 * PAD) }, (_, index) => {
    const column = (index % (columnCount + 2 * PAD)) - PAD;
    const row = Math.floor(index / (columnCount + 2 * PAD)) - PAD;
    const cell = clamp(row, rowCount) * columnCount + clamp(column, columnCount);
    return Math.max(NULL_DB, inside[cell]!);
  });
}

function clamp(index: number, count: number): number {
  return Math.min(count - 1, Math.max(0, index));
}

/** Every cell's margin; those outside the room take it from a neighbour, ring by ring. */
function nearestInside({ leastMarginDb, columnCount }: Field): number[] {
  const known = [...leastMarginDb];
  let waiting = known.flatMap((marginDb, cell) => (marginDb === null ? [] : [cell]));
  if (waiting.length === 0) return known.map(() => NULL_DB);
  while (waiting.length > 0) {
    const next: number[] = [];
    for (const cell of waiting)
      for (const other of neighboursOf(cell, columnCount, known.length))
        if (known[other] === null) {
          known[other] = known[cell]!;
          next.push(other);
        }
    waiting = next;
  }
  return known.map((marginDb) => marginDb ?? NULL_DB);
}

function neighboursOf(cell: number, columnCount: number, cellCount: number): number[] {
  const column = cell % columnCount;
  return [
    ...(column > 0 ? [cell - 1] : []),
    ...(column < columnCount - 1 ? [cell + 1] : []),
    ...(cell >= columnCount ? [cell - columnCount] : []),
    ...(cell + columnCount < cellCount ? [cell + columnCount] : []),
  ];
}

const EVERY_PX = 64;
const CLEAR_PX = 26;

/** The verdicts' marks here and there over the floor, none near a spot. */
export function floorMarks(field: Field, frame: PlanFrame, spots: readonly DrawnPoint[]): string {
  const { leftPx, topPx, rightPx, bottomPx, scalePx } = frame;
  const { x: leftM, y: bottomM } = field.from;
  const [columns, rows] = [(rightPx - leftPx) / EVERY_PX, (bottomPx - topPx) / EVERY_PX].map((count) =>
    Math.max(1, Math.round(count)),
  ) as [number, number];
  const marks = Array.from({ length: columns * rows }, (_, index) => {
    const x = leftPx + (((index % columns) + 0.5) / columns) * (rightPx - leftPx);
    const y = topPx + ((Math.floor(index / columns) + 0.5) / rows) * (bottomPx - topPx);
    const marginDb = marginAt(field, {
      x: leftM + (x - leftPx) / scalePx,
      y: bottomM + (bottomPx - y) / scalePx,
    });
    const isNear = spots.some((spot) => Math.hypot(spot.x - x, spot.y - y) < CLEAR_PX);
    return marginDb === null || isNear ? "" : verdictShape(marginDb, { x, y });
  });
  return markGroup(marks, true);
}

/** A sample of each line with its limit. */
export function contourKey(y: number): string[] {
  let x = 0;
  return VERDICT_LIMITS_DB.flatMap((limitDb, index) => {
    const start = x;
    const text = index === 0 ? `line at ${limitDb} dB` : `${limitDb} dB`;
    x += 36 + textWidthPx(text) + 20;
    const d = linePath([
      { x: start, y: y - MARK_PX },
      { x: start + 28, y: y - MARK_PX },
    ]);
    return [element("path", { ...STROKES[index], d }), label(start + 36, y, text, { isFaint: true })];
  });
}
