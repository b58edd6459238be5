import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { DMX_TIMING, dmxFrame } from "../../src/patch/index.js";

describe("dmxFrame, worked by hand from ANSI E1.11 (250 kbit/s; 92, 12 and 1204 µs from memory)", () => {
  it("a slot is 11 bits of 4 µs", () => {
    expect(DMX_TIMING.slot.valueUs).toBe((1 + 8 + 2) * DMX_TIMING.bit.valueUs);
  });
  // 513 slots with the start code: 513 · 44 = 22 572; 92 + 12 + 22 572 = 22 676; 1e6 / 22 676 = 44.0995…
  it("a full universe: 22.676 ms, 44.10 Hz", () => {
    const frame = dmxFrame({ slotCount: 512 });
    expect(frame).toMatchObject({ slotsUs: 22_572, idleUs: 0, frameUs: 22_676, caveats: [] });
    expect(frame.rateHz).toBeCloseTo(44.1, 2);
  });
  // 88 + 8 + 22 572 = 22 668 µs, 44.115 Hz: what a receiver must follow, below what a transmitter may send.
  it("what a receiver must follow: 22.668 ms, 44.12 Hz, too short for a transmitter", () => {
    const { receivedBreak, receivedMarkAfterBreak } = DMX_TIMING;
    const frame = dmxFrame({
      slotCount: 512,
      breakUs: receivedBreak.valueUs,
      markAfterBreakUs: receivedMarkAfterBreak.valueUs,
    });
    expect(frame.frameUs).toBe(22_668);
    expect(frame.rateHz).toBeCloseTo(44.12, 2);
    expect(frame.caveats).toEqual(["break-too-short", "mark-too-short"]);
  });
  // 176 + 12 + 22 572 = 22 760 µs; 1e6 / 22 760 = 43.94.
  it("the usual break of 176 µs: 22.760 ms, 43.94 Hz", () => {
    const frame = dmxFrame({ slotCount: 512, breakUs: DMX_TIMING.typicalBreak.valueUs });
    expect(frame.frameUs).toBe(22_760);
    expect(frame.rateHz).toBeCloseTo(43.94, 2);
  });
  // 92 + 12 + 25 · 44 = 1204 µs: 24 slots fill the shortest packet exactly, 830.6 Hz.
  it("the shortest packet has 24 slots; fewer wait", () => {
    const frames = [0, 1, 23, 24, 25].map((slotCount) => dmxFrame({ slotCount }));
    expect(frames.map(({ frameUs }) => frameUs)).toEqual([1204, 1204, 1204, 1204, 1248]);
    expect(frames.map(({ idleUs }) => idleUs)).toEqual([1204 - 104 - 44, 1204 - 104 - 88, 44, 0, 0]);
    expect(frames[3]!.rateHz).toBeCloseTo(830.6, 1);
  });
  it("each slot more takes 44 µs", () => {
    for (let slotCount = 24; slotCount < 512; slotCount++)
      expect(dmxFrame({ slotCount: slotCount + 1 }).frameUs - dmxFrame({ slotCount }).frameUs).toBe(44);
  });
  it("more than a second from break to break is said", () => {
    expect(dmxFrame({ slotCount: 1, breakUs: 1e6 }).caveats).toEqual(["break-to-break-too-long"]);
    expect(dmxFrame({ slotCount: 0, breakUs: 1e6 - 12 - 44 }).caveats).toEqual([]);
  });
  it.each([
    ["slotCount", { slotCount: 513 }],
    ["slotCount", { slotCount: -1 }],
    ["slotCount", { slotCount: 1.5 }],
    ["slotCount", { slotCount: NaN }],
    ["breakUs", { slotCount: 1, breakUs: 0 }],
    ["breakUs", { slotCount: 1, breakUs: Infinity }],
    ["markAfterBreakUs", { slotCount: 1, markAfterBreakUs: NaN }],
  ])("throws for %s: %j", (argument, terms) => {
    expect(() => dmxFrame(terms)).toThrow(ArgumentError);
    expect(() => dmxFrame(terms)).toThrow(argument);
  });
});
