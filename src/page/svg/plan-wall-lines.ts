import { extent } from "d3-array";
import { wallsOfStorey } from "../../report/index.js";
import type { FloorModel } from "../../report/index.js";
import { label, LINE_PX, textWidthPx, THIN } from "./drawing.js";
import { element } from "./element.js";
import type { Attributes } from "./element.js";
import { linePath } from "./path.js";
import type { DrawnPoint } from "./path.js";
import type { PlanFrame } from "./plan-frame.js";

type Wall = FloorModel["walls"][number];
type Build = Wall["build"];
type PlanPoint = Wall["from"];
/** By what a wall does to a plan's reader: what stops radio, what lets some through, panes, and what is only a figure. */
export type WallClass = "heavy" | "light" | "glass" | "stated";

const LIGHT = new Set(["wood", "plywood", "chipboard", "plasterboard", "ceiling-board", "floorboard"]);

/** Of layers the heaviest one counts; a material that isn't known is taken as heavy. */
export function wallClass(build: Build): WallClass {
  if ("lossDb" in build) return "stated";
  const layers = "layers" in build ? build.layers : [build];
  const classes = layers
    .filter(({ material }) => material !== "air")
    .map(({ material }): WallClass => {
      if (material === "glass") return "glass";
      return typeof material === "string" && LIGHT.has(material) ? "light" : "heavy";
    });
  return (["heavy", "light", "glass"] as const).find((one) => classes.includes(one)) ?? "light";
}

const STROKES: Readonly<Record<WallClass, Attributes>> = {
  heavy: { ...THIN, "stroke-width": 5 },
  light: { ...THIN, "stroke-width": 2 },
  glass: { ...THIN, "stroke-width": 1.2 },
  stated: { ...THIN, "stroke-width": 3, "stroke-dasharray": "8 3" },
};
const WORDS: Readonly<Record<WallClass, string>> = {
  heavy: "masonry, metal",
  light: "boards",
  glass: "glass",
  stated: "loss given in dB",
};

/** The room's outline dotted, its storey's walls over it by what they are made of, openings by what fills them. */
export function planWalls(model: FloorModel, { pointOf }: PlanFrame): string[] {
  const edge = { ...THIN, class: "outline", "stroke-dasharray": "1 4", "stroke-opacity": "0.8" };
  return [
    element("path", { ...edge, d: linePath(model.room.outline.map(pointOf), true) }),
    ...piecesOn(model).map(({ from, to, build, kind }) =>
      wallLine(wallClass(build), pointOf(from), pointOf(to), kind),
    ),
  ];
}

interface Piece {
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  readonly build: Build;
  readonly kind: "wall" | "opening";
}

/** What of the storey's walls lies on the plan. */
function piecesOn(model: FloorModel): Piece[] {
  return wallsOfStorey(model)
    .flatMap(piecesOf)
    .filter(({ from, to }) => {
      const [acrossM, upM] = (["x", "y"] as const).map((axis) => {
        const [lowM, highM] = extent(model.room.outline, (corner) => corner[axis]) as [number, number];
        return (
          Math.min(highM, Math.max(from[axis], to[axis])) - Math.max(lowM, Math.min(from[axis], to[axis]))
        );
      }) as [number, number];
      return acrossM >= 0 && upM >= 0 && acrossM + upM > LEAST_M;
    });
}

/** A wall that only touches the room's corner isn't drawn. */
const LEAST_M = 0.01;

/** A wall cut at its openings; one that stands open is left out. */
function piecesOf(wall: Wall): Piece[] {
  const lengthM = Math.hypot(wall.to.x - wall.from.x, wall.to.y - wall.from.y);
  const pieces: Piece[] = [];
  const add = (fromM: number, toM: number, build: Build, kind: Piece["kind"]): void => {
    const isOpen = kind === "opening" && "lossDb" in build && build.lossDb === 0;
    if (toM > fromM && !isOpen)
      pieces.push({
        from: pointAlong(wall, fromM / lengthM),
        to: pointAlong(wall, toM / lengthM),
        build,
        kind,
      });
  };
  let doneM = 0;
  for (const { fromM, toM, build } of [...wall.openings].sort((a, b) => a.fromM - b.fromM)) {
    add(doneM, fromM, wall.build, "wall");
    add(fromM, toM, build, "opening");
    doneM = Math.max(doneM, toM);
  }
  add(doneM, lengthM, wall.build, "wall");
  return pieces;
}

function pointAlong({ from, to }: Wall, shareRatio: number): PlanPoint {
  return { x: from.x + shareRatio * (to.x - from.x), y: from.y + shareRatio * (to.y - from.y) };
}

/** Glass is two thin lines, all else one. */
function wallLine(kind: WallClass, from: DrawnPoint, to: DrawnPoint, what: string): string {
  const attributes = { ...STROKES[kind], class: `${what} ${kind}` };
  if (kind !== "glass") return element("path", { ...attributes, d: linePath([from, to]) });
  const lengthPx = Math.hypot(to.x - from.x, to.y - from.y);
  const [dx, dy] = [(-(to.y - from.y) / lengthPx) * 2, ((to.x - from.x) / lengthPx) * 2];
  const lines = [1, -1].map((side) =>
    linePath([
      { x: from.x + side * dx, y: from.y + side * dy },
      { x: to.x + side * dx, y: to.y + side * dy },
    ]),
  );
  return element("path", { ...attributes, d: lines.join("") });
}

/** A sample of each kind of line that the plan has, with its words, in as many lines of text as it takes. */
export function wallKey(
  model: FloorModel,
  y: number,
  widthPx: number,
): { parts: string[]; bottomPx: number } {
  const used = new Set(piecesOn(model).map(({ build }) => wallClass(build)));
  const parts: string[] = [];
  let [x, line] = [0, y];
  const add = (sample: (from: DrawnPoint, to: DrawnPoint) => string, text: string): void => {
    const needPx = 36 + textWidthPx(text) + 14;
    if (x > 0 && x + needPx > widthPx) [x, line] = [0, line + LINE_PX];
    parts.push(
      sample({ x, y: line - 5 }, { x: x + 28, y: line - 5 }),
      label(x + 36, line, text, { isFaint: true }),
    );
    x += needPx;
  };
  for (const kind of ["heavy", "light", "glass", "stated"] as const)
    if (used.has(kind)) add((from, to) => wallLine(kind, from, to, "sample"), WORDS[kind]);
  add(
    (from, to) => element("path", { ...THIN, "stroke-dasharray": "1 4", d: linePath([from, to]) }),
    "edge without a wall",
  );
  return { parts, bottomPx: line };
}
