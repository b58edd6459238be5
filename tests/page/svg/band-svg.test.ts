/** Pictures of the band read back: heights and places by proportion, from the levels that went in. */
import { describe, expect, test } from "vitest";
import { roomBandModel } from "../../../src/report/index.js";
import type { RoomBand } from "../../../src/report/index.js";
import { bandSvg } from "../../../src/page/svg/band-svg.js";
import { boxOf, middleOf, ofClass, pathPoints, readSvg, textsOf, theOne } from "./read-svg.js";

const words = { name: "band-hall", title: "The band" };
/** 2400 … 2480 MHz in steps of 10: 10 dB, then 5, then 40 in the last. */
const levels = [10, 5, 0, 0, 0, 0, 0, 40];
const one: RoomBand = {
  room: "hall",
  system: "A",
  receiver: "H1",
  band: { startMhz: 2400, stepMhz: 10, aboveNoiseDb: levels },
  channels: [2412, 2417, 2422, 2427, 2472].map((centreMhz, index) => ({ channel: index + 1, centreMhz })),
  channel: 3,
  fallbackChannel: 5,
  spoiltAboveNoiseDb: 20,
};
const root = readSvg(bandSvg(roomBandModel(one), words).svg);
const steps = pathPoints(theOne(root, "steps"));
const floor = Math.max(...steps.map(({ y }) => y));
const { left, right } = boxOf(theOne(root, "steps"));
const xOf = (mhz: number): number => left + ((mhz - 2400) / 80) * (right - left);
const heightAt = (mhz: number): number => {
  const across = steps.filter((point, index) => {
    const next = steps[index + 1];
    return next !== undefined && point.y === next.y && point.x <= xOf(mhz) && next.x >= xOf(mhz);
  });
  return floor - Math.min(...across.map(({ y }) => y));
};

describe("the steps", () => {
  test("are as high as their levels: 10 dB twice 5 dB, 40 dB four times 10", () => {
    expect(heightAt(2405)).toBeGreaterThan(20);
    expect(Math.abs(heightAt(2405) - 2 * heightAt(2415))).toBeLessThan(0.3);
    expect(Math.abs(heightAt(2475) - 4 * heightAt(2405))).toBeLessThan(0.6);
    expect(heightAt(2435)).toBe(0);
  });
  test("stand straight up between their frequencies", () => {
    for (const { x } of steps) {
      const mhz = ((x - left) / (right - left)) * 80;
      expect(Math.abs(mhz - Math.round(mhz / 10) * 10)).toBeLessThan(0.05);
    }
  });
  test("meet the dotted line where the signal is spoilt: 20 dB, half of 40", () => {
    const dotted = ofClass(root, "spoilt").map((line) => boxOf(line));
    const across = dotted.find((line) => line.right - line.left > 100)!;
    expect(Math.abs(floor - across.top - heightAt(2475) / 2)).toBeLessThan(0.3);
  });
});

describe("the channels", () => {
  test("stand under their frequencies with their numbers", () => {
    const boxes = ofClass(root, "channel");
    expect(boxes).toHaveLength(5);
    boxes.forEach((box, index) => {
      const { centreMhz, channel } = one.channels[index]!;
      expect(Math.abs(middleOf(box).x - xOf(centreMhz))).toBeLessThan(0.2);
      expect(middleOf(box).y).toBeGreaterThan(floor);
      const number = textsOf(root).filter(({ text, y }) => text === String(channel) && y > floor + 20);
      expect(number.map(({ x }) => Math.abs(x - xOf(centreMhz)) < 0.2)).toEqual([true]);
    });
  });
  test("are marked by shape and by words, one to use and one to fall back on", () => {
    const [used, fallback, rest] = ["use", "fallback", "none"].map((use) => ofClass(root, use));
    expect([used!.length, fallback!.length, rest!.length]).toEqual([1, 1, 3]);
    expect(Number(used![0]!.attributes.get("stroke-width"))).toBeGreaterThan(2);
    expect(fallback![0]!.attributes.get("stroke-dasharray")).toBeDefined();
    const said = textsOf(root).map(({ text }) => text);
    expect(said).toContain("use radio ch 3");
    expect(said).toContain("fallback radio ch 5");
  });
  test("keep their words apart where they are neighbours, and on the drawing at its edges", () => {
    const near = readSvg(bandSvg(roomBandModel({ ...one, channel: 1, fallbackChannel: 2 }), words).svg);
    const [use, fallback] = ["use radio ch 1", "fallback radio ch 2"].map((text) =>
      textsOf(near).find((found) => found.text === text)!,
    );
    // A character is at most some 0.7 of the height of 15: half of both texts is 33 characters / 2.
    expect(fallback!.x - use!.x).toBeGreaterThan((33 / 2) * 15 * 0.55);
    expect(use!.x).toBeGreaterThanOrEqual((14 / 2) * 15 * 0.55);
  });
  test("of a hopping radio are bars, all in use", () => {
    const model = roomBandModel({ ...one, channel: null, fallbackChannel: null, spoiltAboveNoiseDb: null });
    const hops = readSvg(bandSvg(model, words).svg);
    expect(pathPoints(theOne(hops, "kept"))).toHaveLength(5 * 5);
    expect(ofClass(hops, "spoilt")).toEqual([]);
  });
});

test("the description holds the figures", () => {
  const { description } = bandSvg(roomBandModel(one), words);
  for (const figure of ["spoilt above 20.0 dB", "In use: radio ch 3 (2422 MHz), 0.0 dB", "Highest: 40.0 dB"])
    expect(description).toContain(figure);
});
