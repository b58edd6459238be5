import { element, svgNumber } from "./element.js";
import { GUIDE, labels, LINE_PX, THIN } from "./drawing.js";

/** A place that an axis names. */
export interface Tick {
  /** Along the axis, on the drawing. */
  readonly atPx: number;
  readonly text: string;
}

/** The rectangle that a picture plots in. */
export interface Plot {
  readonly leftPx: number;
  readonly rightPx: number;
  readonly topPx: number;
  readonly bottomPx: number;
}

/** A line along the foot with short ticks, their texts beneath and the axis's unit at the end of the text line. */
export function footAxis({ leftPx, rightPx, bottomPx }: Plot, ticks: readonly Tick[]): string[] {
  const marks = ticks.map(({ atPx }) => `M${svgNumber(atPx)} ${svgNumber(bottomPx)}v5`).join("");
  return [
    element("path", {
      ...THIN,
      d: `M${svgNumber(leftPx)} ${svgNumber(bottomPx)}H${svgNumber(rightPx)}${marks}`,
    }),
    tickTexts(ticks, bottomPx + LINE_PX),
  ];
}

/** Texts centred under their ticks. */
export function tickTexts(ticks: readonly Tick[], y: number): string {
  return labels(
    { anchor: "middle", isFaint: true },
    ticks.map(({ atPx, text }) => ({ x: atPx, y, text })),
  );
}

/** Faint lines across at their heights, each with its text on the left. */
export function sideAxis({ leftPx, rightPx }: Plot, ticks: readonly Tick[]): string[] {
  const lines = ticks.map(({ atPx }) => `M${svgNumber(leftPx)} ${svgNumber(atPx)}H${svgNumber(rightPx)}`);
  const texts = ticks.map(({ atPx, text }) => ({ x: leftPx - 8, y: atPx + 5, text }));
  return [element("path", { ...GUIDE, d: lines.join("") }), labels({ anchor: "end", isFaint: true }, texts)];
}
