import { max, min } from "d3-array";
import type { FloorModel } from "../../report/index.js";
import { feetToM } from "../../units/index.js";
import { label, THIN, WIDTH_PX } from "./drawing.js";
import { element, svgNumber } from "./element.js";
import type { DrawnPoint } from "./path.js";

type PlanPoint = FloorModel["room"]["outline"][number];

/** How a room lies on the drawing: to scale, x to the right, y upwards. */
export interface PlanFrame {
  /** Of the drawing for a metre. */
  readonly scalePx: number;
  readonly leftPx: number;
  readonly topPx: number;
  readonly rightPx: number;
  readonly bottomPx: number;
  readonly pointOf: (at: PlanPoint) => DrawnPoint;
}

/** Around the room, for walls and marks that lie on its edge. */
const EDGE_PX = 14;
/** Half the heaviest wall. */
const WALL_PX = 3;
const MOST_HEIGHT_PX = 420;

/** The largest scale at which a room fits. */
export function planFrame(outline: readonly PlanPoint[], topPx: number): PlanFrame {
  const [leftM, rightM] = [min(outline, ({ x }) => x)!, max(outline, ({ x }) => x)!];
  const [bottomM, topM] = [min(outline, ({ y }) => y)!, max(outline, ({ y }) => y)!];
  const scalePx = Math.min((WIDTH_PX - 2 * EDGE_PX) / (rightM - leftM), MOST_HEIGHT_PX / (topM - bottomM));
  const leftPx = (WIDTH_PX - (rightM - leftM) * scalePx) / 2;
  return {
    scalePx,
    leftPx,
    topPx: topPx + EDGE_PX,
    rightPx: leftPx + (rightM - leftM) * scalePx,
    bottomPx: topPx + EDGE_PX + (topM - bottomM) * scalePx,
    pointOf: ({ x, y }) => ({ x: leftPx + (x - leftM) * scalePx, y: topPx + EDGE_PX + (topM - y) * scalePx }),
  };
}

/** The clip of what lies on the plan, walls on its edge whole. */
export function frameClip(id: string, { leftPx, rightPx, topPx, bottomPx }: PlanFrame): string {
  const box = {
    x: leftPx - WALL_PX,
    y: topPx - WALL_PX,
    width: rightPx - leftPx + 2 * WALL_PX,
    height: bottomPx - topPx + 2 * WALL_PX,
  };
  return element("clipPath", { id }, element("rect", box));
}

const LENGTHS = [0.5, 1, 2, 5, 10, 20, 50, 100, 200];
const LONGEST_PX = 170;

/** A bar of round metres and, beneath it, one of round feet. */
export function scaleBars({ scalePx }: PlanFrame, y: number): string[] {
  return (["m", "ft"] as const).flatMap((unit, index) => {
    const pxOf = (length: number): number => (unit === "m" ? length : feetToM(length)) * scalePx;
    const length = LENGTHS.filter((one) => pxOf(one) <= LONGEST_PX).pop() ?? LENGTHS[0]!;
    const [x, top] = [1 + index * 270, y - 5];
    const d = `M${svgNumber(x)} ${svgNumber(top - 4)}v8m0 -4h${svgNumber(pxOf(length))}m0 -4v8`;
    return [
      element("path", { ...THIN, class: `scale ${unit}`, "stroke-width": 1.5, d }),
      label(x + pxOf(length) + 8, y, `${length} ${unit}`, { isFaint: true }),
    ];
  });
}
