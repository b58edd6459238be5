import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  chancePercent,
  chosenLengths,
  exactPercent,
  fixed,
  framesAMinute,
  heldPercent,
  lastingTime,
  lossPercent,
  reachLengths,
  sharePercent,
  wholePercent,
} from "../../src/report/number-format.js";

const ratio = fc.double({ min: 0, max: 1, noNaN: true });
const percentOf = (text: string): number => Number(/^<?([\d.]+) %$/.exec(text)![1]);

describe("figures on paper", () => {
  test("no minus in front of nothing, no number where there is none", () => {
    expect(fixed(-0.04, 1)).toBe("0.0");
    expect(fixed(-0.06, 1)).toBe("-0.1");
    expect([fixed(null, 1), fixed(NaN, 1), fixed(Infinity, 0), fixed(-Infinity, 0)]).toEqual(
      Array(4).fill("none"),
    );
  });

  /** The international foot is 0.3048 m exactly (1959). */
  test("a reach is never promised longer than it is, in either unit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1000, noNaN: true }), (lengthM) => {
        const told = reachLengths(lengthM, "m").replaceAll("under 1", "0");
        const [, m, ft] = /^(\d+) m \((\d+) ft\)$/.exec(told)!;
        expect(Number(m)).toBeLessThanOrEqual(lengthM + 1e-6);
        expect(Number(m)).toBeGreaterThan(lengthM - 1);
        expect(Number(ft) * 0.3048).toBeLessThanOrEqual(lengthM + 1e-6);
        expect((Number(ft) + 1) * 0.3048).toBeGreaterThan(lengthM - 1e-6);
      }),
    );
    expect(reachLengths(30.48, "m")).toBe("30 m (100 ft)");
    expect(reachLengths(30.48, "ft")).toBe("100 ft (30 m)");
    expect([0.2, 0.7, 1].map((lengthM) => reachLengths(lengthM, "m"))).toEqual([
      "under 1 m (under 1 ft)",
      "under 1 m (2 ft)",
      "1 m (3 ft)",
    ]);
  });

  test("a chosen distance is told to the nearest, the reader's unit first", () => {
    expect(chosenLengths(20, "m")).toBe("20 m (66 ft)"); // 65.62 ft
    expect(chosenLengths(2.54, "m")).toBe("2.5 m (8 ft)"); // 8.33 ft
    expect(chosenLengths(19.812, "ft")).toBe("65 ft (20 m)");
  });

  test("a share that was set keeps the places that it has", () => {
    expect([0.01, 0.001, 0.999, 0.99, 0].map(exactPercent)).toEqual([
      "1 %",
      "0.1 %",
      "99.9 %",
      "99 %",
      "0 %",
    ]);
  });

  test("a share that was worked out is told in short, never as more than it is", () => {
    expect(exactPercent(0.99 ** (1 / 20))).toBe("99.949 %"); // 0.9994976…
    expect(exactPercent(0.99999 ** (1 / 10_000))).toMatch(/^99\.9{6,7}\d* %$/); // 0.999999999
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 1 - 1e-10, noNaN: true, minExcluded: true }), (share) => {
        const text = exactPercent(share);
        expect(text).not.toMatch(/^100/);
        expect(percentOf(text)).toBeLessThanOrEqual(share * 100 + 1e-8);
        expect(100 - percentOf(text)).toBeLessThanOrEqual((100 - share * 100) * 1.11 + 1e-8);
      }),
    );
  });

  test("a share of positions that hold is never told as none or all, unless it is none", () => {
    expect([0, 1e-9, 0.98354, 0.99995].map(heldPercent)).toEqual([
      "0.00 %",
      "under 0.01 %",
      "98.35 %",
      "over 99.99 %",
    ]);
  });

  test("a chance is never told as none or as certain", () => {
    expect([0.8179, 1e-9, 0.0432, 0.996, 0.99951].map(chancePercent)).toEqual([
      "82 %",
      "under 0.1 %",
      "4.3 %",
      "99.6 %",
      "over 99.9 %",
    ]);
    fc.assert(
      fc.property(ratio, (share) => {
        const text = chancePercent(share);
        expect(text).not.toMatch(/^(?:0(?:\.0+)?|100(?:\.0+)?) %$/);
        if (!/^(?:under|over)/.test(text))
          expect(Math.abs(percentOf(text) - share * 100)).toBeLessThanOrEqual(0.5001);
      }),
    );
  });

  test("how long a hold lasts", () => {
    expect([1 / 44, 0.18, 1.25, 13.3, 119, 120, 5400].map(lastingTime)).toEqual([
      "0.02 s",
      "0.18 s",
      "1.3 s",
      "13 s",
      "119 s",
      "2 min",
      "90 min",
    ]);
  });

  test("clear air never reads better than it is; 100 % is said of nothing less", () => {
    fc.assert(
      fc.property(ratio, (share) => {
        expect(percentOf(sharePercent(share))).toBeLessThanOrEqual(share * 100 + 1e-9);
      }),
    );
    expect(sharePercent(1)).toBe("100 %");
    expect(sharePercent(0.999999)).toBe("99.99 %");
  });

  test("a loss never reads as none, nor more than half a last place off", () => {
    fc.assert(
      fc.property(ratio, (share) => {
        const text = lossPercent(share);
        if (share > 0) expect(text).not.toMatch(/^0(?:\.0+)? %$/);
        if (share < 1) expect(text).not.toMatch(/^100/);
        if (share >= 1e-4) expect(Math.abs(percentOf(text) - share * 100)).toBeLessThanOrEqual(0.0501);
      }),
    );
    expect([lossPercent(0), lossPercent(1e-9), lossPercent(0.0123)]).toEqual(["0 %", "<0.01 %", "1.23 %"]);
  });

  test("whole per cent", () => {
    expect([wholePercent(0), wholePercent(0.254), wholePercent(1)]).toEqual(["0 %", "25 %", "100 %"]);
  });

  test("frames a minute in words: none only when none", () => {
    expect(framesAMinute(0)).toMatch(/^no frames/);
    expect(framesAMinute(1e-6)).toMatch(/under 1/);
    expect(framesAMinute(1)).toMatch(/^1 frame a minute/);
    expect(framesAMinute(2639.6)).toMatch(/^2640 frames a minute/);
  });
});
