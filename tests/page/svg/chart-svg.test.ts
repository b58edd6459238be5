/** Margin by distance, rooms, hop set, residuals, busy time and swept power read back by proportion. */
import { describe, expect, test } from "vitest";
import { hopBlocks } from "../../../src/report/hop-blocks.js";
import type { BusyCell, HopModel, RoomReport, Spectrogram, SystemCurve } from "../../../src/report/index.js";
import { busySvg } from "../../../src/page/svg/busy-svg.js";
import { hopSvg } from "../../../src/page/svg/hop-svg.js";
import { marginSvg } from "../../../src/page/svg/margin-svg.js";
import { residualSvg } from "../../../src/page/svg/residual-svg.js";
import { roomsSvg } from "../../../src/page/svg/rooms-svg.js";
import { spectrogramSvg } from "../../../src/page/svg/spectrogram-svg.js";
import { boxOf, middleOf, ofClass, pathPoints, readSvg, textsOf, theOne } from "./read-svg.js";
import type { SvgElement } from "./read-svg.js";

const words = { name: "x", title: "X" };

/** Where an axis has a value, from two of its own texts. */
function axisOf(
  root: SvgElement,
  along: "x" | "y",
  [one, other]: readonly [string, string],
): (value: number) => number {
  const at = (text: string): number =>
    textsOf(root).find((found) => found.text === text)![along] - (along === "y" ? 5 : 0);
  const [from, to] = [Number.parseFloat(one), Number.parseFloat(other)];
  return (value) => at(one) + ((value - from) / (to - from)) * (at(other) - at(one));
}

describe("margin by distance", () => {
  const curve: SystemCurve = {
    system: "A",
    room: "hall",
    receiver: "H1",
    // 20 dB a decade, 0 dB at 20 m.
    points: Array.from({ length: 80 }, (_, index) => {
      const distanceM = 1 + index / 2;
      return { distanceM, workingMarginDb: -20 * Math.log10(distanceM / 20) };
    }),
    reachM: 20,
    reachReason: null,
    receivers: [
      { receiver: "H1", distanceM: 30, workingMarginDb: -3.5 },
      { receiver: "H2", distanceM: 15, workingMarginDb: 7 },
    ],
  };
  const picture = marginSvg(curve, (name) => name.slice(1), words);
  const root = readSvg(picture.svg);
  const [xOf, yOf] = [axisOf(root, "x", ["10", "30"]), axisOf(root, "y", ["0", "15"])];

  test("marks the reach where the margin is 0 dB", () => {
    expect(Math.abs(boxOf(theOne(root, "reach")).left - xOf(20))).toBeLessThan(0.2);
    // 20 m are 65.6 ft: a reach is rounded down.
    expect(textsOf(root).map(({ text }) => text)).toContain("reach 20 m (65 ft)");
    const crossing = pathPoints(theOne(root, "curve")).reduce((best, point) =>
      Math.abs(point.x - xOf(20)) < Math.abs(best.x - xOf(20)) ? point : best,
    );
    expect(Math.abs(crossing.y - yOf(0))).toBeLessThan(0.3);
  });
  test("has every receiver where its distance and margin say", () => {
    const marks = new Map(
      ofClass(root, "receiver").map((mark) => [mark.attributes.get("data-number"), middleOf(mark)]),
    );
    expect(Math.abs(marks.get("1")!.x - xOf(30)) + Math.abs(marks.get("1")!.y - yOf(-3.5))).toBeLessThan(0.4);
    expect(Math.abs(marks.get("2")!.x - xOf(15)) + Math.abs(marks.get("2")!.y - yOf(7))).toBeLessThan(0.4);
    expect(Math.abs(marks.get("1")!.x - xOf(0) - 2 * (marks.get("2")!.x - xOf(0)))).toBeLessThan(0.4);
  });
  test("has lines at 0, 6 and 15 dB, and the curve inside the plot", () => {
    const limits = ofClass(root, "limit").map((line) => boxOf(line).top);
    expect(limits.map((y, index) => Math.abs(y - yOf([0, 6, 15][index]!)) < 0.2)).toEqual([true, true, true]);
    const { top, bottom } = boxOf(theOne(root, "curve"));
    expect(top).toBeGreaterThan(30);
    expect(bottom).toBeLessThan(yOf(-10) + 0.2);
  });
  test("says the figures, and why where there is no reach", () => {
    expect(picture.description).toContain("H1 at 30.0 m x -3.5 dB (fails); H2 at 15.0 m o 7.0 dB (sound)");
    const none = marginSvg({ ...curve, reachM: null, reachReason: "beyond 1000 m" }, () => "", words);
    expect(none.description).toContain("no reach to state: beyond 1000 m");
    expect(ofClass(readSvg(none.svg), "reach")).toEqual([]);
  });
});

describe("rooms side by side", () => {
  const weakest = (workingMarginDb: number) => ({ receiver: "R1", workingMarginDb }) as never;
  const room = (name: string, more: object): RoomReport =>
    ({ room: name, system: name, reason: null, receiverCount: 1, alone: [], joint: null, ...more }) as never;
  const rooms = [
    room("hall", {
      alone: [
        { crowd: "empty", weakest: weakest(10), reason: null },
        { crowd: "full", weakest: weakest(-5), reason: null },
      ],
      joint: weakest(-10),
    }),
    room("bar", { alone: [{ crowd: "empty", weakest: null, reason: "not scanned" }], joint: null }),
    room("attic", { system: null, reason: "no receiver hangs in it" }),
  ];
  const picture = roomsSvg(rooms, words);
  const root = readSvg(picture.svg);
  const xOf = axisOf(root, "x", ["0", "10"]);

  test("has the margins of a room on one line and one axis", () => {
    const places = (["empty", "full", "planned"] as const).map((state) => middleOf(ofClass(root, state)[0]!));
    [10, -5, -10].forEach((db, index) => expect(Math.abs(places[index]!.x - xOf(db))).toBeLessThan(0.2));
    expect(new Set(places.map(({ y }) => Math.round(y))).size).toBe(1);
    const limits = ofClass(root, "limit").map((line) => boxOf(line).left);
    expect(limits.map((x, index) => Math.abs(x - xOf([0, 6, 15][index]!)) < 0.2)).toEqual([true, true, true]);
  });
  test("draws no margin that there is none of, and says why", () => {
    expect(
      ofClass(root, "margin").filter(({ attributes }) => attributes.get("class") !== "margin"),
    ).toHaveLength(3 + 3);
    expect(picture.description).toContain("bar: alone, empty not scanned, as planned no signal.");
    expect(picture.description).toContain("attic: no receiver hangs in it.");
    expect(picture.description).toContain("as planned x -10.0 dB at R1");
  });
});

describe("a hop set", () => {
  const hop = (channel: number, marginDb: number, isKept: boolean) => ({
    ...{ channel, centreMhz: 2402 + channel, marginDb, isKept },
    ...({ allowed: true, spokenBy: "beacons", clearAirRatio: 1 } as const),
  });
  // 2405–2409 MHz all in use, 2410–2414 in part, 2415–2419 kept out.
  const scores = [
    ...[3, 4, 5, 6, 7].map((channel) => hop(channel, 10 + channel, true)),
    ...[8, 9, 10, 11, 12].map((channel) => hop(channel, 26, channel > 9)),
    ...[13, 14, 15, 16, 17].map((channel) => hop(channel, -13, false)),
  ];
  const model: HopModel = {
    blocks: hopBlocks(scores, new Set(scores.filter(({ isKept }) => isKept).map(({ channel }) => channel))),
    frequencies: scores,
    margin: "interference margin",
  };
  const picture = hopSvg(model, words);
  const root = readSvg(picture.svg);

  test("has bars as long as the least margins: 26 dB twice 13, −13 as far down as 13 up", () => {
    const bars = ofClass(root, "block").map((bar) => boxOf(bar));
    expect(bars).toHaveLength(3);
    const [all, part, out] = bars.map(({ top, bottom }) => bottom - top);
    expect(Math.abs(part! - 2 * all!)).toBeLessThan(0.4);
    expect(Math.abs(out! - all!)).toBeLessThan(0.3);
    expect(Math.abs(bars[2]!.top - bars[0]!.bottom)).toBeLessThan(0.2);
  });
  test("tells the kept from the kept out by their filling, block by block and one by one", () => {
    expect(
      ["in", "part", "out"].map(
        (kind) =>
          ofClass(root, kind).filter((one) => one.attributes.get("class")!.startsWith("block")).length,
      ),
    ).toEqual([1, 1, 1]);
    const block = (kind: string): SvgElement =>
      ofClass(root, kind).find((one) => one.attributes.get("class")!.startsWith("block"))!;
    expect(block("out").attributes.get("fill")).toBe("none");
    // Five points a box: 8 in use, 7 kept out.
    expect(pathPoints(theOne(root, "kept"))).toHaveLength(8 * 5);
    expect(picture.description).toContain("2410–2414 MHz 3 of 5 in use, 26.0 dB");
  });
});

describe("residuals", () => {
  const points = [
    { distanceM: 1, residualDb: -5, mark: "o" },
    { distanceM: 10, residualDb: 0, mark: "#" },
    { distanceM: 100, residualDb: 10, mark: "^" },
  ] as const;
  const root = readSvg(residualSvg(points, words).svg);

  test("lie by the logarithm of their distance and straight by their dB", () => {
    const [near, middle, far] = ofClass(root, "reading")
      .slice(0, 3)
      .map((mark) => middleOf(mark));
    expect(Math.abs(middle!.x - (near!.x + far!.x) / 2)).toBeLessThan(0.2);
    const yOf = axisOf(root, "y", ["0", "+10"]);
    [-5, 0, 10].forEach((db, index) =>
      expect(Math.abs([near, middle, far][index]!.y - yOf(db))).toBeLessThan(0.2),
    );
    const xOf = textsOf(root).find(({ text }) => text === "10 m")!.x;
    expect(Math.abs(xOf - middle!.x)).toBeLessThan(0.2);
  });
  test("stand where all are at one distance", () => {
    const same = residualSvg([points[1], { ...points[1], residualDb: 3 }], words);
    expect(ofClass(readSvg(same.svg), "reading").length).toBeGreaterThan(2);
  });
});

test("busy time: bars as high as their share, the busier of two MHz, dashed where nothing was scanned", () => {
  const ratios = [0.5, 0.2, 1, 1, null, null];
  const cells = ratios.map((busyRatio, index): BusyCell => ({
    ...{ fromMhz: 2400 + index, toMhz: 2401 + index, levelDbm: null, busyRatio, spokenBy: "beacons" },
    ...{ beaconBusyRatio: busyRatio, sweptBusyRatio: null },
  }));
  const picture = busySvg(cells, words);
  const root = readSvg(picture.svg);
  const corners = pathPoints(theOne(root, "busy"));
  const [half, whole] = [corners.slice(0, 5), corners.slice(5)].map((box) => {
    const ys = box.map(({ y }) => y);
    return Math.max(...ys) - Math.min(...ys);
  });
  expect(Math.abs(whole! - 2 * half!)).toBeLessThan(0.3);
  const yOf = axisOf(root, "y", ["0 %", "100 %"]);
  expect(Math.abs(yOf(0) - yOf(100) - whole!)).toBeLessThan(0.3);
  expect(ofClass(root, "unscanned")).toHaveLength(1);
  expect(picture.description).toContain("Busiest: 2402–2404 MHz, 100 % of the time. 0 of 3 columns");
});

test("swept power: each cell in the shade of its level, 10 dB apart, levels not read dashed", () => {
  const row = (startMs: number, maxDbm: readonly (number | null)[]) => ({ startMs, passCount: 1, maxDbm });
  const sweep: Spectrogram = {
    ...{ place: "<b>hall</b>", crowd: "full", passCount: 2, relative: false, startMhz: 2400, columnMhz: 2 },
    rows: [row(0, [-50, -65, -75, -85, -95]), row(60_000, [null, -50, -50, -95, -95])],
  };
  const picture = spectrogramSvg(sweep, -60.3, words);
  const root = readSvg(picture.svg);
  const boxes = (name: string) => {
    const corners = pathPoints(theOne(root, name));
    return Array.from({ length: corners.length / 5 }, (_, index) => {
      const own = corners.slice(5 * index, 5 * index + 5);
      const [xs, ys] = [own.map(({ x }) => x), own.map(({ y }) => y)];
      return { left: Math.min(...xs), width: Math.max(...xs) - Math.min(...xs), top: Math.min(...ys) };
    });
  };
  const [first, run] = boxes("shade-0");
  // Over −60: one cell in the first row, two neighbours from one cell further in the second.
  expect(boxes("shade-0")).toHaveLength(2);
  expect(Math.abs(run!.width - 2 * first!.width)).toBeLessThan(0.3);
  expect(Math.abs(run!.left - first!.left - first!.width)).toBeLessThan(0.3);
  expect(run!.top).toBeGreaterThan(first!.top);
  ["shade-1", "shade-2", "shade-3"].forEach((name, index) => {
    const [box, ...more] = boxes(name);
    expect(more).toEqual([]);
    expect(Math.abs(box!.left - first!.left - (index + 1) * first!.width)).toBeLessThan(0.3);
  });
  expect(boxes("unread").map(({ left, top }) => [left === first!.left, top === run!.top])).toEqual([
    [true, true],
  ]);
  const opacities = [0, 1, 2, 3].map((shade) =>
    Number(theOne(root, `shade-${shade}`).attributes.get("fill-opacity")),
  );
  expect([...opacities].sort((a, b) => b - a)).toEqual(opacities);
  expect(picture.description).toContain("3 of 9 cells");
});
