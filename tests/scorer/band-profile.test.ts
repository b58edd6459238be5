import { describe, expect, it } from "vitest";
import { brickWall } from "../../src/band/index.js";
import type { Emitter, SweepLevels } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import { bandProfile } from "../../src/scorer/index.js";

const RASTER = findProfile("raster-13");
// Noise −104 dBm; antenna 2 dBi in a canopy of 10 dB. The selectivity is made a plain 2 MHz window.
const PROFILE = { ...RASTER, selectivity: { ...RASTER.selectivity, value: brickWall(2) } };
const source = (centreMhz: number, widthMhz: number, levelDbm: number, airtimeRatio = 1): Emitter => ({
  id: `at ${centreMhz}`,
  centreMhz,
  shape: brickWall(widthMhz),
  levelDbm,
  airtimeRatio,
  airtimeAssumed: false,
  contentionChannel: null,
});
const aboveNoise = (
  emitters: readonly Emitter[],
  [startMhz, stepMhz, stepCount]: readonly [number, number, number],
  given: { sweeps?: readonly SweepLevels[]; profile?: typeof PROFILE; busyShareRatio?: number } = {},
): readonly number[] =>
  bandProfile({ emitters, profile: PROFILE, busyShareRatio: 0.01, startMhz, stepMhz, stepCount, ...given })
    .aboveNoiseDb;
/** A level as scanned, beside the receiver's noise: −8 dB on its way, noise −104 dBm. */
const byHandDb = (levelDbm: number): number => 10 * Math.log10(1 + 10 ** ((levelDbm - 8 + 104) / 10));

describe("bandProfile", () => {
  it("is the receiver's own noise where nothing is on the air", () => {
    const profile = bandProfile({
      emitters: [],
      profile: PROFILE,
      busyShareRatio: 0.01,
      startMhz: 2400,
      stepMhz: 0.5,
      stepCount: 4,
    });
    expect(profile).toEqual({ startMhz: 2400, stepMhz: 0.5, aboveNoiseDb: [0, 0, 0, 0] });
  });
  it("tunes to the middle of each step: a narrow source is where it sits", () => {
    // Steps of 2 MHz from 2400: the sixth is tuned to 2411 and takes in 2410 … 2412.
    const levels = aboveNoise([source(2411, 1, -60)], [2400, 2, 8]);
    levels.forEach((level, index) => expect(level).toBeCloseTo(index === 5 ? byHandDb(-60) : 0, 9));
    // Half of it, −3.01 dB, from 1 MHz beside.
    const halves = aboveNoise([source(2411, 1, -60)], [2409.5, 1, 3]);
    const half = byHandDb(-60 - 10 * Math.log10(2));
    [half, byHandDb(-60), half].forEach((level, index) => expect(halves[index]).toBeCloseTo(level, 9));
  });
  it("counts what is exceeded for the busy share", () => {
    const emitters = [source(2440, 100, -50, 0.2)];
    expect(aboveNoise(emitters, [2430, 1, 1], { busyShareRatio: 0.2 })[0]).toBeCloseTo(0, 9);
    // 2 of 100 MHz: −16.99 dB.
    expect(aboveNoise(emitters, [2430, 1, 1], { busyShareRatio: 0.19 })[0]).toBeCloseTo(
      byHandDb(-50 + 10 * Math.log10(0.02)),
      9,
    );
  });
});

describe("bandProfile of a sweep", () => {
  const sweep = (heard: (channel: number) => boolean, levelDbm = -60): SweepLevels => ({
    place: "hall",
    crowd: "full",
    channels: PROFILE.channels.map(({ channel, centreMhz }) =>
      heard(channel)
        ? { channel, centreMhz, passCount: 10, levelsDbm: [levelDbm], atLevelCount: [10] }
        : { channel, centreMhz, passCount: 0, levelsDbm: [], atLevelCount: [] },
    ),
  });

  it("is drawn half-way to the channels beside the one heard", () => {
    // Channel 6, 2437 MHz, alone: from 2434.5 to 2439.5 MHz, twenty steps of a quarter.
    const levels = aboveNoise([], [2430, 0.25, 60], { sweeps: [sweep((channel) => channel === 6)] });
    levels.forEach((level, index) =>
      expect(level, `step ${index}`).toBeCloseTo(index >= 18 && index < 38 ? byHandDb(-60) : 0, 9),
    );
  });
  it("ends half a step of the raster beyond the first and the last channel, that frequency included", () => {
    const at = (startMhz: number) => aboveNoise([], [startMhz, 1, 2], { sweeps: [sweep(() => true)] });
    const [none, first] = at(2408); // tuned to 2408.5 and 2409.5
    expect(none).toBeCloseTo(0, 9);
    expect(first).toBeCloseTo(byHandDb(-60), 9);
    const [last, beyond] = at(2474);
    expect(last).toBeCloseTo(byHandDb(-60), 9);
    expect(beyond).toBeCloseTo(0, 9);
  });
  it("stands beside the sources: the higher of the two", () => {
    const both = (levelDbm: number): number =>
      aboveNoise([source(2437, 2, -70)], [2436.5, 1, 1], { sweeps: [sweep(() => true, levelDbm)] })[0]!;
    expect(both(-60)).toBeCloseTo(byHandDb(-60), 9);
    expect(both(-80)).toBeCloseTo(byHandDb(-70), 9);
  });
  it("says nothing where the radio has no channel", () => {
    const given = { sweeps: [sweep(() => true)], profile: { ...PROFILE, channels: [] } };
    expect(aboveNoise([], [2430, 1, 2], given)).toEqual([0, 0]);
  });
});
