import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { exceededLevelDbm, interferenceDistribution, takeTurns } from "../../src/scorer/index.js";
import type { Contributor } from "../../src/scorer/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import { arbitraryGroups } from "../helpers/arbitrary-groups.js";
import {
  enumerateStates,
  everySum,
  jointStateCount,
  pairShareAtOrBelow,
  quantileDbm,
} from "../helpers/brute-force.js";
import { levelBounds } from "../helpers/grid-bounds.js";
import { shuffled } from "../helpers/shuffled.js";

const NOISE_DBM = -104;
const sumDbm = (...levelsDbm: number[]): number =>
  10 * Math.log10(levelsDbm.reduce((sum, levelDbm) => sum + 10 ** (levelDbm / 10), 0));
const alone = (inChannelDbm: number, airtimeRatio: number): Contributor[] =>
  takeTurns([{ emitter: `at ${inChannelDbm}`, inChannelDbm, airtimeRatio, airtimeAssumed: true }]);
const level = (groups: readonly Contributor[][], busyShareRatio: number): number =>
  exceededLevelDbm(interferenceDistribution(NOISE_DBM, groups), busyShareRatio);

describe("exceededLevelDbm, by hand", () => {
  it("is the noise where nothing is on", () => {
    expect(level([], 0.01)).toBeCloseTo(NOISE_DBM, 9);
    expect(level([], 0)).toBeCloseTo(NOISE_DBM, 9);
  });

  it("leaves out a source that is on for no more than q", () => {
    expect(level([alone(-60, 0.01)], 0.01)).toBeCloseTo(NOISE_DBM, 9);
    expect(level([alone(-60, 0.01 + 5e-10)], 0.01)).toBeCloseTo(NOISE_DBM, 9); // slack of 1e-9
    expect(level([alone(-60, 0.5)], 0.5 - 1e-9)).toBeCloseTo(NOISE_DBM, 9); // itself included
    expect(level([alone(-60, 0.0101)], 0.01)).toBeCloseTo(sumDbm(NOISE_DBM, -60), 9);
  });

  // Both on 1 %, one alone 9 % each, none 81 %.
  it("adds up independent groups", () => {
    const groups = [alone(-60, 0.1), alone(-70, 0.1)];
    expect(level(groups, 0.009)).toBeCloseTo(sumDbm(NOISE_DBM, -60, -70), 9);
    expect(level(groups, 0.01)).toBeCloseTo(sumDbm(NOISE_DBM, -60), 9);
    expect(level(groups, 0.1)).toBeCloseTo(sumDbm(NOISE_DBM, -70), 9);
    expect(level(groups, 0.19)).toBeCloseTo(NOISE_DBM, 9);
  });

  it("is the loudest emitter of every group at q = 0, whatever its airtime", () => {
    const group = takeTurns([
      { emitter: "a", inChannelDbm: -50, airtimeRatio: 1e-12, airtimeAssumed: true },
      { emitter: "b", inChannelDbm: -60, airtimeRatio: 0.9, airtimeAssumed: true },
    ]);
    expect(level([group, alone(-70, 0)], 0)).toBeCloseTo(sumDbm(NOISE_DBM, -50, -70), 9);
  });

  it("is the lowest attainable level at q = 1: the noise with what is always on", () => {
    expect(level([alone(-60, 0.5), alone(-70, 0.1)], 1)).toBeCloseTo(NOISE_DBM, 9);
    expect(level([alone(-60, 1), alone(-70, 0.1)], 1)).toBeCloseTo(sumDbm(NOISE_DBM, -60), 9);
    const sometimes = Array.from({ length: 12 }, (_, index) => alone(-70 - index, 0.5)); // 4096 states
    for (const busyShareRatio of [1, 1 - 1e-10])
      expect(level([alone(-60, 1), ...sometimes], busyShareRatio)).toBeCloseTo(sumDbm(NOISE_DBM, -60), 9);
  });
});

const shares = fc.oneof(
  fc.constantFrom(0, 0.001, 0.01, 0.05, 0.1, 0.25, 0.5, 0.9, 1),
  fc.double({ min: 0.0005, max: 1, noNaN: true }),
);

describe("exceededLevelDbm against enumeration", () => {
  // Exact up to rounding: 1e-6 dB leaves room for sums in another order at the edge of a comparison.
  it("is exact for small instances with ties, airtimes 0 and 1, reported and assumed", () => {
    fc.assert(
      fc.property(arbitraryGroups(5, 4), shares, (groups, busyShareRatio) => {
        fc.pre(busyShareRatio > 0);
        const exactDbm = quantileDbm(enumerateStates(NOISE_DBM, groups), busyShareRatio);
        expect(Math.abs(level(groups, busyShareRatio) - exactDbm)).toBeLessThan(1e-6);
      }),
      { numRuns: 300 },
    );
  });

  it("is exact for instances of up to 200,000 states", () => {
    const large = arbitraryGroups(8, 4).filter((groups) => {
      const count = jointStateCount(groups);
      return count > 10_000 && count <= 200_000;
    });
    fc.assert(
      fc.property(large, shares, (groups, busyShareRatio) => {
        fc.pre(busyShareRatio > 0);
        const states = enumerateStates(NOISE_DBM, groups);
        const exactDbm = quantileDbm(states, busyShareRatio);
        // Where a tail meets q + slack to the last digit, the order of adding decides: neither is wrong.
        for (const nearRatio of [busyShareRatio - 1e-12, busyShareRatio + 1e-12])
          fc.pre(quantileDbm(states, nearRatio) === exactDbm);
        expect(Math.abs(level(groups, busyShareRatio) - exactDbm)).toBeLessThan(1e-6);
      }),
      { numRuns: 25 },
    );
  });
});

/** Groups of Wi-Fi channels as a busy building has them: levels of one draw between two limits. */
function busyBand(
  groupCount: number,
  memberCount: number,
  lowDbm: number,
  highDbm: number,
  seed: number,
): Contributor[][] {
  const random = seededRandom(seed);
  return Array.from({ length: groupCount }, (_, group) =>
    takeTurns(
      Array.from({ length: memberCount }, (__, index) => ({
        emitter: `${group}-${index}`,
        inChannelDbm: lowDbm + (highDbm - lowDbm) * random(),
        airtimeRatio: random() < 0.5 ? 0.9 / memberCount : random() * 0.6,
        airtimeAssumed: random() < 0.7,
      })),
    ),
  );
}

describe("exceededLevelDbm of more states than one list holds", () => {
  /** Every member on for the same share of time, so that none falls silent behind louder ones; loud groups first. */
  const widths = (memberCounts: readonly number[], seed: number): Contributor[][] => {
    const random = seededRandom(seed);
    return memberCounts.map((memberCount, group) =>
      takeTurns(
        Array.from({ length: memberCount }, (_, index) => ({
          emitter: `${group}-${index}`,
          inChannelDbm: -80 - group + 18 * random(),
          airtimeRatio: 0.9 / memberCount,
          airtimeAssumed: true,
        })),
      ),
    );
  };
  const BUSY_SHARES = [0.001, 0.01, 0.1, 0.5, 0.9];

  it.each([
    ["8 groups of 3", [3, 3, 3, 3, 3, 3, 3, 3], 21], // 4^8
    ["few and wide groups", [29, 29, 29, 8], 22], // 30·30·30·9 = 243,000
  ])("is exact for %s", (_, memberCounts, seed) => {
    const groups = widths(memberCounts, seed);
    const states = enumerateStates(NOISE_DBM, groups);
    for (const busyShareRatio of BUSY_SHARES)
      expect(level(groups, busyShareRatio)).toBeCloseTo(quantileDbm(states, busyShareRatio), 9);
  });

  // 4^11 = 4.2 million states, in two halves of which every pair is compared.
  it("is never below the exact level for 11 groups of 3, and within 0.09 dB of it", () => {
    for (const seed of [23, 24]) {
      const groups = widths(new Array<number>(11).fill(3), seed);
      const halves = [everySum(groups.slice(0, 5)), everySum(groups.slice(5))] as const;
      const aboveRatio = (levelDbm: number): number => 1 - pairShareAtOrBelow(NOISE_DBM, halves, levelDbm);
      for (const busyShareRatio of BUSY_SHARES) {
        const levelDbm = level(groups, busyShareRatio);
        expect(aboveRatio(levelDbm)).toBeLessThanOrEqual(busyShareRatio + 2e-9);
        expect(aboveRatio(levelDbm - 0.09)).toBeGreaterThan(busyShareRatio);
      }
    }
  });
});

describe("exceededLevelDbm, large instances", () => {
  // The grid rounds each group's power by less than a cell: with 400,000 cells below the loudest sum the bounds lie
  // within 0.02 dB of each other here, which the test checks first.
  it.each([
    ["13 groups of 10, near each other", 13, 10, -75, -60, 1],
    ["13 groups of 10, wider apart", 13, 10, -90, -65, 2],
    ["13 groups of 15", 13, 15, -85, -60, 3],
    ["30 groups of 3", 30, 3, -80, -65, 4],
  ])("%s: never optimistic, within 0.25 dB", (_, groupCount, memberCount, lowDbm, highDbm, seed) => {
    const groups = busyBand(groupCount, memberCount, lowDbm, highDbm, seed);
    for (const busyShareRatio of [0.01, 0.1]) {
      const bounds = levelBounds(NOISE_DBM, groups, busyShareRatio, 400_000);
      expect(bounds.highDbm - bounds.lowDbm).toBeLessThan(0.02);
      const levelDbm = level(groups, busyShareRatio);
      expect(levelDbm).toBeGreaterThanOrEqual(bounds.lowDbm - 1e-9);
      expect(levelDbm).toBeLessThanOrEqual(bounds.highDbm + 0.25);
    }
  });

  it("stays within 0.25 dB with 200 sources outside every group", () => {
    const groups = busyBand(200, 1, -80, -65, 5);
    const bounds = levelBounds(NOISE_DBM, groups, 0.01, 200_000);
    expect(bounds.highDbm - bounds.lowDbm).toBeLessThan(0.02);
    const levelDbm = level(groups, 0.01);
    expect(levelDbm).toBeGreaterThanOrEqual(bounds.lowDbm - 1e-9);
    expect(levelDbm).toBeLessThanOrEqual(bounds.highDbm + 0.25);
  });

  it("is the lowest attainable level at q = 1 also where every one of many groups is always on", () => {
    const random = seededRandom(6);
    const groups = Array.from({ length: 13 }, (_, group) =>
      takeTurns(
        Array.from({ length: 10 }, (__, index) => ({
          emitter: `${group}-${index}`,
          inChannelDbm: -60 - 20 * random(),
          airtimeRatio: 0.1,
          airtimeAssumed: true,
        })),
      ),
    );
    const lowestDbm = sumDbm(
      NOISE_DBM,
      ...groups.map((group) => Math.min(...group.map(({ inChannelDbm }) => inChannelDbm))),
    );
    const levelDbm = level(groups, 1);
    expect(levelDbm).toBeGreaterThanOrEqual(lowestDbm - 1e-6);
    expect(levelDbm).toBeLessThanOrEqual(lowestDbm + 0.25);
  });

  // All on together for 0.95^k of the time: far more than 1 %, so the level is the sum of all, whatever was merged.
  it("is never below the sum of all where all are on together for more than q", () => {
    for (const groupCount of [13, 20, 40]) {
      const random = seededRandom(groupCount);
      const levelsDbm = Array.from({ length: groupCount }, () => -120 + 60 * random());
      const groups = levelsDbm.map((levelDbm) => alone(levelDbm, 0.95));
      const allDbm = sumDbm(NOISE_DBM, ...levelsDbm);
      expect(level(groups, 0.01)).toBeGreaterThanOrEqual(allDbm - 1e-9);
      expect(level(groups, 0.01)).toBeLessThanOrEqual(allDbm + 1e-9);
    }
  });

  it("doesn't depend on the order of the groups", () => {
    const groups = busyBand(13, 10, -90, -60, 7);
    const levelDbm = level(groups, 0.01);
    for (const seed of [1, 2, 3]) expect(level(shuffled(groups, seed), 0.01)).toBe(levelDbm);
  });
});

describe("exceededLevelDbm, invariants", () => {
  it("never rises with q", () => {
    fc.assert(
      fc.property(arbitraryGroups(5, 4), shares, shares, (groups, one, other) => {
        const [small, great] = [Math.min(one, other), Math.max(one, other)];
        expect(level(groups, great)).toBeLessThanOrEqual(level(groups, small) + 1e-9);
      }),
    );
  });

  it.each([-0.1, 1.1, Number.NaN])("throws for q = %s", (busyShareRatio) => {
    expect(() => level([], busyShareRatio)).toThrow(ArgumentError);
  });
});
