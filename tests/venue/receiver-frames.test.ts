import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { interferenceDistribution, takeTurns } from "../../src/scorer/index.js";
import { receiverFrames } from "../../src/venue/index.js";
import { profileWith } from "../helpers/profiles.js";
import { score } from "../helpers/scores.js";

const profile = findProfile("raster-13"); // requires 14 dB, sensitivity −90 dBm, 4.5 ms, 44 frames a second
const terms = { profile, burstMs: 2, fadeAllowanceDb: 6 };
const heard = (
  ...levels: [inChannelDbm: number, airtimeRatio: number][]
): ReturnType<typeof interferenceDistribution> =>
  interferenceDistribution(
    -104,
    levels.map(([inChannelDbm, airtimeRatio]) =>
      takeTurns([{ emitter: `${inChannelDbm}`, inChannelDbm, airtimeRatio, airtimeAssumed: true }]),
    ),
  );
/** One group alone: (1 − a)·exp(−4.5·a / (2·(1 − a))). */
const oneGroup = (airtimeRatio: number): number =>
  (1 - airtimeRatio) * Math.exp((-4.5 * airtimeRatio) / (2 * (1 - airtimeRatio)));

describe("receiverFrames, one channel", () => {
  // Wanted −56: the ceiling is −70 at the local mean and −76 at the edge, 6 dB down.
  it("judges clear air and harm at the edge by the level − fade allowance, by hand", () => {
    const frames = receiverFrames([score(1, 0, null, { distribution: heard([-73, 0.2]) })], terms);
    expect(frames.typical).toEqual({ lossRatio: 0, lostPerMinute: 0, clearAirRatio: 1 });
    expect(frames.edge.clearAirRatio).toBeCloseTo(0.8, 12);
    expect(frames.edge.lossRatio).toBeCloseTo(1 - oneGroup(0.2), 12);
    expect(frames.edge.lostPerMinute).toBeCloseTo((1 - oneGroup(0.2)) * 2640, 9);
  });

  it("judges the sensitivity at the edge by the level − fade allowance too", () => {
    const weak = score(1, 0, null, { wantedDbm: -86 });
    const frames = receiverFrames([weak], terms);
    expect(frames.typical.lossRatio).toBe(0);
    expect(frames.edge.lossRatio).toBe(1); // −92 dBm is below −90
    expect(receiverFrames([{ ...weak, wantedDbm: -84 }], terms).edge.lossRatio).toBe(0); // −90 dBm is not
  });

  it("leaves to the clear air what is harmful only together", () => {
    const frames = receiverFrames(
      [score(1, 0, null, { distribution: heard([-72, 0.5], [-72, 0.5]) })],
      terms,
    );
    expect(frames.typical.clearAirRatio).toBeCloseTo(0.75, 12);
    expect(frames.typical.lossRatio).toBeCloseTo(0.25, 12);
  });

  it("loses a frame only when every transmission of it is lost", () => {
    const twice = { ...terms, profile: profileWith("raster-13", { transmissionsPerFrameCount: 2 }) };
    const channel = [score(1, 0, null, { distribution: heard([-60, 0.2]) })];
    expect(receiverFrames(channel, twice).typical.lossRatio).toBeCloseTo((1 - oneGroup(0.2)) ** 2, 12);
  });
});

describe("receiverFrames, hop set", () => {
  it("averages the success over the frequencies before it counts frames", () => {
    const hops = [
      score(1, 0, null, { distribution: heard() }),
      score(2, 0, null, { distribution: heard([-60, 0.2]) }),
      score(3, 0, null, { distribution: heard([-60, 1]) }),
    ];
    const success = (1 + oneGroup(0.2) + 0) / 3;
    expect(receiverFrames(hops, terms).typical.lossRatio).toBeCloseTo(1 - success, 12);
    expect(receiverFrames(hops, terms).typical.clearAirRatio).toBeCloseTo((1 + 0.8 + 0) / 3, 12);
    const twice = { ...terms, profile: profileWith("hop-79", { transmissionsPerFrameCount: 2 }) };
    expect(receiverFrames(hops, twice).typical.lossRatio).toBeCloseTo((1 - success) ** 2, 12);
  });
});
