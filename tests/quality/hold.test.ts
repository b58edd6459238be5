import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import {
  eventFrameCount,
  holdFrameCount,
  holdOnceAnEventS,
  holdProbability,
  lookOf,
} from "../../src/quality/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";
import { relativeError } from "../numeric/relative-error.js";

describe("frames of a hold and of an event, by hand", () => {
  it.each([
    [0.1, 44, 5], // 4.4
    [0.5, 44, 22],
    [2, 44, 88],
    [0.28, 25, 7], // 0.28 · 25 is a little above 7 in doubles
    [0.3, 10, 3],
    [0.0001, 44, 1],
  ])("%s s at %s/s: %s lost in a row", (holdS, rate, expected) => {
    expect(holdFrameCount(holdS, rate)).toBe(expected);
  });
  it.each([
    [44, 90, 237_600],
    [44, 1, 2640],
    [29.97, 10, 17_982], // 17,981.999… in doubles
    [44, 0.001, 2], // 2.64: whole frames
  ])("%s/s for %s min: %s", (rate, minutes, expected) => {
    expect(eventFrameCount(rate, minutes)).toBe(expected);
  });
});

describe("holdProbability", () => {
  // fixtures/reference/README.md; 0.1 s is 5 frames, 20 frames are 20/44 s, at 44 frames a second
  it("a minute and an hour of the outside table", () => {
    const rows = referenceCsv("longest_run.csv").filter((row) => Number(row["n"]) > 44);
    expect(rows.length).toBe(20);
    for (const row of rows) {
      const ours = holdProbability({
        lossRatio: Number(row["p_fail"]),
        frameRateHz: 44,
        eventMinutes: Number(row["n"]) / 2640,
        holdS: Number(row["k"]) / 44,
      });
      expect(relativeError(ours, Number(row["prob_run_ge_k"]))).toBeLessThan(1e-13);
    }
  });
  it("is 0 for a hold longer than the event", () => {
    expect(holdProbability({ lossRatio: 1, frameRateHz: 44, eventMinutes: 0.02, holdS: 2 })).toBe(0);
  });
});

describe("holdOnceAnEventS", () => {
  const once = (lossRatio: number, frameRateHz = 44, eventMinutes = 90): number =>
    holdOnceAnEventS({ lossRatio, frameRateHz, eventMinutes });
  // p = 1/2, n = 18: 2^−3·(1 + 15/2) = 1.06; 2^−4·(1 + 14/2) = 1/2. n = 6: 2^−2·(1 + 4/2) = 3/4, 2^−1·(1 + 5/2) = 1.75.
  it("by hand", () => {
    expect(once(0.5, 1, 18 / 60)).toBe(3);
    expect(once(0.5, 1, 6 / 60)).toBe(1);
  });
  // n = 17: 2^−3·(1 + 14/2) = 1 exactly; p = 1/3, n = 42: (1 + 39·2/3)/27 = 1, in doubles a little less.
  it("meets the bound exactly", () => {
    expect(once(0.5, 1, 17 / 60)).toBe(3);
    expect(once(0.5, 1, 16 / 60)).toBe(2);
    expect(once(1 / 3, 1, 42 / 60)).toBe(3);
    expect(once(1 / 3, 1, 41 / 60)).toBe(2);
  });
  // 237,600 frames, p = 0.1: 1e-5·(1 + 237,595·0.9) = 2.14, 1e-6 of it 0.21: five frames, 0.114 s.
  it("90 minutes at 44/s and 10 % loss: five frames", () => {
    expect(once(0.1)).toBeCloseTo(5 / 44, 12);
  });
  it("0 where nothing is lost, the whole event where all is", () => {
    expect(once(0)).toBe(0);
    expect(once(1e-9)).toBe(0);
    expect(once(1)).toBe(5400);
  });
  it("never falls as loss or length grows, and is the last k that a search from 1 finds", () => {
    let before = 0;
    for (let p = 0.001; p < 1; p += 0.0173) {
      const k = Math.round(once(p) * 44);
      const expected = (run: number): number => Math.exp(run * Math.log(p)) * (1 + (237_600 - run) * (1 - p));
      let scanned = 0;
      while (expected(scanned + 1) >= 1) scanned++;
      expect(k).toBe(scanned);
      expect(k).toBeGreaterThanOrEqual(before);
      expect(once(p, 44, 180)).toBeGreaterThanOrEqual(once(p));
      before = k;
    }
  });
});

describe("lookOf", () => {
  it("is one minute at 10 % loss in plain data, from the outside table", () => {
    const look = lookOf({ lossRatio: 0.1, frameRateHz: 44, eventMinutes: 1 });
    expect(look.lostPerMinute).toBeCloseTo(264, 9); // 2640 frames a minute
    expect(look.holds.map(({ holdS, frameCount }) => [holdS, frameCount])).toEqual([
      [0.1, 5],
      [0.5, 22],
      [2, 88],
    ]);
    expect(look.holds[0]!.probability).toBeCloseTo(2.34469205084191204e-2, 15);
    // 22 and 88 in a row: p^k·(1 + (n−k)(1−p)) but for 1e-19 of it
    expect(relativeError(look.holds[1]!.probability, 1e-22 * (1 + 2618 * 0.9))).toBeLessThan(1e-12);
    expect(relativeError(look.holds[2]!.probability, 1e-88 * (1 + 2552 * 0.9))).toBeLessThan(1e-12);
    expect(look.holdOnceAnEventS).toBeCloseTo(3 / 44, 12); // 2.37 runs of three, 0.24 of four
  });
  it("rises with the loss, and longer holds are rarer", () => {
    let before = [0, 0, 0];
    for (const lossRatio of [0, 0.001, 0.01, 0.1, 0.5, 0.9, 0.99, 1]) {
      const now = lookOf({ lossRatio, frameRateHz: 44, eventMinutes: 90 }).holds.map((h) => h.probability);
      now.forEach((probability, i) => expect(probability).toBeGreaterThanOrEqual(before[i]!));
      expect(now).toEqual([...now].sort((a, b) => b - a));
      before = now;
    }
    expect(before).toEqual([1, 1, 1]);
  });
});

describe("throws", () => {
  it.each([
    ["lossRatio", { lossRatio: 1.1 }],
    ["lossRatio", { lossRatio: NaN }],
    ["frameRateHz", { frameRateHz: 0 }],
    ["frameRateHz", { frameRateHz: Infinity }],
    ["eventMinutes", { eventMinutes: -1 }],
    ["eventMinutes", { eventMinutes: NaN }],
    ["eventMinutes", { eventMinutes: 1e6 }],
  ])("%s: %j", (argument, wrong) => {
    const terms = { lossRatio: 0.1, frameRateHz: 44, eventMinutes: 90, ...wrong };
    for (const call of [
      () => lookOf(terms),
      () => holdOnceAnEventS(terms),
      () => holdProbability({ ...terms, holdS: 1 }),
    ]) {
      expect(call).toThrow(ArgumentError);
      expect(call).toThrow(argument);
    }
  });
  it.each([0, -1, NaN, Infinity])("a hold of %s s", (holdS) => {
    expect(() => holdFrameCount(holdS, 44)).toThrow(ArgumentError);
    expect(() => holdProbability({ lossRatio: 0.1, frameRateHz: 44, eventMinutes: 1, holdS })).toThrow(
      "holdS",
    );
  });
});
