import { describe, expect, it } from "vitest";
import { brickWall, transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile } from "../../src/radio/index.js";
import type { RadioProfile } from "../../src/radio/index.js";
import { rankChannels } from "../../src/scorer/index.js";
import type { OverlapCache } from "../../src/scorer/index.js";

const profile = findProfile("raster-13");
const wifi = (channel: number, given: Partial<Emitter> = {}): Emitter => ({
  id: `wifi-${channel}`,
  centreMhz: 2407 + 5 * channel,
  shape: transmitShapes.ht20,
  levelDbm: -45,
  airtimeRatio: 0.5,
  airtimeAssumed: true,
  contentionChannel: channel,
  ...given,
});
const order = (
  emitters: readonly Emitter[],
  more: Partial<Parameters<typeof rankChannels>[0]> = {},
): number[] =>
  rankChannels({ emitters, profile, wantedDbm: -56, ...more }).ranking.map(({ channel }) => channel);

describe("rankChannels, order", () => {
  it("breaks ties by the lowest channel number: an empty band", () => {
    expect(order([])).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13]);
  });

  it("breaks them so in whatever order the profile lists its channels", () => {
    const backwards = { ...profile, channels: [...profile.channels].reverse() };
    expect(order([], { profile: backwards })).toEqual(order([]));
  });

  it("breaks ties of a symmetric layout by the lower number of each pair", () => {
    const ranks = order([wifi(7)]);
    expect(ranks.slice(0, 2)).toEqual([1, 13]);
    for (const away of [1, 2, 3, 4, 5, 6]) expect(ranks.indexOf(7 + away)).toBe(ranks.indexOf(7 - away) + 1);
  });

  it("ranks by margin, then by clear air at one margin", () => {
    // Both flat sources take their channels alike at q; the second is on for less of the time.
    const brick = (channel: number, airtimeRatio: number): Emitter =>
      wifi(channel, { shape: brickWall(4), airtimeRatio, levelDbm: -30 });
    const all = Array.from({ length: 13 }, (_, index) => brick(index + 1, index === 8 ? 0.2 : 0.5));
    const { ranking } = rankChannels({ emitters: all, profile, wantedDbm: -56 });
    expect(ranking[0]!.channel).toBe(9);
    expect(ranking[0]!.clearAirRatio).toBeGreaterThan(ranking[1]!.clearAirRatio);
  });

  it("numbers the ranks from 1 and hands on what it rests on", () => {
    const { ranking, recommended, backup, hopSet } = rankChannels({
      emitters: [wifi(6)],
      profile,
      wantedDbm: -56,
    });
    expect(ranking.map(({ rank }) => rank)).toEqual(ranking.map((_, index) => index + 1));
    expect(recommended).toEqual({ channel: ranking[0]!.channel, reason: null });
    expect(backup).toEqual({ channel: expect.any(Number) as number, reason: null });
    expect(hopSet).toBeNull();
    for (const score of ranking) expect(score.marginDb).toBeCloseTo(-56 - score.interferenceDbm - 14, 9);
  });

  it("takes one wanted level for each channel, in the profile's order", () => {
    const wantedDbm = profile.channels.map(({ channel }) => (channel === 7 ? -50 : -56));
    expect(order([], { wantedDbm })[0]).toBe(7);
  });
});

describe("rankChannels, band edges", () => {
  const bandMhz = [2410, 2467.4] as const;

  it("lists last, with the reason, what leaves the band, and never recommends it", () => {
    const { ranking, recommended } = rankChannels({ emitters: [wifi(3)], profile, wantedDbm: -56, bandMhz });
    const outside = ranking.slice(-2);
    expect(outside.map(({ channel }) => channel).sort((a, b) => a - b)).toEqual([12, 13]); // 12: 2466.5–2467.5 MHz
    expect(outside.every(({ allowed }) => !allowed)).toBe(true);
    for (const { reason } of outside) expect(reason).toMatch(/leaves the band/);
    for (const { allowed, reason } of ranking.slice(0, -2)) expect([allowed, reason]).toEqual([true, null]);
    expect(recommended.channel).not.toBe(13);
  });

  it("allows a channel whose edge is the band's edge", () => {
    const { ranking } = rankChannels({
      emitters: [],
      profile,
      wantedDbm: -56,
      bandMhz: [2411.5, 2472.5],
    });
    expect(ranking.every(({ allowed }) => allowed)).toBe(true);
  });

  it("looks at the lower edge too", () => {
    const { ranking } = rankChannels({ emitters: [], profile, wantedDbm: -56, bandMhz: [2412, 2472.5] });
    expect(ranking.filter(({ allowed }) => !allowed).map(({ channel }) => channel)).toEqual([1]);
    expect(ranking[12]!.reason).toBe("2411.5–2412.5 MHz leaves the band 2412–2472.5 MHz");
  });

  it("keeps to 2400–2483.5 MHz by itself", () => {
    const beyond: RadioProfile = { ...profile, channels: [{ channel: 1, centreMhz: 2483.1 }] };
    const none = rankChannels({ emitters: [], profile: beyond, wantedDbm: -56 });
    expect(none.ranking[0]!.allowed).toBe(false);
    expect(none.recommended).toEqual({ channel: null, reason: expect.stringMatching(/band/) as string });
    expect(none.backup.channel).toBeNull();
  });

  it("recommends nothing of a profile without channels", () => {
    const none = rankChannels({ emitters: [], profile: { ...profile, channels: [] }, wantedDbm: -56 });
    expect(none.ranking).toEqual([]);
    expect([none.recommended.channel, none.backup.channel]).toEqual([null, null]);
  });

  it("has no backup where there is one channel", () => {
    const single: RadioProfile = { ...profile, channels: [{ channel: 5, centreMhz: 2432 }] };
    const { recommended, backup } = rankChannels({ emitters: [], profile: single, wantedDbm: -56 });
    expect(recommended.channel).toBe(5);
    expect(backup.channel).toBeNull();
    expect(backup.reason).not.toBeNull();
  });
});

describe("rankChannels, hopping", () => {
  it("recommends a set, not a channel: all 79 frequencies", () => {
    const plan = rankChannels({ emitters: [wifi(6)], profile: findProfile("hop-79"), wantedDbm: -56 });
    expect(plan.ranking).toHaveLength(79);
    expect([plan.recommended.channel, plan.backup.channel]).toEqual([null, null]);
    expect(plan.recommended.reason).not.toBeNull();
    expect(plan.backup.reason).not.toBeNull();
    expect(plan.hopSet!.channels).toEqual(Array.from({ length: 79 }, (_, k) => k));
    const margins = plan.ranking.map(({ marginDb }) => marginDb).sort((a, b) => a - b);
    expect(plan.hopSet!.marginDb).toBeCloseTo(margins[39]!, 12);
    const clear = plan.ranking.reduce((sum, { clearAirRatio }) => sum + clearAirRatio, 0) / 79;
    expect(plan.hopSet!.clearAirRatio).toBeCloseTo(clear, 12);
  });

  it("keeps the busy ranges out where the profile can, and never fewer than the rule's 15", () => {
    const avoid = findProfile("hop-79-avoid");
    const one = rankChannels({ emitters: [wifi(6)], profile: avoid, wantedDbm: -56 }).hopSet!;
    expect(one.excludedRanges).toHaveLength(1);
    expect(one.clearAirRatio).toBeGreaterThan(one.whole.clearAirRatio);
    const all = Array.from({ length: 13 }, (_, index) =>
      wifi(index + 1, { levelDbm: -20, airtimeRatio: 0.9 }),
    );
    expect(rankChannels({ emitters: all, profile: avoid, wantedDbm: -70 }).hopSet!.channels).toHaveLength(15);
  });
});

describe("rankChannels, where no wanted level arrives", () => {
  it("gives every channel no margin and no clear air, in the order of their numbers", () => {
    for (const emitters of [[], [wifi(6)]]) {
      const { ranking, recommended } = rankChannels({ emitters, profile, wantedDbm: -Infinity });
      expect(ranking.map(({ channel }) => channel)).toEqual(profile.channels.map(({ channel }) => channel));
      for (const { marginDb, clearAirRatio, interferenceDbm } of ranking)
        expect([marginDb, clearAirRatio, Number.isFinite(interferenceDbm)]).toEqual([-Infinity, 0, true]);
      expect(recommended.channel).toBe(profile.channels[0]!.channel);
    }
  });
});

describe("rankChannels, mistakes", () => {
  it.each([
    ["a wanted level of NaN", { wantedDbm: Number.NaN }],
    ["an infinite wanted level", { wantedDbm: Infinity }],
    ["too few wanted levels", { wantedDbm: [-56, -56] }],
    ["too many wanted levels", { wantedDbm: new Array<number>(14).fill(-56) }],
    ["q below 0", { busyShareRatio: -0.1 }],
    ["q above 1", { busyShareRatio: 1.5 }],
    ["q of NaN", { busyShareRatio: Number.NaN }],
    ["an emitter's level of NaN", { emitters: [wifi(6, { levelDbm: Number.NaN })] }],
    ["an emitter's airtime of NaN", { emitters: [wifi(6, { airtimeRatio: Number.NaN })] }],
    ["an emitter's airtime above 1", { emitters: [wifi(6, { airtimeRatio: 1.5 })] }],
    ["an emitter's airtime below 0", { emitters: [wifi(6, { airtimeRatio: -0.5 })] }],
  ])("throws for %s", (_, wrong) => {
    expect(() => rankChannels({ emitters: [], profile, wantedDbm: -56, ...wrong })).toThrow(ArgumentError);
  });
  it("names the wanted level that it can't use", () => {
    for (const wantedDbm of [Number.NaN, Infinity])
      expect(() => rankChannels({ emitters: [], profile, wantedDbm })).toThrow(/^wantedDbm: /);
  });
});

describe("rankChannels, overlaps kept between calls", () => {
  it("fills the caller's cache and ranks the same from it", () => {
    const overlapCache: OverlapCache = new Map();
    const options = { emitters: [wifi(6)], profile, wantedDbm: -56 };
    const first = rankChannels({ ...options, overlapCache });
    expect(overlapCache.get(transmitShapes.ht20)!.byOffset.size).toBe(13);
    expect(rankChannels({ ...options, overlapCache })).toEqual(first);
    expect(rankChannels(options)).toEqual(first);
  });
});
