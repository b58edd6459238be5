import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { clearAirRatio, interferenceDistribution, takeTurns } from "../../src/scorer/index.js";
import type { Contributor } from "../../src/scorer/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import { arbitraryGroups } from "../helpers/arbitrary-groups.js";
import { enumerateStates, everySum, pairShareAtOrBelow, shareAtOrBelow } from "../helpers/brute-force.js";
import { clearBounds } from "../helpers/grid-bounds.js";
import { shuffled } from "../helpers/shuffled.js";

const NOISE_DBM = -104;
const alone = (inChannelDbm: number, airtimeRatio: number): Contributor[] =>
  takeTurns([{ emitter: `at ${inChannelDbm}`, inChannelDbm, airtimeRatio, airtimeAssumed: true }]);
const clear = (groups: readonly Contributor[][], ceilingDbm: number): number =>
  clearAirRatio(interferenceDistribution(NOISE_DBM, groups), ceilingDbm);

describe("clearAirRatio, by hand", () => {
  it("is all of the time where nothing is on, and none where the noise alone is too loud", () => {
    expect(clear([], -90)).toBe(1);
    expect(clear([], -105)).toBe(0);
  });

  it("counts the states that stay at or below the ceiling", () => {
    const groups = [alone(-60, 0.1), alone(-70, 0.3)];
    expect(clear(groups, -50)).toBe(1);
    expect(clear(groups, -65)).toBeCloseTo(0.9, 12); // all but the −60 source
    expect(clear(groups, -80)).toBeCloseTo(0.9 * 0.7, 12); // neither
    expect(clear(groups, -59.8)).toBeCloseTo(1 - 0.03, 12); // both together are −59.586 dBm
  });

  it("counts a level that meets the ceiling as clear, with 1e-9 dB of slack", () => {
    const levelDbm = 10 * Math.log10(10 ** -6 + 10 ** (NOISE_DBM / 10));
    expect(clear([alone(-60, 0.4)], levelDbm)).toBe(1);
    expect(clear([alone(-60, 0.4)], levelDbm - 5e-10)).toBe(1);
    expect(clear([alone(-60, 0.4)], levelDbm - 2e-9)).toBeCloseTo(0.6, 12);
  });

  it("is never clear under a harmful source that is always on", () => {
    expect(clear([alone(-60, 1), alone(-90, 0.5)], -70)).toBe(0);
  });
});

describe("clearAirRatio against enumeration", () => {
  it("is exact to 1e-9 for random instances", () => {
    const ceilings = fc.integer({ min: -250, max: -80 }).map((value) => value / 2 + 0.123);
    fc.assert(
      fc.property(arbitraryGroups(6, 4), ceilings, (groups, ceilingDbm) => {
        const exact = shareAtOrBelow(enumerateStates(NOISE_DBM, groups), ceilingDbm);
        expect(Math.abs(clear(groups, ceilingDbm) - exact)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it("is exact where the ceiling is one of the attainable sums", () => {
    fc.assert(
      fc.property(arbitraryGroups(4, 4), fc.nat(), (groups, draw) => {
        const states = enumerateStates(NOISE_DBM, groups);
        const ceilingDbm = states[draw % states.length]!.totalDbm;
        expect(Math.abs(clear(groups, ceilingDbm) - shareAtOrBelow(states, ceilingDbm))).toBeLessThan(1e-9);
      }),
      { numRuns: 200 },
    );
  });
});

describe("clearAirRatio, with too many open sums to settle one by one", () => {
  // 4^12 = 17 million states: two halves of 4096 combinations each, every pair compared with the ceiling.
  it.each([
    ["all within 6 dB", -71, -65, 4],
    ["from loud to faint", -90, -65, 5],
    ["some never silent", -75, -66, 6],
  ])("is exact for 12 groups of 3: %s", (name, lowDbm, highDbm, seed) => {
    const random = seededRandom(seed);
    const groups = Array.from({ length: 12 }, (_, group) =>
      takeTurns(
        Array.from({ length: 3 }, (__, index) => ({
          emitter: `${group}-${index}`,
          inChannelDbm: lowDbm + (highDbm - lowDbm) * random(),
          airtimeRatio: name === "some never silent" && group < 4 ? 0.5 : 0.05 + 0.25 * random(),
          airtimeAssumed: true,
        })),
      ),
    );
    const halves = [everySum(groups.slice(0, 6)), everySum(groups.slice(6))] as const;
    const meanMw = halves.flat().reduce((sum, [powerMw, share]) => sum + powerMw * share, 0);
    for (const ratio of [0.7, 0.9, 1.1, 1.4]) {
      const ceilingDbm = 10 * Math.log10(ratio * meanMw);
      const exact = pairShareAtOrBelow(NOISE_DBM, halves, ceilingDbm);
      expect(exact).toBeGreaterThan(0.001);
      expect(exact).toBeLessThan(0.999);
      expect(clear(groups, ceilingDbm)).toBeCloseTo(exact, 9);
    }
  });
});

/** Groups of Wi-Fi channels as a busy building has them, none of them loud enough to decide alone. */
function busyBand(groupCount: number, memberCount: number): Contributor[][] {
  const random = seededRandom(11);
  return Array.from({ length: groupCount }, (_, group) =>
    takeTurns(
      Array.from({ length: memberCount }, (__, index) => ({
        emitter: `${group}-${index}`,
        inChannelDbm: -85 + 20 * random(),
        airtimeRatio: 0.004 + (0.6 / memberCount) * random(),
        airtimeAssumed: true,
      })),
    ),
  );
}

describe("clearAirRatio, large instances", () => {
  const groups = busyBand(13, 10); // 11^13 = 3.5e13 states

  // Grid of 200,000 cells up to the ceiling: rounding moves a sum by at most 13 cells; the test checks how far that
  // leaves the two bounds apart.
  it.each([-75, -68])("lies within its bounds at a ceiling of %s dBm", (ceilingDbm) => {
    const { low, high } = clearBounds(NOISE_DBM, groups, ceilingDbm, 200_000);
    expect(high - low).toBeLessThan(0.002);
    const ratio = clear(groups, ceilingDbm);
    expect(ratio).toBeGreaterThanOrEqual(low - 1e-9);
    expect(ratio).toBeLessThanOrEqual(high + 1e-9);
  });

  it("doesn't depend on the order of the groups beyond 1e-12", () => {
    const smaller = busyBand(13, 5);
    const ratio = clear(smaller, -68);
    for (const seed of [1, 2, 3]) expect(clear(shuffled(smaller, seed), -68)).toBeCloseTo(ratio, 12);
  });

  // A dense band near the ceiling must not take its time by the number of states. About 1 s on an idle core; 20 s leaves room for a busy machine.
  it("answers for 13 groups of 10 near the ceiling within 20 s", () => {
    const start = performance.now();
    const ratio = clear(groups, -66);
    expect(ratio).toBeGreaterThan(0);
    expect(ratio).toBeLessThan(1);
    expect(performance.now() - start).toBeLessThan(20_000);
  });
});

describe("clearAirRatio, invariants", () => {
  it("never falls as the ceiling rises, and stays in 0..1", () => {
    const ceiling = fc.double({ min: -120, max: -40, noNaN: true });
    fc.assert(
      fc.property(arbitraryGroups(5, 4), ceiling, ceiling, (groups, one, other) => {
        const low = clear(groups, Math.min(one, other));
        const high = clear(groups, Math.max(one, other));
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeGreaterThanOrEqual(low - 1e-12);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("is nothing where no wanted level arrives, whatever is on the air", () => {
    expect(clear([], -Infinity)).toBe(0);
  });

  it.each([Number.NaN, Infinity])("throws for a ceiling of %s", (ceilingDbm) => {
    expect(() => clear([], ceilingDbm)).toThrow(ArgumentError);
  });
});
