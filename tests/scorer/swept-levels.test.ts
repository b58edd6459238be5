import { describe, expect, test } from "vitest";
import type { Emitter, SweepLevels } from "../../src/band/index.js";
import { transmitShapes } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import {
  hearChannel,
  rankChannels,
  receiverOf,
  scoreHeard,
  sweptAtReceiver,
  sweptClearAirRatio,
  sweptInterferenceDbm,
} from "../../src/scorer/index.js";

const PROFILE = findProfile("raster-13");

/** A sweep that heard two levels in every channel but the ones left out. */
function sweep(
  levelsDbm: readonly number[],
  atLevelCount: readonly number[],
  without: readonly number[] = [],
): SweepLevels {
  const passCount = atLevelCount.reduce((sum, count) => sum + count, 0);
  const channels = PROFILE.channels.map((channel) =>
    without.includes(channel.channel)
      ? { ...channel, passCount: 0, levelsDbm: [], atLevelCount: [] }
      : { ...channel, passCount, levelsDbm, atLevelCount },
  );
  return { place: "hall", crowd: "full", channels };
}

const NEIGHBOUR: Emitter = {
  id: "02:00:00:00:00:01",
  centreMhz: 2437,
  shape: transmitShapes.ht20,
  levelDbm: -60,
  airtimeRatio: 0.3,
  airtimeAssumed: false,
  contentionChannel: 6,
};

describe("a sweep in the ranking", () => {
  test("alone: its level + antenna gain − enclosure loss, plus the receiver's noise", () => {
    const { ranking } = rankChannels({
      emitters: [],
      sweeps: [sweep([-90, -60], [990, 10])],
      profile: PROFILE,
      wantedDbm: -56,
    });
    // −90 + 2 − 10 = −98 dBm and noise of −104 dBm: 10·log10(10^−9.8 + 10^−10.4) by hand.
    const byHandDbm = 10 * Math.log10(10 ** -9.8 + 10 ** -10.4);
    for (const score of ranking) {
      expect(score.interferenceDbm).toBeCloseTo(byHandDbm, 9);
      expect(score.marginDb).toBeCloseTo(-56 - byHandDbm - 14, 9);
      // 10 passes of 1000 at −68 dBm against a ceiling of −70 dBm.
      expect(score.clearAirRatio).toBeCloseTo(0.99, 12);
      expect(score).toMatchObject({ spokenBy: "sweep", clearAirSpokenBy: "sweep" });
    }
  });
  test("at a busy share that the loud passes exceed, the loud level counts", () => {
    const options = {
      emitters: [],
      sweeps: [sweep([-90, -60], [989, 11])],
      profile: PROFILE,
      wantedDbm: -56,
    };
    expect(rankChannels(options).ranking[0]!.interferenceDbm).toBeCloseTo(
      10 * Math.log10(10 ** -6.8 + 10 ** -10.4),
      9,
    );
  });
  test("beside beacons: the higher interference and the smaller clear air, each by whoever gave it", () => {
    const beacons = rankChannels({ emitters: [NEIGHBOUR], profile: PROFILE, wantedDbm: -56 });
    const both = rankChannels({
      emitters: [NEIGHBOUR],
      sweeps: [sweep([-75], [100])],
      profile: PROFILE,
      wantedDbm: -56,
    });
    const alone = rankChannels({
      emitters: [],
      sweeps: [sweep([-75], [100])],
      profile: PROFILE,
      wantedDbm: -56,
    });
    const of = (ranking: typeof both.ranking, channel: number) =>
      ranking.find((score) => score.channel === channel)!;
    const spoken = both.ranking.map(({ channel, spokenBy, interferenceDbm, clearAirRatio }) => {
      const [beacon, swept] = [of(beacons.ranking, channel), of(alone.ranking, channel)];
      expect(interferenceDbm).toBe(Math.max(beacon.interferenceDbm, swept.interferenceDbm));
      expect(clearAirRatio).toBe(Math.min(beacon.clearAirRatio, swept.clearAirRatio));
      expect(spokenBy).toBe(swept.interferenceDbm > beacon.interferenceDbm ? "sweep" : "beacons");
      return spokenBy;
    });
    expect(new Set(spoken)).toEqual(new Set(["beacons", "sweep"]));
  });
  test("beside beacons: the clear air by whoever heard less of it", () => {
    // The sweep: 10 of 100 passes at −68 dBm, over the ceiling of −70. The source: some −66 dBm, for 0.3 of the time.
    const { ranking } = rankChannels({
      emitters: [{ ...NEIGHBOUR, levelDbm: -45 }],
      sweeps: [sweep([-90, -60], [90, 10])],
      profile: PROFILE,
      wantedDbm: -56,
    });
    const of = (channel: number) => ranking.find((score) => score.channel === channel)!;
    expect(of(6).clearAirRatio).toBeCloseTo(0.7, 12);
    expect(of(6).clearAirSpokenBy).toBe("beacons");
    expect(of(13).clearAirRatio).toBeCloseTo(0.9, 12);
    expect(of(13).clearAirSpokenBy).toBe("sweep");
  });
  test("that heard nothing speaks where it is alone, and leaves the word to beacons where both say noise", () => {
    const silent = [sweep([-400], [10])];
    const receiver = { ...receiverOf(PROFILE), centreMhz: 2437 };
    const terms = { wantedDbm: -56, requiredCiDb: 14, busyShareRatio: 0.01 };
    const faint = { ...NEIGHBOUR, levelDbm: -400 };
    const spoken = (emitters: readonly Emitter[], sweeps: readonly SweepLevels[]) => {
      const { interferenceDbm, spokenBy, clearAirSpokenBy } = scoreHeard(
        hearChannel(emitters, receiver, 0.01, undefined, sweeps),
        terms,
      );
      expect(interferenceDbm).toBeCloseTo(-104, 9);
      return [spokenBy, clearAirSpokenBy];
    };
    expect(spoken([], silent)).toEqual(["sweep", "sweep"]);
    expect(spoken([faint], silent)).toEqual(["beacons", "beacons"]);
    expect(scoreHeard(hearChannel([faint], receiver, 0.01), terms).spokenBy).toBe("beacons");
  });
  test("of several places, the worst speaks", () => {
    const sweeps = [sweep([-95], [10]), { ...sweep([-70], [10]), place: "foyer" }];
    const { ranking } = rankChannels({ emitters: [], sweeps, profile: PROFILE, wantedDbm: -56 });
    expect(ranking[0]!.interferenceDbm).toBeCloseTo(10 * Math.log10(10 ** -7.8 + 10 ** -10.4), 9);
  });
  test("a channel that no scan covers comes last and is not recommended", () => {
    const sweeps = [sweep([-60], [10], [1, 2])];
    const { ranking, recommended, backup } = rankChannels({
      emitters: [],
      sweeps,
      profile: PROFILE,
      wantedDbm: -56,
    });
    expect(ranking.slice(-2).map(({ channel, spokenBy }) => [channel, spokenBy])).toEqual([
      [1, null],
      [2, null],
    ]);
    expect([1, 2]).not.toContain(recommended.channel);
    expect([1, 2]).not.toContain(backup.channel);
    const none = rankChannels({
      emitters: [],
      sweeps: [
        sweep(
          [],
          [],
          PROFILE.channels.map(({ channel }) => channel),
        ),
      ],
      profile: PROFILE,
      wantedDbm: -56,
    });
    expect(none.recommended).toEqual({ channel: null, reason: "no scan covers any channel of this profile" });
  });
  test("without sweeps the beacons speak", () => {
    const { ranking } = rankChannels({ emitters: [NEIGHBOUR], profile: PROFILE, wantedDbm: -56 });
    expect(new Set(ranking.map(({ spokenBy }) => spokenBy))).toEqual(new Set(["beacons"]));
    expect(sweptAtReceiver([], { ...receiverOf(PROFILE), centreMhz: 2412 })).toEqual([]);
  });
});

describe("what sweeps say of one receiver", () => {
  const receiver = { ...receiverOf(PROFILE), centreMhz: 2437 };
  const at = (levelsDbm: readonly number[], atLevelCount: readonly number[]) =>
    sweptAtReceiver([sweep(levelsDbm, atLevelCount)], receiver);

  test("nothing where no channel or no pass is there", () => {
    const elsewhere = { ...receiver, centreMhz: 2438 };
    expect(sweptAtReceiver([sweep([-60], [10])], elsewhere)).toEqual([]);
    expect(at([], [])).toEqual([]);
    expect(sweptInterferenceDbm([], 0.01)).toBeNull();
    expect(sweptClearAirRatio([], -70)).toBeNull();
    const blind = at([-60], [10]).map((one) => ({
      ...one,
      levels: { ...one.levels, passCount: 0, levelsDbm: [], atLevelCount: [] },
    }));
    expect(sweptInterferenceDbm(blind, 0.01)).toBeNull();
  });
  test("the least clear air of the places, a pass at the ceiling clear with 1e-9 dB of slack", () => {
    const both = [...at([-90, -60], [9, 1]), ...at([-90, -60], [5, 5])];
    expect(sweptClearAirRatio(both, -70)).toBeCloseTo(0.5, 12);
    const heardDbm = 10 * Math.log10(10 ** -6.8 + 10 ** -10.4); // −60 − 8 and the noise
    expect(sweptClearAirRatio(at([-60], [10]), heardDbm - 5e-10)).toBe(1);
    expect(sweptClearAirRatio(at([-60], [10]), heardDbm - 2e-9)).toBe(0);
  });
});
