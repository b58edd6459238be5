import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  bothLengths,
  fixed,
  framesAMinute,
  lengthText,
  lossPercent,
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
        const [, m, ft] = /^(\d+) m \((\d+) ft\)$/.exec(bothLengths(lengthM))!;
        expect(Number(m)).toBeLessThanOrEqual(lengthM + 1e-6);
        expect(Number(m)).toBeGreaterThan(lengthM - 1);
        expect(Number(ft) * 0.3048).toBeLessThanOrEqual(lengthM + 1e-6);
        expect((Number(ft) + 1) * 0.3048).toBeGreaterThan(lengthM - 1e-6);
      }),
    );
    expect(bothLengths(30.48)).toBe("30 m (100 ft)");
  });

  test("lengths in the reader's unit", () => {
    expect([lengthText(5, "m"), lengthText(2.54, "m"), lengthText(30.48, "ft")]).toEqual([
      "5 m",
      "2.5 m",
      "100 ft",
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
