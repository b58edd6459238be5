import { range } from "d3-array";
import { scaleLinear } from "d3-scale";
import { BUSY_STEP_RATIO, busyColumns, busySpokenWords, wholePercent } from "../../report/index.js";
import type { BusyCell, BusyColumn } from "../../report/index.js";
import type { Picture } from "../picture.js";
import { sideAxis } from "./axis.js";
import type { Plot } from "./axis.js";
import { frequencyAxis, frequencyScale } from "./band-axis.js";
import { label, LEFT_PX, LINE_PX, pictureOf, RIGHT_PX, THIN, WIDTH_PX } from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element } from "./element.js";
import { boxPath } from "./path.js";

const PLOT: Plot = { leftPx: LEFT_PX + 18, rightPx: WIDTH_PX - RIGHT_PX, topPx: 34, bottomPx: 170 };

/**
 * Flat bars of the share of time in which a receiver here would be spoilt; a column for two MHz, the busier counts.
 * @param cells at least one
 */
export function busySvg(cells: readonly BusyCell[], words: PictureWords): Picture {
  const columns = busyColumns(cells);
  const [startMhz, endMhz] = [columns[0]!.fromMhz, columns[columns.length - 1]!.toMhz];
  const yOf = scaleLinear([0, 1], [PLOT.bottomPx, PLOT.topPx]);
  const xOf = frequencyScale(PLOT, startMhz, endMhz);
  const bars = columns.map(({ fromMhz, toMhz, busyRatio }) => {
    const [x, y] = [xOf(fromMhz), yOf(busyRatio ?? 0)];
    return busyRatio === null ? "" : boxPath({ x, y }, xOf(toMhz) - x, PLOT.bottomPx - y);
  });
  const ticks = range(0, 1 + BUSY_STEP_RATIO / 2, BUSY_STEP_RATIO);
  return pictureOf({
    ...words,
    description: busyWords(columns, cells),
    heightPx: PLOT.bottomPx + LINE_PX + 10,
    parts: [
      label(0, 16, "share of time, by frequency in MHz", { isFaint: true }),
      ...sideAxis(
        PLOT,
        ticks.map((ratio) => ({ atPx: yOf(ratio), text: wholePercent(ratio) })),
      ),
      element("path", {
        class: "busy",
        d: bars.join(""),
        "fill-opacity": "0.45",
        "shape-rendering": "crispEdges",
      }),
      ...unscanned(columns, xOf),
      ...frequencyAxis(PLOT, startMhz, endMhz),
    ],
  });
}

/** Dashed boxes and a question mark where nothing was scanned. */
function unscanned(columns: readonly BusyColumn[], xOf: (mhz: number) => number): string[] {
  const heightPx = LINE_PX;
  return columns
    .filter(({ busyRatio }) => busyRatio === null)
    .map(({ fromMhz, toMhz }) => {
      const x = xOf(fromMhz);
      const d = boxPath({ x, y: PLOT.bottomPx - heightPx }, xOf(toMhz) - x, heightPx);
      return element("path", { ...THIN, class: "unscanned", "stroke-dasharray": "1 3", d });
    });
}

function busyWords(columns: readonly BusyColumn[], cells: readonly BusyCell[]): string {
  const known = columns.flatMap(({ busyRatio, ...where }) =>
    busyRatio === null ? [] : [{ ...where, busyRatio }],
  );
  if (known.length === 0) return "Nothing was scanned in dBm.";
  const busiest = known.reduce((most, one) => (one.busyRatio > most.busyRatio ? one : most));
  const free = known.filter(({ busyRatio }) => busyRatio === 0).length;
  const open = columns.length - known.length;
  return [
    `Busiest: ${busiest.fromMhz}–${busiest.toMhz} MHz, ${wholePercent(busiest.busyRatio)} of the time.`,
    `${free} of ${columns.length} columns of 2 MHz are never spoilt${open === 0 ? "" : `, ${open} were not scanned`}.`,
    ...busySpokenWords(cells),
  ].join(" ");
}
