import { range } from "d3-array";
import { VERDICT_LIMITS_DB, verdictMark, verdictWord } from "../../report/index.js";
import { element } from "./element.js";
import { GUIDE, labels, textWidthPx } from "./drawing.js";
import { linePath } from "./path.js";
import type { DrawnPoint } from "./path.js";

/** Half the height of a mark. */
export const MARK_PX = 5;

/**
 * The mark of a working margin as lines: two crossed for fails, a bar over a dot for thin, a ring for sound, a wheel
 * of six spokes for ample; the same four marks as in text.
 */
export function verdictShape(workingMarginDb: number, { x, y }: DrawnPoint): string {
  const mark = verdictMark(workingMarginDb);
  if (mark === "o") return element("circle", { cx: x, cy: y, r: MARK_PX });
  if (mark !== "!") return element("path", { d: spokes(mark === "x" ? [45, 135] : [30, 90, 150], x, y) });
  const bar = linePath([
    { x, y: y - MARK_PX - 1 },
    { x, y: y + 1 },
  ]);
  return element("path", { d: bar }) + element("circle", { cx: x, cy: y + MARK_PX, r: DOT_PX });
}

/** With its stroke a dot is a little wider than a bar. */
const DOT_PX = 0.5;

/** Shapes of marks with the strokes that all of them have. */
export function markGroup(shapes: readonly string[], isFaint = false): string {
  const stroke = {
    stroke: "currentColor",
    "stroke-width": isFaint ? 1.2 : 2,
    "stroke-opacity": isFaint ? "0.4" : undefined,
    "stroke-linecap": "round",
    fill: "none",
  };
  return element("g", stroke, ...shapes);
}

/** Lines through a point, each as long as a mark is high. */
function spokes(angles: readonly number[], x: number, y: number): string {
  return angles
    .map((angle) => {
      const [dx, dy] = [
        MARK_PX * Math.cos((angle * Math.PI) / 180),
        MARK_PX * Math.sin((angle * Math.PI) / 180),
      ];
      return linePath([
        { x: x - dx * REACH, y: y - dy * REACH },
        { x: x + dx * REACH, y: y + dy * REACH },
      ]);
    })
    .join("");
}

/** Spokes reach a little further than a ring of the same mark. */
const REACH = 1.15;

/** What the marks mean: each mark with its word and the margin from which it holds. */
export function verdictKey(x: number, y: number): string[] {
  const samples = [VERDICT_LIMITS_DB[0]! - 1, ...VERDICT_LIMITS_DB];
  let left = x;
  const each = samples.map((marginDb, index) => {
    const words =
      verdictWord(marginDb) +
      (index === 0 ? "" : ` from ${marginDb}${index === samples.length - 1 ? " dB" : ""}`);
    const start = left;
    left += 2 * MARK_PX + 6 + textWidthPx(words) + 10;
    return {
      shape: verdictShape(marginDb, { x: start + MARK_PX, y: y - MARK_PX }),
      text: { x: start + 2 * MARK_PX + 6, y, text: words },
    };
  });
  return [
    markGroup(each.map(({ shape }) => shape)),
    labels(
      { isFaint: true },
      each.map(({ text }) => text),
    ),
  ];
}

/** Thin lines across a plot at the verdict limits inside it. */
export function limitLines(
  { leftPx, rightPx }: { readonly leftPx: number; readonly rightPx: number },
  yOf: (marginDb: number) => number,
  isInside: (marginDb: number) => boolean,
): string[] {
  return VERDICT_LIMITS_DB.filter(isInside).map((limitDb) => {
    const y = yOf(limitDb);
    return limitLine({ x: leftPx, y }, { x: rightPx, y });
  });
}

/** One of them, wherever it runs. */
export function limitLine(from: DrawnPoint, to: DrawnPoint): string {
  return element("path", { ...GUIDE, class: "limit", "stroke-opacity": "0.7", d: linePath([from, to]) });
}

/** The verdict limits, and whole tens beyond them: what a scale of margins names. */
export function marginTicksDb(lowDb: number, highDb: number): number[] {
  const [least, most] = [VERDICT_LIMITS_DB[0]!, VERDICT_LIMITS_DB[VERDICT_LIMITS_DB.length - 1]!];
  const tens = range(Math.ceil(lowDb / 10) * 10, highDb + 1, 10).filter((db) => db < least || db > most);
  return [...VERDICT_LIMITS_DB, ...tens];
}
