import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { clearAirRatio, exceededLevelDbm, interferenceDistribution } from "../../src/scorer/index.js";
import type { Contributor } from "../../src/scorer/index.js";
import { loudestMw, statesLoudestFirst } from "../../src/scorer/interference-distribution.js";
import { seededRandom } from "../../src/numeric/index.js";
import { arbitraryGroups } from "../helpers/arbitrary-groups.js";

const on = (inChannelDbm: number, onRatio: number): Contributor => ({
  emitter: `${inChannelDbm}`,
  inChannelDbm,
  airtimeRatio: onRatio,
  airtimeAssumed: true,
  onRatio,
});

describe("interferenceDistribution", () => {
  it("keeps what it is given", () => {
    const groups = [[on(-60, 0.5)]];
    expect(interferenceDistribution(-104, groups)).toEqual({ restDbm: -104, groups });
  });

  it.each([Number.NaN, -Infinity, Infinity])("throws for a rest of %s dBm", (restDbm) => {
    expect(() => interferenceDistribution(restDbm, [])).toThrow(ArgumentError);
  });

  it.each([
    ["more than all of the time", 0.6],
    ["NaN", Number.NaN],
  ])("throws when a group is on for %s", (_, onRatio) => {
    expect(() => interferenceDistribution(-104, [[on(-60, 0.5), on(-70, onRatio)]])).toThrow(ArgumentError);
  });
});

describe("statesLoudestFirst", () => {
  it("makes rising states with idle time, equal powers joined, silent members left out, by hand", () => {
    const distribution = interferenceDistribution(-104, [
      [on(-60, 0)],
      [on(-50, 0.25), on(-50, 0.25), on(-60, 0.2), on(-Infinity, 0.1)],
      [on(-40, 1)],
    ]);
    const [loudest, other, ...none] = statesLoudestFirst(distribution);
    expect(none).toEqual([]);
    expect([...loudest!.valueMw].map((mw) => 10 * Math.log10(mw))).toEqual([expect.closeTo(-40, 9)]);
    expect([...loudest!.shareRatio]).toEqual([1]);
    expect([...other!.valueMw]).toEqual([0, expect.closeTo(1e-6, 15), expect.closeTo(1e-5, 15)]);
    expect([...other!.shareRatio]).toEqual([
      expect.closeTo(0.3, 12),
      expect.closeTo(0.2, 12),
      expect.closeTo(0.5, 12),
    ]);
    expect(loudestMw(other!)).toBeCloseTo(1e-5, 15);
  });

  it("accounts for all of the time in every group, values rising strictly", () => {
    fc.assert(
      fc.property(arbitraryGroups(4, 8), (groups) => {
        for (const { valueMw, shareRatio } of statesLoudestFirst(interferenceDistribution(-104, groups))) {
          expect(shareRatio.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
          for (let index = 1; index < valueMw.length; index++)
            expect(valueMw[index]!).toBeGreaterThan(valueMw[index - 1]!);
        }
      }),
    );
  });
});

describe("the distribution against a seeded Monte Carlo", () => {
  /** One draw: each group idle or with one of its members on, by its shares of time. */
  function drawDbm(restDbm: number, groups: readonly Contributor[][], random: () => number): number {
    let totalMw = 10 ** (restDbm / 10);
    for (const group of groups) {
      let left = random();
      const turn = group.find(({ onRatio }) => (left -= onRatio) < 0);
      if (turn !== undefined) totalMw += 10 ** (turn.inChannelDbm / 10);
    }
    return 10 * Math.log10(totalMw);
  }

  // 100,000 draws: a share p is met to √(p(1−p)/1e5) ≤ 0.0016 at one standard deviation; 4.5 of them allowed.
  it("meets clear air, and the level that a tenth and a hundredth of the time exceeds", () => {
    const random = seededRandom(20260501);
    for (const groups of fc.sample(arbitraryGroups(6, 5), { numRuns: 8, seed: 7 })) {
      const draws = Array.from({ length: 100_000 }, () => drawDbm(-104, groups, random));
      const distribution = interferenceDistribution(-104, groups);
      const shareAbove = (levelDbm: number): number =>
        draws.reduce((count, drawnDbm) => count + (drawnDbm > levelDbm + 1e-9 ? 1 : 0), 0) / draws.length;
      const within = (ratio: number): number => 4.5 * Math.sqrt((ratio * (1 - ratio)) / 1e5) + 1e-9;
      for (const ceilingDbm of [-90, -75, -60]) {
        const clear = clearAirRatio(distribution, ceilingDbm);
        expect(Math.abs(1 - shareAbove(ceilingDbm) - clear)).toBeLessThanOrEqual(within(clear));
      }
      for (const busyShareRatio of [0.1, 0.01]) {
        const levelDbm = exceededLevelDbm(distribution, busyShareRatio);
        expect(shareAbove(levelDbm)).toBeLessThanOrEqual(busyShareRatio + within(busyShareRatio));
        // Just below the level more than q of the time is louder.
        if (levelDbm > -104 + 1e-6)
          expect(shareAbove(levelDbm - 1e-6)).toBeGreaterThan(busyShareRatio - within(busyShareRatio));
      }
    }
  });
});
