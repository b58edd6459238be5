import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { brickWall } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import { scoreChannel } from "../../src/scorer/index.js";
import type { ScoreTerms, TunedReceiver } from "../../src/scorer/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import { arbitraryEmitters } from "../helpers/arbitrary-emitters.js";
import { enumerateStates, jointStateCount, quantileDbm, shareAtOrBelow } from "../helpers/brute-force.js";
import { levelBounds } from "../helpers/grid-bounds.js";

const receiver: TunedReceiver = {
  centreMhz: 2437,
  selectivity: brickWall(2),
  noiseFloorDbm: -101,
  gainDb: -8,
};
const terms: ScoreTerms = { wantedDbm: -56, requiredCiDb: 14, busyShareRatio: 0.01 };
const flat = (levelDbm: number, airtimeRatio: number): Emitter => ({
  id: "a",
  centreMhz: 2437,
  shape: brickWall(20),
  levelDbm,
  airtimeRatio,
  airtimeAssumed: true,
  contentionChannel: 6,
});

describe("scoreChannel, by hand", () => {
  // −50 as scanned is −68 in the channel; the noise lifts it by 0.002 dB: −56 + 68 − 14 = −2.
  it("is wanted − interference − required C/I", () => {
    const merit = scoreChannel([flat(-50, 0.25)], receiver, terms);
    const interferenceDbm = 10 * Math.log10(10 ** -6.8 + 10 ** -10.1);
    expect(merit.interferenceDbm).toBeCloseTo(interferenceDbm, 9);
    expect(merit.marginDb).toBeCloseTo(-56 - interferenceDbm - 14, 9);
    expect(merit.clearAirRatio).toBeCloseTo(0.75, 12);
    expect(merit.wantedDbm).toBe(-56);
  });

  it("has the noise alone on a quiet channel", () => {
    const merit = scoreChannel([], receiver, terms);
    expect(merit.interferenceDbm).toBeCloseTo(-101, 9);
    expect(merit.marginDb).toBeCloseTo(31, 9);
    expect(merit.clearAirRatio).toBe(1);
    expect(merit.contributors).toEqual([]);
  });

  it("fails by the noise alone where the signal is too weak", () => {
    const merit = scoreChannel([], receiver, { ...terms, wantedDbm: -90 });
    expect(merit.marginDb).toBeCloseTo(-3, 9);
    expect(merit.clearAirRatio).toBe(0);
  });
});

const wanted = fc.integer({ min: -80, max: -30 }).map((levelDbm) => levelDbm + 0.37);
const busy = fc.constantFrom(0, 0.001, 0.01, 0.1, 0.5);

describe("scoreChannel against enumeration", () => {
  it("gives level and clear air of the enumerated states", () => {
    fc.assert(
      fc.property(arbitraryEmitters(0, 14), wanted, busy, (emitters, wantedDbm, busyShareRatio) => {
        const merit = scoreChannel(emitters, receiver, { wantedDbm, requiredCiDb: 14, busyShareRatio });
        const { groups } = merit.distribution;
        fc.pre(jointStateCount(groups) <= 200_000);
        const states = enumerateStates(receiver.noiseFloorDbm, groups);
        const clear = shareAtOrBelow(states, wantedDbm - 14);
        expect(Math.abs(merit.clearAirRatio - clear)).toBeLessThan(1e-9);
        if (busyShareRatio > 0)
          expect(Math.abs(merit.interferenceDbm - quantileDbm(states, busyShareRatio))).toBeLessThan(1e-6);
        expect(merit.marginDb).toBeCloseTo(wantedDbm - merit.interferenceDbm - 14, 9);
      }),
      { numRuns: 120 },
    );
  });

  it("has a margin of 0 or more exactly where clear air is at least 1 − q", () => {
    fc.assert(
      fc.property(arbitraryEmitters(0, 30), wanted, busy, (emitters, wantedDbm, busyShareRatio) => {
        fc.pre(busyShareRatio > 0);
        const merit = scoreChannel(emitters, receiver, { wantedDbm, requiredCiDb: 14, busyShareRatio });
        expect(merit.marginDb >= -1e-9).toBe(merit.clearAirRatio >= 1 - busyShareRatio - 1e-9);
      }),
      { numRuns: 150 },
    );
  });
});

describe("scoreChannel, large instance", () => {
  // 130 sources on 13 Wi-Fi channels; bounds by the fine grid (see exceeded-level.test.ts).
  it("is never optimistic, within 0.25 dB, and its sign agrees with clear air, near the threshold too", () => {
    const random = seededRandom(3);
    const emitters = Array.from({ length: 130 }, (_, index): Emitter => {
      const channel = 1 + (index % 13);
      return {
        id: `source-${index}`,
        centreMhz: 2407 + 5 * channel,
        shape: brickWall(20),
        levelDbm: -45 - 30 * random(),
        airtimeRatio: 0.3 * random(),
        airtimeAssumed: index % 3 !== 0,
        contentionChannel: channel,
      };
    });
    const wide = { ...receiver, selectivity: brickWall(20) };
    const judged = { requiredCiDb: 14, busyShareRatio: 0.01 };
    const { interferenceDbm, distribution } = scoreChannel(emitters, wide, { ...judged, wantedDbm: 0 });
    const bounds = levelBounds(wide.noiseFloorDbm, distribution.groups, 0.01, 400_000);
    expect(bounds.highDbm - bounds.lowDbm).toBeLessThan(0.02);
    expect(interferenceDbm).toBeGreaterThanOrEqual(bounds.lowDbm - 1e-9);
    expect(interferenceDbm).toBeLessThanOrEqual(bounds.highDbm + 0.25);
    for (const awayDb of [3, 6]) {
      const wantedDbm = interferenceDbm + 14 + awayDb;
      const merit = scoreChannel(emitters, wide, { ...judged, wantedDbm });
      expect(merit.marginDb >= -1e-9).toBe(merit.clearAirRatio >= 0.99 - 1e-9);
    }
  });
});
