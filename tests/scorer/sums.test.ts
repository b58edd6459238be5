import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addIndependent,
  countAtOrBelow,
  cumulativeShares,
  mergedUpwards,
  NOTHING,
} from "../../src/scorer/sums.js";
import type { Sums } from "../../src/scorer/sums.js";

const sums = (...pairs: [number, number][]): Sums => ({
  valueMw: Float64Array.from(pairs.map(([value]) => value)),
  shareRatio: Float64Array.from(pairs.map(([, share]) => share)),
});
const pairsOf = ({ valueMw, shareRatio }: Sums): [number, number][] =>
  [...valueMw].map((value, index) => [value, shareRatio[index]!]);
const total = ({ shareRatio }: Sums): number => shareRatio.reduce((sum, share) => sum + share, 0);

const arbitrarySums = fc
  .uniqueArray(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 12 })
  .map((values) =>
    sums(...[...values].sort((a, b) => a - b).map((value): [number, number] => [value, 0.05])),
  );

describe("addIndependent", () => {
  it("adds every pair of states and joins equal sums, by hand", () => {
    const coin = sums([0, 0.5], [1, 0.5]);
    expect(pairsOf(addIndependent(addIndependent(NOTHING, coin), coin))).toEqual([
      [0, 0.25],
      [1, 0.5],
      [2, 0.25],
    ]);
  });

  it("leaves out sums at or below one limit and above the other", () => {
    const coin = sums([0, 0.5], [1, 0.5]);
    expect(pairsOf(addIndependent(coin, coin, 0, 1))).toEqual([[1, 0.5]]);
  });

  it("is the states themselves where nothing was before, within the limits", () => {
    const coin = sums([0, 0.5], [1, 0.5]);
    expect(addIndependent(NOTHING, coin)).toBe(coin);
    expect(pairsOf(addIndependent(NOTHING, coin, 0))).toEqual([[1, 0.5]]);
    expect(pairsOf(addIndependent(NOTHING, coin, -Infinity, 0))).toEqual([[0, 0.5]]);
    expect(pairsOf(addIndependent(NOTHING, coin, 0, 0.5))).toEqual([]);
  });

  // Whole numbers below 2^53 and shares that are powers of two add without rounding.
  it("has every pair within the limits, equal sums as one, whatever the limits", () => {
    const limit = fc.oneof(fc.integer({ min: -1, max: 60 }), fc.constantFrom(-Infinity, Infinity));
    const few = fc
      .uniqueArray(fc.integer({ min: 0, max: 30 }), { maxLength: 9 })
      .map((values) =>
        sums(...[...values].sort((a, b) => a - b).map((value): [number, number] => [value, 2 ** -5])),
      );
    fc.assert(
      fc.property(few, few, limit, limit, (a, b, aboveMw, uptoMw) => {
        const expected = new Map<number, number>();
        for (const one of a.valueMw)
          for (const other of b.valueMw)
            if (one + other > aboveMw && one + other <= uptoMw)
              expected.set(one + other, (expected.get(one + other) ?? 0) + 2 ** -10);
        const rising = [...expected].sort(([x], [y]) => x - y);
        expect(pairsOf(addIndependent(a, b, aboveMw, uptoMw))).toEqual(rising);
      }),
    );
  });

  it("keeps all of the time, in rising order, whichever comes first", () => {
    fc.assert(
      fc.property(arbitrarySums, arbitrarySums, (a, b) => {
        const both = addIndependent(a, b);
        expect(total(both)).toBeCloseTo(total(a) * total(b), 12);
        expect([...both.valueMw]).toEqual([...new Set(both.valueMw)].sort((x, y) => x - y));
        expect(pairsOf(addIndependent(b, a)).map(([value]) => value)).toEqual([...both.valueMw]);
      }),
    );
  });
});

describe("mergedUpwards", () => {
  it("moves values up by no more than the tolerance and loses no time", () => {
    const merged = mergedUpwards(sums([0, 0.1], [0.05, 0.2], [0.1, 0.3], [5, 0.4]), 1, 0.1);
    expect(pairsOf(merged)).toEqual([
      [0.1, expect.closeTo(0.6, 12)],
      [5, 0.4],
    ]);
  });

  it("counts both parts of the step from the lowest value of those merged, the step itself included", () => {
    const fine = sums([10, 0.25], [11, 0.25], [12, 0.25], [12.5, 0.25]);
    expect(pairsOf(mergedUpwards(fine, 0, 0.1))).toEqual([
      [11, 0.5],
      [12.5, 0.5],
    ]);
    expect(pairsOf(mergedUpwards(fine, 1, 0.1))).toEqual([
      [12, 0.75],
      [12.5, 0.25],
    ]);
    expect(pairsOf(mergedUpwards(fine, 0, 0))).toEqual(pairsOf(fine));
  });

  it("is never below what it merges, and within the tolerance of it", () => {
    fc.assert(
      fc.property(arbitrarySums, fc.double({ min: 0, max: 0.5, noNaN: true }), (fine, tolerance) => {
        const merged = mergedUpwards(fine, tolerance, tolerance);
        expect(total(merged)).toBeCloseTo(total(fine), 12);
        const [before, after] = [cumulativeShares(fine), cumulativeShares(merged)];
        for (const value of fine.valueMw) {
          const share = before[countAtOrBelow(fine.valueMw, value)]!;
          const upTo = (limit: number): number => after[countAtOrBelow(merged.valueMw, limit)]!;
          expect(upTo(value)).toBeLessThanOrEqual(share + 1e-12);
          expect(upTo(value + tolerance * (value + 1) + 1e-9)).toBeGreaterThanOrEqual(share - 1e-12);
        }
      }),
    );
  });
});

describe("countAtOrBelow and cumulativeShares", () => {
  it("counts by hand", () => {
    const values = Float64Array.of(1, 2, 2, 4);
    expect([0, 1, 2, 3, 4, 5].map((limit) => countAtOrBelow(values, limit))).toEqual([0, 1, 3, 3, 4, 4]);
    expect([...cumulativeShares(sums([0, 0.5], [1, 0.25], [2, 0.25]))]).toEqual([0, 0.5, 0.75, 1]);
  });
});
