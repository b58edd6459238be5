import type { FloorModel } from "../../report/index.js";
import { besideMarks } from "./beside-marks.js";
import { GUIDE, HUE, labels, textWidthPx } from "./drawing.js";
import { element } from "./element.js";
import { linePath } from "./path.js";
import type { DrawnPoint } from "./path.js";
import type { PlanFrame } from "./plan-frame.js";
import { MARK_PX, markGroup, verdictShape } from "./verdict-shape.js";

type Spot = FloorModel["spots"][number];

/** Receivers by their verdicts' marks with their numbers, the transmitter as a triangle, places as lozenges. */
export function planSpots(spots: readonly Spot[], frame: PlanFrame): string[] {
  const marked = spots.map((spot) => ({ spot, at: frame.pointOf(spot.at), text: spot.mark }));
  const texts = besideMarks(marked, { ...frame, apartPx: MARK_PX + 4 });
  const shapes = marked.map(({ spot, at }) =>
    element("g", { class: `spot ${spot.kind}`, "data-mark": spot.mark }, spotShape(spot, at)),
  );
  const numbers = marked.map(({ spot }, index) => {
    const { x, y } = texts[index]!;
    return { x, y: y + 5, text: spot.mark, isStrong: spot.kind !== "receiver" };
  });
  return [
    ...marked.map(({ at, text }, index) => hairLine(text, at, texts[index]!)),
    markGroup(shapes),
    ...[true, false].map((isStrong) =>
      labels(
        { anchor: "middle", isStrong },
        numbers.filter((one) => one.isStrong === isStrong),
      ),
    ),
  ];
}

/** The sign of a spot, to stand in a `markGroup`. */
export function spotShape(
  { kind, workingMarginDb }: Pick<Spot, "kind" | "workingMarginDb">,
  at: DrawnPoint,
): string {
  const { x, y } = at;
  if (kind === "receiver")
    return workingMarginDb === null
      ? element("path", {
          d: linePath([
            { x: x - MARK_PX, y },
            { x: x + MARK_PX, y },
          ]),
        })
      : verdictShape(workingMarginDb, at);
  const r = MARK_PX + 1;
  const corners =
    kind === "transmitter"
      ? [
          { x: x - r, y: y + r * 0.8 },
          { x, y: y - r },
          { x: x + r, y: y + r * 0.8 },
        ]
      : [
          { x: x - r, y },
          { x, y: y - r },
          { x: x + r, y },
          { x, y: y + r },
        ];
  const isFull = kind === "transmitter";
  return element("path", {
    stroke: HUE,
    fill: isFull ? HUE : undefined,
    d: linePath(corners, true),
  });
}

/** Leads to a number or letter that had to go further off. */
export function hairLine(text: string, at: DrawnPoint, to: DrawnPoint): string {
  const isFar = Math.hypot(to.x - at.x, to.y - at.y) > 3 * MARK_PX + textWidthPx(text) / 2;
  return isFar ? element("path", { ...GUIDE, d: linePath([at, to]) }) : "";
}
