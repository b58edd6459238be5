import { describe, expect, it } from "vitest";
import type { HopPlan } from "../../src/radio/index.js";
import { hopSet } from "../../src/scorer/index.js";
import { score } from "../helpers/scores.js";

const plan = (avoids: boolean, least: number): HopPlan => ({
  avoids,
  leastHopCount: { value: least, status: "yours", source: "test" },
});
const hop = (channel: number, marginDb: number, clearAirRatio: number): ReturnType<typeof score> =>
  score(channel, marginDb, null, { centreMhz: 2402 + channel, clearAirRatio });

// Best first, as the ranking hands them over.
const RANKING = [hop(4, 8, 1), hop(0, 6, 0.9), hop(3, 0, 0.8), hop(1, -1, 0.5), hop(2, -9, 0.3)];

describe("hopSet", () => {
  it("uses every allowed frequency where the radio avoids none: mean clear air, median margin", () => {
    expect(hopSet(RANKING, plan(false, 1))).toEqual({
      channels: [0, 1, 2, 3, 4],
      excludedRanges: [],
      clearAirRatio: expect.closeTo(3.5 / 5, 12) as number,
      marginDb: 0,
      whole: { clearAirRatio: expect.closeTo(3.5 / 5, 12) as number, marginDb: 0 },
    });
  });

  it("keeps out what has a negative margin, as ranges, and says what that gains", () => {
    const set = hopSet(RANKING, plan(true, 1));
    expect(set.channels).toEqual([0, 3, 4]);
    expect(set.excludedRanges).toEqual([{ fromMhz: 2403, toMhz: 2404, channelCount: 2 }]);
    expect(set.clearAirRatio).toBeCloseTo(0.9, 12);
    expect(set.marginDb).toBe(6);
    expect(set.whole.clearAirRatio).toBeCloseTo(0.7, 12);
  });

  it("never goes below the least number of frequencies: the best of the bad stay", () => {
    expect(hopSet(RANKING, plan(true, 4)).channels).toEqual([0, 1, 3, 4]);
    expect(hopSet(RANKING, plan(true, 4)).excludedRanges).toEqual([
      { fromMhz: 2404, toMhz: 2404, channelCount: 1 },
    ]);
    expect(hopSet(RANKING, plan(true, 15)).channels).toEqual([0, 1, 2, 3, 4]);
  });

  it("tells ranges apart that a kept frequency divides", () => {
    const ranking = [hop(1, 5, 1), hop(0, -1, 0.5), hop(2, -1, 0.5)];
    expect(hopSet(ranking, plan(true, 1)).excludedRanges).toEqual([
      { fromMhz: 2402, toMhz: 2402, channelCount: 1 },
      { fromMhz: 2404, toMhz: 2404, channelCount: 1 },
    ]);
  });

  it("leaves out frequencies that are not allowed", () => {
    const ranking = [hop(0, 5, 1), { ...hop(1, 9, 1), allowed: false, reason: "leaves the band" }];
    expect(hopSet(ranking, plan(false, 1)).channels).toEqual([0]);
  });

  it("keeps a frequency whose margin is 0 but for rounding: decibels have a slack of 1e-9", () => {
    expect(hopSet([hop(0, 5, 1), hop(1, -5e-10, 0.99)], plan(true, 1)).channels).toEqual([0, 1]);
  });

  it("keeps its numbers finite where no frequency is allowed", () => {
    const none = hopSet([{ ...hop(0, 5, 1), allowed: false, reason: "leaves the band" }], plan(false, 15));
    expect(none.channels).toEqual([]);
    expect(none.clearAirRatio).toBe(0);
  });

  it("leaves out frequencies that no scan covers", () => {
    const set = hopSet([hop(0, 5, 1), { ...hop(1, 9, 0.5), spokenBy: null }], plan(false, 1));
    expect([set.channels, set.clearAirRatio, set.marginDb]).toEqual([[0], 1, 5]);
  });

  it("has no margin at all where one frequency gets no wanted level, and none to tell without any", () => {
    const ranking = [hop(0, 5, 1), hop(1, 4, 1), hop(2, -Infinity, 0)];
    expect(hopSet(ranking, plan(false, 1)).marginDb).toBe(-Infinity);
    const silent = [hop(0, -Infinity, 0), hop(1, -Infinity, 0)];
    expect(hopSet(silent, plan(false, 1)).marginDb).toBe(-Infinity);
    expect(hopSet([], plan(false, 1)).marginDb).toBeNull();
  });
});
