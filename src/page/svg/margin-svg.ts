import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { dB, fixed, reachLengths, verdictMark, verdictWord } from "../../report/index.js";
import type { CurvePoint, SystemCurve } from "../../report/index.js";
import { mToFeet, feetToM } from "../../units/index.js";
import { printable } from "../../issues/index.js";
import type { Picture } from "../picture.js";
import { footAxis, sideAxis, tickTexts } from "./axis.js";
import type { Plot } from "./axis.js";
import {
  HUE,
  label,
  labels,
  LEFT_PX,
  LINE_PX,
  pictureOf,
  RIGHT_PX,
  textWidthPx,
  THIN,
  WIDTH_PX,
} from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element, svgNumber } from "./element.js";
import { besideMarks } from "./beside-marks.js";
import { hairLine } from "./plan-spots.js";
import { limitLines, marginTicksDb, MARK_PX, markGroup, verdictKey, verdictShape } from "./verdict-shape.js";

const PLOT: Plot = { leftPx: LEFT_PX, rightPx: WIDTH_PX - RIGHT_PX, topPx: 34, bottomPx: 290 };

interface Scales {
  readonly xOf: (distanceM: number) => number;
  readonly yOf: (marginDb: number) => number;
  readonly furthestM: number;
  readonly lowDb: number;
  readonly highDb: number;
}

/**
 * Working margin over distance: the curve of the weakest receiver's link, the reach, thin lines at the verdict
 * limits, and every receiver by its number where it stands.
 * @param numberOf of a receiver, as the tables and plans have it
 */
export function marginSvg(
  curve: SystemCurve,
  numberOf: (receiver: string) => string,
  words: PictureWords,
): Picture {
  const scales = scalesOf(curve);
  const { yOf, lowDb, highDb } = scales;
  const ticksDb = marginTicksDb(lowDb, highDb);
  return pictureOf({
    ...words,
    description: marginWords(curve),
    heightPx: PLOT.bottomPx + 3 * LINE_PX + 12,
    parts: [
      label(0, 16, "working margin, dB, by distance from the transmitter", { isFaint: true }),
      ...sideAxis(
        PLOT,
        ticksDb.map((db) => ({ atPx: yOf(db), text: fixed(db, 0) })),
      ),
      ...limitLines(PLOT, yOf, (db) => db > lowDb && db < highDb),
      curvePath(curve.points, scales),
      ...reachMark(curve, scales),
      ...receiverMarks(curve, numberOf, scales),
      ...distanceAxis(scales),
      ...verdictKey(0, PLOT.bottomPx + 3 * LINE_PX + 4),
    ],
  });
}

function scalesOf({ receivers, reachM }: SystemCurve): Scales {
  const furthestM = 1.15 * Math.max(5, reachM ?? 0, ...receivers.map(({ distanceM }) => distanceM));
  const margins = receivers.map(({ workingMarginDb }) => workingMarginDb);
  const lowDb = Math.floor((Math.min(-4, ...margins) - 2) / 5) * 5;
  const highDb = Math.ceil((Math.max(18, ...margins) + 2) / 5) * 5;
  return {
    xOf: scaleLinear([0, furthestM], [PLOT.leftPx, PLOT.rightPx]),
    yOf: scaleLinear([lowDb, highDb], [PLOT.bottomPx, PLOT.topPx]),
    ...{ furthestM, lowDb, highDb },
  };
}

/** As far as it lies in the plot; it leaves it upwards near the transmitter and downwards far away. */
function curvePath(points: readonly CurvePoint[], { xOf, yOf, furthestM, lowDb, highDb }: Scales): string {
  const isIn = ({ distanceM, workingMarginDb }: CurvePoint): boolean =>
    distanceM <= furthestM && workingMarginDb >= lowDb && workingMarginDb <= highDb;
  const drawn = line<CurvePoint>()
    .defined(isIn)
    .x(({ distanceM }) => xOf(distanceM))
    .y(({ workingMarginDb }) => yOf(workingMarginDb))
    .digits(1);
  return element("path", { ...THIN, class: "curve", "stroke-width": 2, d: drawn([...points]) ?? "" });
}

function reachMark({ reachM }: SystemCurve, { xOf, yOf }: Scales): string[] {
  if (reachM === null || reachM === 0) return [];
  const [x, y] = [xOf(reachM), yOf(0)];
  const text = `reach ${reachLengths(reachM, "m")}`;
  const isLeft = x + textWidthPx(text) + 10 > PLOT.rightPx;
  return [
    element("path", {
      ...THIN,
      class: "reach",
      stroke: HUE,
      "stroke-width": 2,
      "stroke-dasharray": "5 3",
      d: `M${svgNumber(x)} ${svgNumber(PLOT.topPx)}V${svgNumber(PLOT.bottomPx)}`,
    }),
    element("circle", { cx: x, cy: y, r: 4, fill: HUE }),
    label(x + (isLeft ? -8 : 8), PLOT.topPx + 12, text, { anchor: isLeft ? "end" : "start" }),
  ];
}

/** Each receiver's mark where it stands, its number beside it. */
function receiverMarks(
  { points, receivers }: SystemCurve,
  numberOf: (receiver: string) => string,
  { xOf, yOf }: Scales,
): string[] {
  const placed = receivers.map(({ receiver, distanceM, workingMarginDb }) => ({
    at: { x: xOf(distanceM), y: yOf(workingMarginDb) },
    text: numberOf(receiver),
    workingMarginDb,
  }));
  const lines = points.map(({ distanceM, workingMarginDb }) => ({
    x: xOf(distanceM),
    y: yOf(workingMarginDb),
  }));
  const texts = besideMarks(placed, { ...PLOT, apartPx: MARK_PX + 4, lines });
  const shapes = placed.map(({ at, text, workingMarginDb }) =>
    element("g", { class: "receiver", "data-number": text }, verdictShape(workingMarginDb, at)),
  );
  return [
    ...placed.map(({ at, text }, index) => hairLine(text, at, texts[index]!)),
    markGroup(shapes),
    labels(
      { anchor: "middle" },
      placed.map(({ text }, index) => ({ x: texts[index]!.x, y: texts[index]!.y + 5, text })),
    ),
  ];
}

/** Metres, and feet under them. */
function distanceAxis({ xOf, furthestM }: Scales): string[] {
  const inside = (atPx: number): boolean => atPx < PLOT.rightPx - 24;
  const metres = scaleLinear([0, furthestM], [0, 1])
    .ticks(6)
    .map((m) => ({ atPx: xOf(m), text: String(m) }));
  const feet = scaleLinear([0, mToFeet(furthestM)], [0, 1])
    .ticks(6)
    .map((ft) => ({ atPx: xOf(feetToM(ft)), text: String(ft) }));
  return [
    ...footAxis(
      PLOT,
      metres.filter(({ atPx }) => inside(atPx)),
    ),
    tickTexts(
      feet.filter(({ atPx }) => inside(atPx)),
      PLOT.bottomPx + 2 * LINE_PX,
    ),
    label(PLOT.rightPx, PLOT.bottomPx + LINE_PX, "m", { anchor: "end", isFaint: true }),
    label(PLOT.rightPx, PLOT.bottomPx + 2 * LINE_PX, "ft", { anchor: "end", isFaint: true }),
  ];
}

function marginWords({ receiver, reachM, reachReason, receivers }: SystemCurve): string {
  const reach =
    reachM === null
      ? `There is no reach to state: ${reachReason ?? "not worked out"}.`
      : reachM === 0
        ? "There is no reach: nowhere is the margin 0 dB."
        : `The margin is 0 dB at ${reachLengths(reachM, "m")}.`;
  const each = [...receivers]
    .sort((a, b) => a.workingMarginDb - b.workingMarginDb)
    .map(
      ({ receiver: name, distanceM, workingMarginDb }) =>
        `${printable(name, 40)} at ${fixed(distanceM, 1)} m ${verdictMark(workingMarginDb)} ${dB(workingMarginDb)} (${verdictWord(workingMarginDb)})`,
    );
  return `The curve has gains, walls and interference as at ${printable(receiver, 40)}, the weakest receiver. ${reach} Receivers, weakest first: ${each.join("; ")}.`;
}
