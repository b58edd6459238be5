import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { DEFAULT_DISTANCES_M, referenceSetting } from "../../src/venue/index.js";

const profile = findProfile("raster-13");

describe("referenceSetting", () => {
  it("fills in the reference receiver: 20 m, indoor N = 22, Rician K = 6 dB, 99 %, q = 1 %, bursts of 2 ms, 90 minutes", () => {
    expect(referenceSetting({ emitters: [], profile })).toMatchObject({
      profile,
      distanceM: 20,
      distancesM: [5, 10, 15, 20, 30, 40, 60],
      pathModel: { kind: "indoor", distancePowerCoefficient: 22, floorLossDb: 0 },
      fadeLaw: { law: "rician", kDb: 6 },
      reliability: 0.99,
      busyShareRatio: 0.01,
      burstMs: 2,
      eventMinutes: 90,
      receiverCount: null,
      setForAll: false,
    });
    expect(DEFAULT_DISTANCES_M).toEqual([5, 10, 15, 20, 30, 40, 60]);
  });

  it("keeps what it is told, a busy share of 0 too", () => {
    const told = {
      distanceM: 8,
      distancesM: [1, 2],
      pathModel: { kind: "free-space" },
      fadeLaw: { law: "rayleigh" },
      reliability: 0.9,
      busyShareRatio: 0,
      burstMs: 1,
      eventMinutes: 30,
      receiverCount: 4,
    } as const;
    expect(referenceSetting({ emitters: [], profile, ...told })).toMatchObject({ profile, ...told });
  });
});
