import {
  newDays,
  rowClock,
  shadeEdgesDbm,
  shadeIndex,
  shadeWords,
  spectrogramHead,
} from "../../report/index.js";
import type { Spectrogram } from "../../report/index.js";
import type { Picture } from "../picture.js";
import { frequencyAxis, frequencyScale } from "./band-axis.js";
import { GUIDE, label, LINE_PX, pictureOf, RIGHT_PX, THIN, WIDTH_PX } from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element } from "./element.js";
import { boxPath } from "./path.js";

const TOP_PX = 28;
const ROW_PX = 12;
/** Opacity of the shades, the strongest first. */
const SHADES = ["0.92", "0.6", "0.34", "0.14"];
/** Columns for a clock with seconds. */
const CLOCK_PX = 78;

/**
 * One power sweep in greys: time downwards, frequency across; each cell the highest in one MHz of any pass in its row.
 * @param spoiltDbm the strongest shade is above this level, rounded to a whole dB
 */
export function spectrogramSvg(picture: Spectrogram, spoiltDbm: number, words: PictureWords): Picture {
  const bottomPx = TOP_PX + ROW_PX * picture.rows.length;
  const columnCount = picture.rows[0]?.maxDbm.length ?? 0;
  const endMhz = picture.startMhz + picture.columnMhz * columnCount;
  const plot = { leftPx: CLOCK_PX, rightPx: WIDTH_PX - RIGHT_PX, topPx: TOP_PX, bottomPx };
  const xOf = frequencyScale(plot, picture.startMhz, endMhz);
  return pictureOf({
    ...words,
    description: spectrogramWords(picture, spoiltDbm),
    heightPx: bottomPx + 5 * LINE_PX,
    parts: [
      label(0, 16, `UTC by MHz: ${spectrogramHead(picture)}`, { isFaint: true }),
      ...shadePaths(picture, spoiltDbm, xOf),
      ...clocks(picture),
      ...frequencyAxis(plot, picture.startMhz, endMhz),
      ...shadeKey(spoiltDbm, bottomPx + 2 * LINE_PX + 12),
    ],
  });
}

/** One path a shade: runs of neighbours as one box. Levels that were not read are crossed out. */
function shadePaths(picture: Spectrogram, spoiltDbm: number, xOf: (mhz: number) => number): string[] {
  const shades = shadeEdgesDbm(spoiltDbm).map((_, shade) =>
    element("path", {
      class: `shade-${shade}`,
      "fill-opacity": SHADES[shade]!,
      "shape-rendering": "crispEdges",
      d: runs(picture, xOf, (levelDbm) => levelDbm !== null && shadeIndex(levelDbm, spoiltDbm) === shade),
    }),
  );
  const unread = runs(picture, xOf, (levelDbm) => levelDbm === null);
  return unread === ""
    ? shades
    : [...shades, element("path", { ...THIN, class: "unread", "stroke-dasharray": "1 3", d: unread })];
}

function runs(
  { rows, startMhz, columnMhz }: Spectrogram,
  xOf: (mhz: number) => number,
  isIn: (levelDbm: number | null) => boolean,
): string {
  const boxes: string[] = [];
  rows.forEach(({ maxDbm }, row) => {
    for (let from = 0; from < maxDbm.length; from++) {
      if (!isIn(maxDbm[from]!)) continue;
      let to = from + 1;
      while (to < maxDbm.length && isIn(maxDbm[to]!)) to++;
      const [x, end] = [xOf(startMhz + from * columnMhz), xOf(startMhz + to * columnMhz)];
      boxes.push(boxPath({ x, y: TOP_PX + row * ROW_PX }, end - x, ROW_PX));
      from = to;
    }
  });
  return boxes.join("");
}

/** The clock of every other row that has room, and each new day. */
function clocks(picture: Spectrogram): string[] {
  const days = newDays(picture);
  return picture.rows.flatMap((row, index) => {
    const y = TOP_PX + index * ROW_PX;
    if (index % 2 !== 0) return [];
    const day = days[index] ?? "";
    return [
      element("path", { ...GUIDE, d: boxPath({ x: CLOCK_PX - 5, y }, 5, 0) }),
      label(CLOCK_PX - 7, y + 11, day === "" ? rowClock(row) : day.slice(5), {
        anchor: "end",
        isFaint: true,
      }),
    ];
  });
}

/** A square of each shade with its level, the strongest on a line of its own. */
function shadeKey(spoiltDbm: number, y: number): string[] {
  const squares = shadeWords(spoiltDbm).flatMap((text, shade) => {
    const at = { x: shade === 0 ? 0 : (shade - 1) * 120, y: shade === 0 ? y : y + LINE_PX };
    return [
      element("path", { d: boxPath({ x: at.x, y: at.y - 12 }, 14, 14), "fill-opacity": SHADES[shade]! }),
      label(at.x + 20, at.y, text, { isFaint: true }),
    ];
  });
  const rest = ["blank: less", "dashed: not swept; each cell the highest of any pass"];
  return [
    ...squares,
    label(360, y + LINE_PX, rest[0]!, { isFaint: true }),
    label(0, y + 2 * LINE_PX, rest[1]!, { isFaint: true }),
  ];
}

function spectrogramWords(picture: Spectrogram, spoiltDbm: number): string {
  const spoilt = picture.rows.reduce(
    (sum, { maxDbm }) =>
      sum + maxDbm.filter((level) => level !== null && shadeIndex(level, spoiltDbm) === 0).length,
    0,
  );
  const read = picture.rows.reduce(
    (sum, { maxDbm }) => sum + maxDbm.filter((level) => level !== null).length,
    0,
  );
  const first = picture.rows[0] === undefined ? "" : ` from ${rowClock(picture.rows[0])} UTC`;
  return `${spectrogramHead(picture)}${first}. ${spoilt} of ${read} cells of ${picture.columnMhz} MHz hold a level that spoils the receiver, over ${Math.round(spoiltDbm)} dBm in one MHz.`;
}
