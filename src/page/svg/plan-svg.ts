import { clipped, dB, fixed, verdictMark, verdictWord } from "../../report/index.js";
import type { FloorModel } from "../../report/index.js";
import { printable } from "../../issues/index.js";
import type { Picture } from "../picture.js";
import { label, labels, LINE_PX, pictureOf, WIDTH_PX } from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element } from "./element.js";
import { linePath } from "./path.js";
import { contourKey, floorMarks, planContours } from "./plan-contour-lines.js";
import { frameClip, planFrame, scaleBars } from "./plan-frame.js";
import { planSpots, spotShape } from "./plan-spots.js";
import { planWalls, wallKey } from "./plan-wall-lines.js";
import { MARK_PX, markGroup, verdictKey } from "./verdict-shape.js";

type Spot = FloorModel["spots"][number];

/** What the lines beneath a plan say of its spots. */
export interface PlanWords extends PictureWords {
  /** Of the margins: whose they are and from where. */
  readonly margins: string;
}

/**
 * A room from above, to scale: walls by what they are made of, what stands and hangs in it, and thin lines where the
 * margin crosses a verdict limit; beneath, the scale, what the signs mean and every spot by name.
 */
export function planSvg(model: FloorModel, words: PlanWords): Picture {
  const { name, title, margins } = words;
  const { room, field, spots } = model;
  const frame = planFrame(room.outline, 0);
  const clip = { frame: `${name}-frame`, room: `${name}-room` };
  const outline = element("path", { d: linePath(room.outline.map(frame.pointOf), true) });
  const key = planKeyLines(model, frame.bottomPx + 14, margins);
  const floor =
    field === null
      ? []
      : [
          ...planContours(field, frame),
          floorMarks(
            field,
            frame,
            spots.map(({ at }) => frame.pointOf(at)),
          ),
        ];
  return pictureOf({
    name,
    title,
    description: planWordsOf(model, margins),
    heightPx: key.bottomPx + 10,
    parts: [
      element("defs", {}, frameClip(clip.frame, frame), element("clipPath", { id: clip.room }, outline)),
      ...(floor.length === 0 ? [] : [element("g", { "clip-path": `url(#${clip.room})` }, ...floor)]),
      element("g", { "clip-path": `url(#${clip.frame})` }, ...planWalls(model, frame)),
      ...planSpots(spots, frame),
      ...scaleBars(frame, frame.bottomPx + 14 + LINE_PX),
      ...key.parts,
    ],
  });
}

interface Lines {
  readonly parts: readonly string[];
  readonly bottomPx: number;
}

function planKeyLines(model: FloorModel, topPx: number, margins: string): Lines {
  const walls = wallKey(model, topPx + 2.3 * LINE_PX, WIDTH_PX);
  const limits = model.field === null ? [] : contourKey(walls.bottomPx + LINE_PX);
  const verdictsPx = walls.bottomPx + (model.field === null ? 1 : 2) * LINE_PX;
  const head = label(0, verdictsPx + 1.4 * LINE_PX, margins, { isFaint: true });
  const list = spotList(model.spots, verdictsPx + 2.4 * LINE_PX);
  return {
    parts: [...walls.parts, ...limits, ...verdictKey(0, verdictsPx), head, ...list.parts],
    bottomPx: list.bottomPx,
  };
}

const COLUMN_COUNT = 2;
const COLUMN_PX = WIDTH_PX / COLUMN_COUNT;
const LONGEST_NAME = 14;
/** From a column's left edge. */
const [MARK_END_PX, SIGN_PX, MARGIN_END_PX, NAME_PX] = [24, 38, 122, 134];

/** Every spot: its number, its sign, its margin and its name, read downwards. */
function spotList(spots: readonly Spot[], topPx: number): Lines {
  const perColumn = Math.ceil(spots.length / COLUMN_COUNT);
  const placed = spots.map((spot, index) => ({
    spot,
    x: Math.floor(index / perColumn) * COLUMN_PX,
    y: topPx + (index % perColumn) * LINE_PX,
  }));
  const marks = (isStrong: boolean): string =>
    labels(
      { anchor: "end", isStrong },
      placed
        .filter(({ spot }) => (spot.kind !== "receiver") === isStrong)
        .map(({ spot, x, y }) => ({ x: x + MARK_END_PX, y, text: spot.mark })),
    );
  const margins = placed.flatMap(({ spot: { workingMarginDb }, x, y }) =>
    workingMarginDb === null ? [] : [{ x: x + MARGIN_END_PX, y, text: dB(workingMarginDb) }],
  );
  const names = placed.map(({ spot, x, y }) => ({
    x: x + NAME_PX,
    y,
    text: clipped(printable(spot.name, 60), LONGEST_NAME),
  }));
  const parts = [
    marks(true),
    marks(false),
    markGroup(placed.map(({ spot, x, y }) => spotShape(spot, { x: x + SIGN_PX, y: y - MARK_PX }))),
    labels({ anchor: "end" }, margins),
    labels({ isFaint: true }, names),
  ];
  return { parts, bottomPx: topPx + Math.max(0, perColumn - 1) * LINE_PX };
}

function planWordsOf({ room, spots, field }: FloorModel, margins: string): string {
  const each = spots.map(({ mark, kind, name, workingMarginDb, at }) => {
    const what =
      kind === "receiver" ? `receiver ${mark}` : kind === "transmitter" ? "transmitter T" : `place ${mark}`;
    const where = `at x ${fixed(at.x, 1)} m, y ${fixed(at.y, 1)} m`;
    const spare =
      workingMarginDb === null
        ? ""
        : `, ${verdictMark(workingMarginDb)} ${verdictWord(workingMarginDb)}, ${dB(workingMarginDb)}`;
    return `${what} ${printable(name, 40)} ${where}${spare}`;
  });
  const lines = field === null ? "" : " Thin lines where the margin is 0, 6 and 15 dB.";
  return `${printable(room.name, 40)} to scale; x to the right, y upwards, as in the venue file. ${margins}: ${each.join("; ")}.${lines}`;
}
