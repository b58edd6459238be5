import { svgNumber } from "./element.js";

/** A point of a drawing, x to the right, y downwards. */
export interface DrawnPoint {
  readonly x: number;
  readonly y: number;
}

/** The `d` of straight lines from point to point. @example linePath([{ x: 0, y: 1 }, { x: 2, y: 3 }]); // => "M0 1L2 3" */
export function linePath(points: readonly DrawnPoint[], isClosed = false): string {
  const steps = points.map(({ x, y }, index) => `${index === 0 ? "M" : "L"}${svgNumber(x)} ${svgNumber(y)}`);
  return steps.join("") + (isClosed && steps.length > 0 ? "Z" : "");
}

/**
 * The `d` of flat steps down to a foot; neighbours of one height are one step.
 * @param edgesPx where each step begins, and where the last one ends
 * @example stepPath([0, 2, 4, 6], [5, 5, 3], 9); // => "M0 9V5H4V3H6V9Z"
 */
export function stepPath(edgesPx: readonly number[], heightsPx: readonly number[], footPx: number): string {
  const heights = heightsPx.map(svgNumber);
  const steps = heights.map((height, index) =>
    height === heights[index + 1] ? "" : `V${height}H${svgNumber(edgesPx[index + 1]!)}`,
  );
  return `M${svgNumber(edgesPx[0]!)} ${svgNumber(footPx)}${steps.join("")}V${svgNumber(footPx)}Z`;
}

/** The `d` of an upright rectangle. */
export function boxPath({ x, y }: DrawnPoint, widthPx: number, heightPx: number): string {
  return `M${svgNumber(x)} ${svgNumber(y)}h${svgNumber(widthPx)}v${svgNumber(heightPx)}h${svgNumber(-widthPx)}Z`;
}
