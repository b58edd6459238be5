import { describe, expect, it } from "vitest";
import type { SweepLevels } from "../../src/band/index.js";
import { lookInBursts } from "../../src/quality/index.js";
import { findProfile } from "../../src/radio/index.js";
import { interferenceDistribution, takeTurns } from "../../src/scorer/index.js";
import type { ChannelScore } from "../../src/scorer/index.js";
import { receiverFrames, receiverLooks } from "../../src/venue/index.js";
import type { LookTerms, ReceiverLooks } from "../../src/venue/index.js";
import { profileWith } from "../helpers/profiles.js";
import { score } from "../helpers/scores.js";

const profile = findProfile("raster-13"); // requires 14 dB, sensitivity −90 dBm, 4.5 ms, 44 frames a second
const TERMS: LookTerms = { profile, burstMs: 2, fadeAllowanceDb: 6, eventMinutes: 2 };

function heard(...levels: readonly (readonly [inChannelDbm: number, onRatio: number])[]): ChannelScore {
  const groups = levels.map(([inChannelDbm, airtimeRatio]) =>
    takeTurns([{ emitter: `${inChannelDbm}`, inChannelDbm, airtimeRatio, airtimeAssumed: true }]),
  );
  return score(1, 0, null, { distribution: interferenceDistribution(-104, groups) });
}

/** A sweep of which a share of passes heard a level above every ceiling here. */
function swept(busyRatio: number): ChannelScore["swept"] {
  const crowd: SweepLevels["crowd"] = "full";
  const passCount = 100;
  const atLevelCount = [passCount * (1 - busyRatio), passCount * busyRatio];
  const levels = { channel: 1, centreMhz: 2412, levelsDbm: [-104, -30], atLevelCount, passCount };
  return [{ place: "", crowd, levels }];
}

function looks(scores: readonly ChannelScore[], given: Partial<LookTerms> = {}): ReceiverLooks {
  const terms = { ...TERMS, ...given };
  return receiverLooks(scores, receiverFrames(scores, terms), terms);
}

/** The chance of a run of k or more in n, by the whole distribution of the present run: another route. */
function runChance(p: number, k: number, n: number): number {
  let share = [1, ...Array.from({ length: k }, () => 0)];
  for (let trial = 0; trial < n; trial++) {
    const open = share.slice(0, k).reduce((sum, value) => sum + value, 0);
    share = share.map((_, run) => {
      if (run === 0) return open * (1 - p);
      return share[run - 1]! * p + (run === k ? share[k]! : 0);
    });
  }
  return share[k]!;
}

describe("the independent look", () => {
  // Wanted −56: −73 dBm is harmless at the ceiling of −70 and harmful at that of −76, 6 dB down.
  const { typical, edge } = looks([heard([-73, 0.2])]);
  const lossRatio = 1 - 0.8 * Math.exp((-4.5 * 0.2) / (2 * 0.8)); // one group: design section 7

  it("is that of the frames lost at each position", () => {
    expect([typical.lossRatio, typical.lostPerMinute, typical.holdOnceAnEventS]).toEqual([0, 0, 0]);
    expect(edge.lossRatio).toBeCloseTo(lossRatio, 12);
    expect(edge.lostPerMinute).toBeCloseTo(lossRatio * 2640, 9);
  });

  it("has the chances of 0.1, 0.5 and 2 s in the event: 5, 22 and 88 of 5280 frames", () => {
    expect(typical.holds.map(({ probability }) => probability)).toEqual([0, 0, 0]);
    expect(edge.holds.map(({ holdS, frameCount }) => [holdS, frameCount])).toEqual([
      [0.1, 5],
      [0.5, 22],
      [2, 88],
    ]);
    for (const { frameCount, probability } of edge.holds) {
      const expected = runChance(lossRatio, frameCount, 5280);
      expect(Math.abs(probability - expected)).toBeLessThan(1e-9 * expected + 1e-300);
    }
  });

  it("the longest hold expected: the largest k with p^k·(1 + (n−k)(1−p)) ≥ 1", () => {
    const expected = (k: number): number => lossRatio ** k * (1 + (5280 - k) * (1 - lossRatio));
    const k = Math.round(edge.holdOnceAnEventS * 44);
    expect(edge.holdOnceAnEventS).toBeCloseTo(k / 44, 12);
    expect([expected(k) >= 1, expected(k + 1) >= 1]).toEqual([true, false]);
  });

  it("is of the event's length", () => {
    expect(typical.eventMinutes).toBe(2);
    const hour = looks([heard([-73, 0.2])], { eventMinutes: 60 });
    expect(hour.edge.holds[1]!.probability).toBeGreaterThan(edge.holds[1]!.probability);
    expect(hour.edge.holdOnceAnEventS).toBeGreaterThan(edge.holdOnceAnEventS);
  });
});

describe("the look in bursts", () => {
  it("is of the beacon lists' clear air and harmful groups at each position", () => {
    const { typical, edge } = looks([heard([-60, 0.1], [-73, 0.2])], { burstMs: 40 });
    const at = (clearAirRatio: number, harmfulRatios: readonly number[], receivedDbm: number): unknown =>
      lookInBursts({
        clearAirRatio,
        harmfulRatios,
        receivedDbm,
        packetMs: 4.5,
        burstMs: 40,
        sensitivityDbm: -90,
        transmissionsPerFrameCount: 1,
        frameRateHz: 44,
        eventMinutes: 2,
      });
    expect(typical.inBursts).toEqual(at(0.9, [0.1], -56));
    expect(edge.inBursts).toMatchObject({ lossRatio: expect.closeTo(edge.lossRatio, 12) as number });
    expect(edge.inBursts!.holds).toHaveLength(3);
    expect(edge.inBursts!.lossRatio).toBeCloseTo(1 - 0.72 * Math.exp((-4.5 / 40) * (0.1 / 0.9 + 0.25)), 12);
  });

  it("long bursts hold longer than independent losses of the same share", () => {
    const { typical } = looks([heard([-60, 0.1])], { burstMs: 100, eventMinutes: 90 });
    expect(typical.inBursts!.lossRatio).toBeCloseTo(typical.lossRatio, 12);
    expect(typical.inBursts!.holdOnceAnEventS).toBeGreaterThan(2 * typical.holdOnceAnEventS);
  });

  it.each([
    ["too weak at the edge", { wantedDbm: -86 }, 1],
    ["just strong enough", { wantedDbm: -84 }, 0],
  ])("%s", (_, given, lossRatio) => {
    const { edge } = looks([{ ...heard(), ...given }]);
    expect(edge.inBursts!.lossRatio).toBe(lossRatio);
    expect(edge.lossRatio).toBe(lossRatio);
    expect(edge.inBursts!.holdOnceAnEventS).toBe(lossRatio * 120);
  });
});

describe("no look in bursts, with the reason", () => {
  it("a hopping radio, on one frequency too", () => {
    const hopper = findProfile("hop-79");
    for (const scores of [[heard([-60, 0.2]), heard()], [heard([-60, 0.2])]]) {
      const { typical, edge } = looks(scores, { profile: hopper });
      for (const look of [typical, edge]) {
        expect(look.inBursts).toBeNull();
        expect(look.inBurstsReason).toMatch(/hop leaves the burst behind/);
        expect(look.lossRatio).toBeGreaterThan(0);
      }
    }
  });

  it("a sweep that tells of more loss than the beacon lists; where they tell of more, they speak", () => {
    const sweepWorse = looks([{ ...heard([-60, 0.1]), swept: swept(0.5) }]);
    expect(sweepWorse.typical.inBursts).toBeNull();
    expect(sweepWorse.typical.inBurstsReason).toMatch(/sweep/);
    expect(sweepWorse.typical.lossRatio).toBeCloseTo(1 - 0.5 * Math.exp(-4.5 / 2), 12);
    const beaconsWorse = looks([{ ...heard([-60, 0.5]), swept: swept(0.1) }]);
    expect(beaconsWorse.typical.inBurstsReason).toBeNull();
    expect(beaconsWorse.typical.inBursts!.lossRatio).toBeCloseTo(beaconsWorse.typical.lossRatio, 12);
    expect(looks([{ ...heard(), swept: swept(0) }]).typical.inBursts!.lossRatio).toBe(0);
  });

  it("transmissions that last longer than the frame: 5 × 4.5 ms fit in 22.7 ms, 6 don't", () => {
    const sent = (transmissionsPerFrameCount: number): ReceiverLooks =>
      looks([heard([-60, 0.2])], { profile: profileWith("raster-13", { transmissionsPerFrameCount }) });
    expect(sent(5).typical.inBurstsReason).toBeNull();
    expect(sent(6).typical.inBursts).toBeNull();
    expect(sent(6).typical.inBurstsReason).toMatch(/longer than the frame/);
  });
});
