/** A room's plan read back against the coordinates that went in. */
import { describe, expect, test } from "vitest";
import type { FloorModel, FloorSpot } from "../../../src/report/index.js";
import { planSvg } from "../../../src/page/svg/plan-svg.js";
import { wallClass } from "../../../src/page/svg/plan-wall-lines.js";
import type { MarginField } from "../../../src/venue/index.js";
import { rectangle, room, wall } from "../../helpers/venues.js";
import { allOf, boxOf, middleOf, ofClass, pathPoints, readSvg, textsOf, theOne } from "./read-svg.js";
import type { Point, SvgElement } from "./read-svg.js";

const words = { name: "floor-hall", title: "hall", margins: "Working margin" };
/** Not at the origin, so that a forgotten offset shows. */
const hall = room("hall", rectangle(-3, 5, 27, 23));
const receiver = (
  mark: string,
  x: number,
  y: number,
  workingMarginDb: number | null,
  name = mark,
): FloorSpot => ({
  ...{ kind: "receiver", mark, at: { x, y }, name, workingMarginDb },
});
const stands: FloorSpot = {
  kind: "transmitter",
  mark: "T",
  at: { x: 5, y: 10 },
  name: "booth",
  workingMarginDb: null,
};
const base: FloorModel = { room: hall, walls: [], spots: [], field: null };
const drawn = (more: Partial<FloorModel>): SvgElement => readSvg(planSvg({ ...base, ...more }, words).svg);

/** From the drawing's own outline: 30 m wide, 18 m deep. */
function toMetres(root: SvgElement): { scale: number; at: (point: Point) => Point } {
  const { left, right, top, bottom } = boxOf(theOne(root, "outline"));
  const scale = (right - left) / 30;
  expect(Math.abs(scale - (bottom - top) / 18)).toBeLessThan(0.02);
  return { scale, at: ({ x, y }) => ({ x: -3 + (x - left) / scale, y: 5 + (bottom - y) / scale }) };
}

function fieldOf(marginDb: (x: number, y: number) => number | null): MarginField {
  const leastMarginDb = Array.from({ length: 60 * 36 }, (_, index) =>
    marginDb(-3 + ((index % 60) + 0.5) / 2, 5 + (Math.floor(index / 60) + 0.5) / 2),
  );
  return { from: { x: -3, y: 5 }, stepM: 0.5, columnCount: 60, rowCount: 36, leastMarginDb };
}

describe("spots", () => {
  const root = drawn({
    spots: [
      stands,
      receiver("1", 8, 10, -3.2),
      receiver("2", 5, 16, 4),
      receiver("3", 20, 8, 8),
      receiver("4", 12, 20, 16),
      receiver("5", 1, 20, null),
    ],
  });
  const spot = (mark: string): SvgElement =>
    ofClass(root, "spot").find(({ attributes }) => attributes.get("data-mark") === mark)!;

  test("stand to scale: 3 m to the right is 3 × the scale to the right, 6 m up is 6 × the scale up", () => {
    const { scale, at } = toMetres(root);
    const [t, one, two] = ["T", "1", "2"].map((mark) => middleOf(spot(mark)));
    expect(Math.abs(one!.x - t!.x - 3 * scale)).toBeLessThan(0.3);
    expect(Math.abs(middleOf(spot("3")).x - one!.x - 12 * scale)).toBeLessThan(0.3);
    expect(Math.abs(t!.x - two!.x)).toBeLessThan(0.3);
    expect(Math.abs(at(one!).y - 10)).toBeLessThan(0.05);
    expect(Math.abs(at(middleOf(spot("4"))).x - 12) + Math.abs(at(middleOf(spot("4"))).y - 20)).toBeLessThan(
      0.1,
    );
  });
  test("have the shapes of their verdicts: two strokes, a bar over a dot, a ring, six spokes, a dash", () => {
    const shape = (mark: string): string =>
      spot(mark)
        .children.map((part) => (part.name === "circle" ? "o" : String(pathPoints(part).length / 2)))
        .join("+");
    expect(["1", "2", "3", "4", "5"].map(shape)).toEqual(["2", "1+o", "o", "3", "1"]);
  });
  test("have their numbers beside them, and none over another's", () => {
    const texts = textsOf(root).slice(0, 6);
    expect(texts.map(({ text }) => text)).toEqual(["T", "1", "2", "3", "4", "5"]);
    for (const { text, x, y } of texts) {
      const { x: markX, y: markY } = middleOf(spot(text));
      expect(Math.hypot(x - markX, y - 5 - markY)).toBeLessThan(30);
    }
  });
  test("are listed beneath with their margins and names, hostile ones made harmless", () => {
    const name = `<img src=x onerror=alert(1)>`;
    const listed = drawn({ spots: [receiver("1", 8, 10, -3.25, name)] });
    const texts = textsOf(listed).map(({ text }) => text);
    expect(texts).toContain("-3.3 dB");
    expect(texts.some((text) => text.startsWith("<img src=x"))).toBe(true);
    expect(allOf(listed).some((part) => part.name === "img")).toBe(false);
    expect(planSvg({ ...base, spots: [receiver("1", 8, 10, 7.21)] }, words).description).toContain(
      "receiver 1 1 at x 8.0 m, y 10.0 m, o sound, 7.2 dB",
    );
  });
});

describe("walls", () => {
  const brick = { material: "brick", thicknessM: 0.3 };
  const glass = { material: "glass", thicknessM: 0.006 };
  const south = wall({ x: -3, y: 5 }, { x: 27, y: 5 }, brick, {
    openings: [
      { fromM: 10, toM: 13, bottomM: 0, topM: 2, build: { lossDb: 0 } },
      { fromM: 20, toM: 22, bottomM: 0, topM: 2, build: glass },
    ],
  });

  test("stand where they are, open where they are open, and show what fills an opening", () => {
    const root = drawn({ walls: [south] });
    const { at } = toMetres(root);
    const pieces = ofClass(root, "wall").map((piece) => pathPoints(piece).map(at));
    const ends = pieces.map((piece) => piece.map(({ x }) => Math.round(x * 10) / 10));
    expect(ends).toEqual([
      [-3, 7],
      [10, 17],
      [19, 27],
    ]);
    for (const { y } of pieces.flat()) expect(Math.abs(y - 5)).toBeLessThan(0.02);
    const pane = theOne(root, "opening");
    expect(pane.attributes.get("class")).toContain("glass");
    expect(pathPoints(pane)).toHaveLength(4);
  });
  test("of another storey, or that only touch a corner, are left out", () => {
    const upstairs = { ...south, storey: "first" };
    const beyond = wall({ x: 27, y: 23 }, { x: 40, y: 23 }, brick);
    expect(ofClass(drawn({ walls: [upstairs, beyond] }), "wall")).toEqual([]);
  });
  test("are classed by what they are made of", () => {
    const layer = (material: string) => ({ material, thicknessM: 0.0125 });
    expect(wallClass(brick)).toBe("heavy");
    expect(wallClass(layer("metal"))).toBe("heavy");
    expect(wallClass({ layers: [layer("plasterboard"), layer("air"), layer("plasterboard")] })).toBe("light");
    expect(wallClass({ layers: [layer("plasterboard"), layer("concrete")] })).toBe("heavy");
    expect(wallClass(glass)).toBe("glass");
    expect(wallClass({ lossDb: 4 })).toBe("stated");
  });
});

describe("a field of margins", () => {
  test("has its thin lines where it crosses 0, 6 and 15 dB", () => {
    // x − 5 dB: the limits lie at x = 5, 11 and 20 m, from wall to wall.
    const root = drawn({ field: fieldOf((x) => x - 5) });
    const { at } = toMetres(root);
    for (const [limit, x] of [
      [0, 5],
      [6, 11],
      [15, 20],
    ] as const) {
      const inside = pathPoints(theOne(root, `limit-${limit}`))
        .map(at)
        .filter((point) => point.x < 26.9 && point.y > 5 && point.y < 23);
      expect(inside.length).toBeGreaterThan(10);
      for (const point of inside) expect(Math.abs(point.x - x)).toBeLessThan(0.05);
    }
  });
  test("draws a circle round a hill, and nothing where no limit is crossed", () => {
    const root = drawn({ field: fieldOf((x, y) => 10 - Math.hypot(x - 12, y - 14) * 2) });
    const { at } = toMetres(root);
    const ring = pathPoints(theOne(root, "limit-0")).map(at);
    for (const { x, y } of ring) expect(Math.abs(Math.hypot(x - 12, y - 14) - 5)).toBeLessThan(0.1);
    expect(ofClass(root, "limit-15")).toEqual([]);
  });
  test("follows no edge of a room of any shape: outside it the lines run on under the clip", () => {
    const outline = [
      ...rectangle(-3, 5, 27, 23).slice(0, 2),
      { x: 27, y: 14 },
      { x: 12, y: 14 },
      { x: 12, y: 23 },
      { x: -3, y: 23 },
    ];
    const field = fieldOf((x, y) => (x > 12 && y > 14 ? null : x - 5));
    const root = readSvg(planSvg({ ...base, room: room("hall", outline), field }, words).svg);
    const { at } = toMetres(root);
    // With the missing quarter taken as no margin the line of 15 dB would run along y = 14.
    const along = pathPoints(theOne(root, "limit-15")).map(at);
    expect(along.filter(({ x, y }) => x > 20.5 && x < 26.5 && Math.abs(y - 14) < 0.6)).toEqual([]);
    const clip = allOf(root).find(({ attributes }) => attributes.get("id") === "floor-hall-room")!;
    expect(pathPoints(clip.children[0]!)).toHaveLength(7);
  });
  test("stands a true null, and a room without any level", () => {
    const all = drawn({ field: fieldOf(() => -Infinity) });
    for (const limit of [0, 6, 15]) expect(ofClass(all, `limit-${limit}`)).toEqual([]);
  });
});

test("the bars are as long as they say, in metres and in feet", () => {
  const root = drawn({});
  const { scale } = toMetres(root);
  for (const [unit, metres] of [
    ["m", 1],
    ["ft", 0.3048],
  ] as const) {
    const { left, right } = boxOf(theOne(root, unit));
    const text = textsOf(root).find((one) => one.text.endsWith(` ${unit}`))!.text;
    expect(Math.abs(right - left - Number.parseFloat(text) * metres * scale)).toBeLessThan(0.3);
  }
});
