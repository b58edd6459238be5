import { scaleLinear } from "d3-scale";
import { clipped, dB, fixed, VERDICT_LIMITS_DB, verdictMark, verdictWord } from "../../report/index.js";
import type { RoomReport } from "../../report/index.js";
import { printable } from "../../issues/index.js";
import type { Picture } from "../picture.js";
import { footAxis } from "./axis.js";
import { GUIDE, HUE, label, LINE_PX, pictureOf, RIGHT_PX, textWidthPx, THIN, WIDTH_PX } from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element, svgNumber } from "./element.js";
import { linePath } from "./path.js";
import type { DrawnPoint } from "./path.js";
import { limitLine } from "./verdict-shape.js";

const LEFT_PX = 132;
const HEAD_PX = 52;
const ROW_PX = 34;
const R_PX = 6;
/** From a mark to the plot's edge. */
const SIDE_PX = 14;

type State = "empty" | "part" | "full" | "planned";

interface RoomRow {
  readonly name: string;
  readonly marks: readonly {
    readonly state: State;
    readonly workingMarginDb: number | null;
    readonly where: string;
  }[];
  readonly reason: string | null;
}

const WORDS: Readonly<Record<State, string>> = {
  empty: "alone, empty",
  part: "alone, part",
  full: "alone, full",
  planned: "as planned",
};

/** The weakest working margin of every room, empty, full and as planned, on one axis. */
export function roomsSvg(rooms: readonly RoomReport[], words: PictureWords): Picture {
  const rows = rooms.map(rowOf);
  const drawn = rows.flatMap(({ marks }) => marks.flatMap(({ workingMarginDb }) => finite(workingMarginDb)));
  const [lowDb, highDb] = [Math.min(-4, ...drawn) - 2, Math.max(18, ...drawn) + 2];
  const plot = {
    leftPx: LEFT_PX,
    rightPx: WIDTH_PX - RIGHT_PX,
    topPx: HEAD_PX,
    bottomPx: HEAD_PX + ROW_PX * rows.length,
  };
  const xOf = scaleLinear([lowDb, highDb], [plot.leftPx + SIDE_PX, plot.rightPx - SIDE_PX]);
  const ticks = xOf.ticks(6).map((db) => ({ atPx: xOf(db), text: fixed(db, 0) }));
  return pictureOf({
    ...words,
    description: rows.map(rowWords).join(" "),
    heightPx: plot.bottomPx + 2 * LINE_PX + 20,
    parts: [
      ...limitHeads(xOf, plot.topPx, plot.bottomPx),
      ...rows.flatMap((row, index) => rowParts(row, HEAD_PX + (index + 0.5) * ROW_PX, xOf)),
      ...footAxis(plot, ticks),
      label(plot.leftPx - 10, plot.bottomPx + LINE_PX, "dB to spare", { anchor: "end", isFaint: true }),
      ...stateKey(rows, plot.bottomPx + 2 * LINE_PX + 8),
    ],
  });
}

function rowOf({ room, system, alone, joint, reason }: RoomReport): RoomRow {
  const name = system === null || system === room ? room : `${room}, ${system}`;
  const states = alone.map(({ crowd, weakest }) => ({
    state: crowd,
    workingMarginDb: weakest?.workingMarginDb ?? null,
    where: weakest?.receiver ?? "",
  }));
  if (system === null || reason !== null)
    return { name, marks: [], reason: reason ?? "no system works in it" };
  const planned = {
    state: "planned",
    workingMarginDb: joint?.workingMarginDb ?? -Infinity,
    where: joint?.receiver ?? "",
  } as const;
  return { name, marks: [...states, planned], reason: null };
}

/** Thin lines down at the verdict limits, the words of the verdicts between them above. */
function limitHeads(xOf: (db: number) => number, topPx: number, bottomPx: number): string[] {
  const upright = VERDICT_LIMITS_DB.map((db) =>
    limitLine({ x: xOf(db), y: topPx - 6 }, { x: xOf(db), y: bottomPx }),
  );
  return [...upright, ...verdictHeads(xOf, topPx - 12)];
}

/** The verdicts' words over their stretches of the axis; a narrow one's stands a line higher. */
function verdictHeads(xOf: (db: number) => number, y: number): string[] {
  const [least, middle, most] = VERDICT_LIMITS_DB as readonly [number, number, number];
  const between = (lowDb: number, highDb: number): number => (xOf(lowDb) + xOf(highDb)) / 2;
  const faint = { isFaint: true, anchor: "middle" } as const;
  return [
    label(xOf(least) - 8, y, verdictWord(least - 1), { ...faint, anchor: "end" }),
    label(between(least, middle), y - LINE_PX, verdictWord(least), faint),
    label(between(middle, most), y, verdictWord(middle), faint),
    label(xOf(most) + 8, y, verdictWord(most), { ...faint, anchor: "start" }),
  ];
}

function rowParts({ name, marks, reason }: RoomRow, y: number, xOf: (db: number) => number): string[] {
  const line = `M${svgNumber(LEFT_PX)} ${svgNumber(y)}H${svgNumber(WIDTH_PX - RIGHT_PX)}`;
  const head = label(0, y + 5, clipped(printable(name, 60), 15));
  if (reason !== null)
    return [head, label(LEFT_PX, y + 5, clipped(printable(reason, 80), 46), { isFaint: true })];
  const lost = marks.some(({ workingMarginDb }) => workingMarginDb === -Infinity);
  return [
    head,
    element("path", { ...GUIDE, d: line }),
    ...marks.flatMap(({ state, workingMarginDb }) =>
      finite(workingMarginDb).map((db) => stateMark(state, { x: xOf(db), y })),
    ),
    ...(lost ? [label(LEFT_PX, y - 4, "no signal", { isFaint: true })] : []),
  ];
}

function stateMark(state: State, { x, y }: DrawnPoint): string {
  const ring = { ...THIN, "stroke-width": 2, class: `margin ${state}` };
  if (state === "empty") return element("circle", { ...ring, cx: x, cy: y, r: R_PX - 1 });
  if (state === "full")
    return element("circle", { ...ring, cx: x, cy: y, r: R_PX - 1, fill: "currentColor" });
  if (state === "part")
    return element("path", {
      ...ring,
      fill: "currentColor",
      d: `M${svgNumber(x)} ${svgNumber(y - R_PX + 1)}a5 5 0 0 0 0 10Z`,
    });
  const r = R_PX + 5;
  const corners = [
    { x: x - r, y },
    { x, y: y - r },
    { x: x + r, y },
    { x, y: y + r },
  ];
  return element("path", { ...ring, stroke: HUE, "stroke-width": 2.5, d: linePath(corners, true) });
}

function stateKey(rows: readonly RoomRow[], y: number): string[] {
  const used = new Set(rows.flatMap(({ marks }) => marks.map(({ state }) => state)));
  let x = 0;
  return (["empty", "part", "full", "planned"] as const)
    .filter((state) => used.has(state))
    .flatMap((state) => {
      const start = x;
      x += 4 * R_PX + 20 + textWidthPx(WORDS[state]);
      return [
        stateMark(state, { x: start + 2 * R_PX, y: y - 5 }),
        label(start + 4 * R_PX + 4, y, WORDS[state], { isFaint: true }),
      ];
    });
}

function finite(marginDb: number | null): number[] {
  return marginDb !== null && Number.isFinite(marginDb) ? [marginDb] : [];
}

function rowWords({ name, marks, reason }: RoomRow): string {
  const room = printable(name, 60);
  if (reason !== null) return `${room}: ${printable(reason, 120)}.`;
  const each = marks.map(({ state, workingMarginDb, where }) => {
    if (workingMarginDb === null) return `${WORDS[state]} not scanned`;
    if (!Number.isFinite(workingMarginDb)) return `${WORDS[state]} no signal`;
    return `${WORDS[state]} ${verdictMark(workingMarginDb)} ${dB(workingMarginDb)} at ${printable(where, 40)}`;
  });
  return `${room}: ${each.join(", ")}.`;
}
