import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Emitter } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import { rankChannels } from "../../src/scorer/index.js";
import type { ChannelScore } from "../../src/scorer/index.js";
import { arbitraryEmitters } from "../helpers/arbitrary-emitters.js";
import { profileWith } from "../helpers/profiles.js";
import { shuffled } from "../helpers/shuffled.js";

const profile = findProfile("raster-13");
const busy = fc.constantFrom(0, 0.01, 0.1);

function scores(
  emitters: readonly Emitter[],
  busyShareRatio = 0.01,
  radio = profile,
  wantedDbm = -56,
): ChannelScore[] {
  const { ranking } = rankChannels({ emitters, profile: radio, wantedDbm, busyShareRatio });
  return [...ranking].sort((a, b) => a.channel - b.channel);
}

/** No margin and no clear air of the second is better than that of the first. */
function expectNoBetter(before: readonly ChannelScore[], after: readonly ChannelScore[]): void {
  for (const [index, one] of before.entries()) {
    expect(after[index]!.marginDb).toBeLessThanOrEqual(one.marginDb + 1e-6);
    expect(after[index]!.clearAirRatio).toBeLessThanOrEqual(one.clearAirRatio + 1e-9);
  }
}

// Small enough for every instance to be exact: then the comparison has no tolerance but rounding.
const few = arbitraryEmitters(1, 9);

describe("more on the air never helps", () => {
  it("adding an emitter never raises a margin or the clear air", () => {
    fc.assert(
      fc.property(few, busy, (emitters, busyShareRatio) => {
        expectNoBetter(scores(emitters.slice(1), busyShareRatio), scores(emitters, busyShareRatio));
      }),
      { numRuns: 80 },
    );
  });

  it("raising an emitter's level never does, past its group's others too", () => {
    fc.assert(
      fc.property(few, busy, fc.integer({ min: 1, max: 40 }), (emitters, busyShareRatio, byDb) => {
        const raised = emitters.map((emitter, index) =>
          index === 0 ? { ...emitter, levelDbm: emitter.levelDbm + byDb } : emitter,
        );
        expectNoBetter(scores(emitters, busyShareRatio), scores(raised, busyShareRatio));
      }),
      { numRuns: 120 },
    );
  });

  it("raising an emitter's airtime never does", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(few, busy, share, (emitters, busyShareRatio, towardsOne) => {
        const raised = emitters.map((emitter, index) =>
          index === 0
            ? { ...emitter, airtimeRatio: emitter.airtimeRatio + towardsOne * (1 - emitter.airtimeRatio) }
            : emitter,
        );
        expectNoBetter(scores(emitters, busyShareRatio), scores(raised, busyShareRatio));
      }),
      { numRuns: 120 },
    );
  });
});

describe("results depend on what is there, not on its order", () => {
  it("gives the same for any order of emitters", () => {
    fc.assert(
      fc.property(arbitraryEmitters(1, 25), fc.nat(), (emitters, seed) => {
        const [one, other] = [scores(emitters), scores(shuffled(emitters, seed))];
        for (const [index, score] of one.entries()) {
          expect(other[index]!.marginDb).toBeCloseTo(score.marginDb, 9);
          expect(other[index]!.clearAirRatio).toBeCloseTo(score.clearAirRatio, 9);
          expect(other[index]!.contributors).toEqual(score.contributors);
        }
        const ranks = (list: readonly ChannelScore[]): number[] => list.map(({ rank }) => rank);
        expect(ranks(other)).toEqual(ranks(one));
      }),
      { numRuns: 60 },
    );
  });
});

describe("levels shift together", () => {
  // With the noise 100 dB further down than usual it adds less than 1e-4 dB to a source of −95 dBm in its skirt.
  it("shifting every level shifts the interference by as much, where the noise counts for nothing", () => {
    const silent = profileWith("raster-13", { noiseFigureDb: -100 });
    const always = few.map((emitters) =>
      emitters.map((emitter) => ({ ...emitter, airtimeRatio: 1, airtimeAssumed: false })),
    );
    fc.assert(
      fc.property(always, fc.integer({ min: 1, max: 30 }), (emitters, byDb) => {
        const shifted = emitters.map((emitter) => ({ ...emitter, levelDbm: emitter.levelDbm + byDb }));
        const [before, after] = [scores(emitters, 0.01, silent), scores(shifted, 0.01, silent, -56 + byDb)];
        for (const [index, one] of before.entries()) {
          expect(after[index]!.interferenceDbm - one.interferenceDbm).toBeCloseTo(byDb, 3);
          expect(after[index]!.clearAirRatio).toBe(one.clearAirRatio);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("shifting the wanted level shifts every margin by as much", () => {
    fc.assert(
      fc.property(few, fc.integer({ min: -20, max: 20 }), (emitters, byDb) => {
        const [before, after] = [scores(emitters), scores(emitters, 0.01, profile, -56 + byDb)];
        for (const [index, one] of before.entries())
          expect(after[index]!.marginDb - one.marginDb).toBeCloseTo(byDb, 6);
      }),
      { numRuns: 60 },
    );
  });
});
