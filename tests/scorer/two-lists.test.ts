import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cumulativeShares } from "../../src/scorer/sums.js";
import type { Sums } from "../../src/scorer/sums.js";
import { greatestSumAtOrBelow, shareOfSumAtOrBelow } from "../../src/scorer/two-lists.js";

// Whole numbers below 2^53 add without rounding, so that sums meet the limit exactly.
const arbitrarySums: fc.Arbitrary<Sums> = fc
  .uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 10 })
  .map((values) => ({
    valueMw: Float64Array.from([...values].sort((a, b) => a - b)),
    shareRatio: new Float64Array(values.length).fill(1 / 16),
  }));
const pairs = (a: Sums, b: Sums): number[] =>
  [...a.valueMw].flatMap((one) => [...b.valueMw].map((other) => one + other));
const limits = fc.integer({ min: -5, max: 130 });

describe("shareOfSumAtOrBelow", () => {
  it("counts every pair at or below the limit", () => {
    fc.assert(
      fc.property(arbitrarySums, arbitrarySums, limits, (a, b, limitMw) => {
        const fitting = pairs(a, b).filter((sum) => sum <= limitMw).length;
        expect(shareOfSumAtOrBelow(a, b, cumulativeShares(b), limitMw)).toBe(fitting / 256);
      }),
    );
  });
});

describe("greatestSumAtOrBelow", () => {
  it("finds the greatest pair at or below the limit, 0 where none is", () => {
    fc.assert(
      fc.property(arbitrarySums, arbitrarySums, limits, (a, b, limitMw) => {
        const fitting = pairs(a, b).filter((sum) => sum <= limitMw);
        expect(greatestSumAtOrBelow(a, b, limitMw)).toBe(Math.max(0, ...fitting));
      }),
    );
  });
});
