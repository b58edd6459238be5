import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SweepLevels } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import { channelMarginDb, receiverOf, scoreChannel } from "../../src/scorer/index.js";
import { arbitraryEmitters } from "../helpers/arbitrary-emitters.js";

const profile = findProfile("raster-13");
const sweep = (levelDbm: number): SweepLevels => ({
  place: "hall",
  crowd: "full",
  channels: [
    { channel: 6, centreMhz: 2437, passCount: 4, levelsDbm: [-100, levelDbm], atLevelCount: [3, 1] },
  ],
});

describe("channelMarginDb", () => {
  // Two routes to one figure: the whole score counts the clear air always, this one where it could matter.
  it.each([0, 0.01, 0.3, 1])(
    "is the whole score's margin, busy share %s, with and without a sweep",
    (share) => {
      fc.assert(
        fc.property(
          arbitraryEmitters(0, 24),
          fc.integer({ min: -80, max: -30 }),
          fc.integer({ min: -95, max: -40 }),
          (emitters, wantedDbm, sweptDbm) => {
            const receiver = { ...receiverOf(profile), centreMhz: 2437 };
            const terms = { wantedDbm, requiredCiDb: 14, busyShareRatio: share };
            for (const sweeps of [[], [sweep(sweptDbm)]])
              expect(channelMarginDb(emitters, receiver, terms, undefined, sweeps)).toBe(
                scoreChannel(emitters, receiver, terms, undefined, sweeps).marginDb,
              );
          },
        ),
        { seed: 631, numRuns: 40 },
      );
    },
  );

  it("is wanted − noise − required C/I where nothing is on the air", () => {
    const receiver = { ...receiverOf(profile), centreMhz: 2437 };
    const terms = { wantedDbm: -60, requiredCiDb: 14, busyShareRatio: 0.01 };
    expect(channelMarginDb([], receiver, terms)).toBeCloseTo(-60 + 104 - 14, 9);
  });
});
