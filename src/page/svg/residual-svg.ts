import { scaleLinear } from "d3-scale";
import { dB, distanceTicks, fixed, logShareRatio, residualScale } from "../../report/index.js";
import type { PlotPoint, ResidualScale } from "../../report/index.js";
import type { Picture } from "../picture.js";
import { footAxis, sideAxis, tickTexts } from "./axis.js";
import type { Plot, Tick } from "./axis.js";
import { label, LEFT_PX, LINE_PX, pictureOf, RIGHT_PX, textWidthPx, THIN, WIDTH_PX } from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element, svgNumber } from "./element.js";
import { boxPath, linePath } from "./path.js";
import type { DrawnPoint } from "./path.js";

const PLOT: Plot = { leftPx: LEFT_PX + 8, rightPx: WIDTH_PX - RIGHT_PX - 20, topPx: 36, bottomPx: 226 };

/**
 * Residuals of a fit: distance across by its logarithm, dB up, a line at zero.
 * @param points at least one, distances > 0
 */
export function residualSvg(points: readonly PlotPoint[], words: PictureWords): Picture {
  const scale = residualScale(points);
  const yOf = scaleLinear([-scale.topDb, scale.topDb], [PLOT.bottomPx, PLOT.topPx]);
  const xOf = (distanceM: number): number =>
    PLOT.leftPx + 8 + logShareRatio(scale, distanceM) * (PLOT.rightPx - PLOT.leftPx - 8);
  const ticksDb = [-1, -0.5, 0, 0.5, 1].map((share) => share * scale.topDb);
  return pictureOf({
    ...words,
    description: residualWords(points, scale),
    heightPx: PLOT.bottomPx + 3 * LINE_PX + 10,
    parts: [
      label(0, 16, "measured loss less fitted, dB, by distance", { isFaint: true }),
      ...sideAxis(
        PLOT,
        ticksDb.map((db) => ({ atPx: yOf(db), text: `${db > 0 ? "+" : ""}${fixed(db, 0)}` })),
      ),
      element("path", {
        ...THIN,
        d: `M${svgNumber(PLOT.leftPx)} ${svgNumber(yOf(0))}H${svgNumber(WIDTH_PX - RIGHT_PX)}`,
      }),
      ...points.map(({ distanceM, residualDb, mark }) =>
        pointMark(mark, { x: xOf(distanceM), y: yOf(residualDb) }),
      ),
      ...footAxis({ ...PLOT, rightPx: WIDTH_PX - RIGHT_PX }, ticksIn(scale, "m", xOf)),
      tickTexts(ticksIn(scale, "ft", xOf), PLOT.bottomPx + 2 * LINE_PX),
      ...markKey(points, PLOT.bottomPx + 3 * LINE_PX + 4),
    ],
  });
}

/** As many as have room. */
function ticksIn(scale: ResidualScale, unit: "m" | "ft", xOf: (distanceM: number) => number): Tick[] {
  const shown: Tick[] = [];
  for (const { label: text, distanceM } of distanceTicks(scale, unit)) {
    const last = shown[shown.length - 1];
    const needPx = (textWidthPx(text) + textWidthPx(last?.text ?? "")) / 2 + 6;
    if (last === undefined || xOf(distanceM) - last.atPx >= needPx)
      shown.push({ atPx: xOf(distanceM), text });
  }
  return shown;
}

const R_PX = 4;

function pointMark(mark: PlotPoint["mark"], { x, y }: DrawnPoint): string {
  const thin = { ...THIN, "stroke-width": 1.5, class: "reading" };
  if (mark === "o") return element("circle", { ...thin, cx: x, cy: y, r: R_PX });
  if (mark === "#")
    return element("path", {
      ...thin,
      fill: "currentColor",
      d: boxPath({ x: x - R_PX, y: y - R_PX }, 2 * R_PX, 2 * R_PX),
    });
  const corners = [
    { x: x - R_PX, y: y + R_PX },
    { x, y: y - R_PX },
    { x: x + R_PX, y: y + R_PX },
  ];
  return element("path", { ...thin, d: linePath(corners, true) });
}

const MARK_WORDS = { o: "a reading", "^": "not heard: there or above", "#": "outlier" } as const;

function markKey(points: readonly PlotPoint[], y: number): string[] {
  let x = 0;
  return (["o", "^", "#"] as const)
    .filter((mark) => points.some((one) => one.mark === mark))
    .flatMap((mark) => {
      const start = x;
      x += 2 * R_PX + 18 + textWidthPx(MARK_WORDS[mark]);
      return [
        pointMark(mark, { x: start + R_PX + 1, y: y - 5 }),
        label(start + 2 * R_PX + 8, y, MARK_WORDS[mark], { isFaint: true }),
      ];
    });
}

function residualWords(points: readonly PlotPoint[], { nearestM, furthestM }: ResidualScale): string {
  const heard = points.filter(({ mark }) => mark !== "^");
  const most = points.reduce((far, one) => (Math.abs(one.residualDb) > Math.abs(far.residualDb) ? one : far));
  const unheard = points.length - heard.length;
  return `${points.length} readings from ${fixed(nearestM, 1)} to ${fixed(furthestM, 1)} m${unheard === 0 ? "" : `, ${unheard} not heard`}; furthest off the model: ${dB(most.residualDb)} at ${fixed(most.distanceM, 1)} m. Up is more loss.`;
}
