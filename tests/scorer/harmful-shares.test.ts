import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { harmfulShares, interferenceDistribution, takeTurns } from "../../src/scorer/index.js";
import type { Contributor } from "../../src/scorer/index.js";
import { arbitraryGroups } from "../helpers/arbitrary-groups.js";

const on = (inChannelDbm: number, onRatio: number): Contributor => ({
  emitter: `${inChannelDbm}`,
  inChannelDbm,
  airtimeRatio: onRatio,
  airtimeAssumed: true,
  onRatio,
});

describe("harmfulShares", () => {
  // At a ceiling of −70 dBm an emitter of −60 is harmful alone, one of −80 is not.
  it("adds the on-shares of a group's harmful emitters, group by group, by hand", () => {
    const distribution = interferenceDistribution(-104, [
      [on(-50, 0.2), on(-60, 0.1), on(-80, 0.4)],
      [on(-80, 0.9)],
      [on(-65, 0.3)],
    ]);
    expect(harmfulShares(distribution, -70)).toEqual([expect.closeTo(0.3, 12), expect.closeTo(0.3, 12)]);
  });

  it("counts the noise with each emitter: C/(I+N), not C/I", () => {
    // −73.5 and noise −73 together are −70.23 dBm.
    expect(harmfulShares(interferenceDistribution(-73, [[on(-73.5, 0.5)]]), -70.3)).toEqual([0.5]);
    expect(harmfulShares(interferenceDistribution(-73, [[on(-73.5, 0.5)]]), -70.2)).toEqual([]);
  });

  it("compares with a slack of 1e-9 dB", () => {
    const ceilingDbm = 10 * Math.log10(10 ** -6 + 10 ** -10.4); // −60 and the noise
    const distribution = interferenceDistribution(-104, [[on(-60, 0.5)]]);
    expect(harmfulShares(distribution, ceilingDbm - 5e-10)).toEqual([]);
    expect(harmfulShares(distribution, ceilingDbm - 2e-9)).toEqual([0.5]);
  });

  it("leaves alone what is harmful only together with others", () => {
    // Each −71, both −68: neither alone exceeds −70.
    const distribution = interferenceDistribution(-104, [[on(-71, 0.5)], [on(-71, 0.5)]]);
    expect(harmfulShares(distribution, -70)).toEqual([]);
  });

  it("stays within 0..1 for every group", () => {
    const ceilings = fc.double({ min: -125, max: -40, noNaN: true });
    fc.assert(
      fc.property(arbitraryGroups(3, 12), ceilings, (groups, ceilingDbm) => {
        for (const share of harmfulShares(interferenceDistribution(-104, groups), ceilingDbm)) {
          expect(share).toBeGreaterThan(0);
          expect(share).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("is at most 1 where assumed airtimes of any size fill the channel", () => {
    const airtimes = fc.array(fc.double({ min: 0.01, max: 0.4, noNaN: true }), {
      minLength: 10,
      maxLength: 40,
    });
    fc.assert(
      fc.property(airtimes, (ratios) => {
        const group = takeTurns(
          ratios.map((airtimeRatio, index) => ({
            emitter: `${index}`,
            inChannelDbm: -50 - index,
            airtimeRatio,
            airtimeAssumed: true,
          })),
        );
        const [share] = harmfulShares(interferenceDistribution(-104, [group]), -100);
        expect(share).toBeLessThanOrEqual(1);
      }),
      { numRuns: 1000 },
    );
  });
});
