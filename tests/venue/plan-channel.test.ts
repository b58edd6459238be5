import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile } from "../../src/radio/index.js";
import { planChannel } from "../../src/venue/index.js";
import { numericOverlapRatio } from "../helpers/numeric-overlap.js";
import { accessPoint } from "../helpers/venue-emitters.js";

const profile = findProfile("raster-13");
const emitters = [1, 6, 11].map((channel) => accessPoint(channel));
// 18 dBm + 2 dBi − (20·log10(f) + 22·log10(d) − 28) − 10 dB + 2 dBi (ITU-R P.1238, N = 22).
const wantedDbm = (frequencyMhz: number, distanceM: number): number =>
  12 - (20 * Math.log10(frequencyMhz) + 22 * Math.log10(distanceM) - 28);

describe("planChannel, fixed channel", () => {
  const plan = planChannel({ emitters, profile });

  it("takes each channel's wanted level at its own centre frequency, 20 m", () => {
    for (const score of plan.ranking) expect(score.wantedDbm).toBeCloseTo(wantedDbm(score.centreMhz, 20), 9);
    expect(new Set(plan.ranking.map((score) => score.wantedDbm)).size).toBe(13);
  });

  // All three on at once is 0.3³ = 2.7 % of the time, more than q = 1 %: the level is the sum of all three and the noise.
  // 1e-4 dB: the overlaps are integrated by the midpoint rule here (see spectral-overlap.test.ts).
  it("gives each channel the margin that hand arithmetic gives, and recommends the greatest", () => {
    const byHandDb = profile.channels.map(({ centreMhz }) => {
      const powersMw = emitters.map(
        (emitter) =>
          10 ** ((emitter.levelDbm + 2 - 10) / 10) *
          numericOverlapRatio(emitter.shape, profile.selectivity.value, centreMhz - emitter.centreMhz, 2000),
      );
      const totalMw = powersMw.reduce((sum, powerMw) => sum + powerMw, 10 ** -10.4);
      return wantedDbm(centreMhz, 20) - 10 * Math.log10(totalMw) - 14;
    });
    for (const { channel, marginDb } of plan.ranking)
      expect(Math.abs(marginDb - byHandDb[channel - 1]!)).toBeLessThan(1e-4);
    expect(plan.recommended.channel).toBe(1 + byHandDb.indexOf(Math.max(...byHandDb)));
  });

  it("gives the link at the recommended channel, its interference that of the ranking", () => {
    const best = plan.ranking[0]!;
    expect(plan.recommended.channel).toBe(best.channel);
    expect(plan.link.channel).toBe(best.channel);
    expect(plan.link.frequencyMhz).toBe(best.centreMhz);
    expect(plan.link.interferenceDbm).toBe(best.interferenceDbm);
  });

  it("has the ranking's own margin in the link row at the reference distance", () => {
    const best = plan.ranking[0]!;
    expect(plan.link.reference!.receivedDbm).toBeCloseTo(best.wantedDbm, 9);
    expect(plan.link.reference!.interferenceMarginDb).toBeCloseTo(best.marginDb, 9);
  });

  it("holds the interference constant along the table", () => {
    for (const row of plan.link.rows)
      expect(row.receivedDbm - row.interferenceMarginDb).toBeCloseTo(plan.link.interferenceDbm! + 14, 9);
  });

  it("gives the frames of the recommended channel, and of every channel in the ranking", () => {
    expect(plan.frames).toEqual(plan.ranking[0]!.frames);
    for (const { frames, clearAirRatio } of plan.ranking) {
      expect(frames.typical.clearAirRatio).toBeCloseTo(clearAirRatio, 12);
      expect(frames.edge.clearAirRatio).toBeLessThanOrEqual(frames.typical.clearAirRatio);
      expect(frames.edge.lossRatio).toBeGreaterThanOrEqual(frames.typical.lossRatio);
    }
  });

  it("has another reference distance when told", () => {
    const near = planChannel({ emitters, profile, distanceM: 10, distancesM: [10] });
    expect(near.ranking[0]!.wantedDbm).toBeCloseTo(wantedDbm(near.ranking[0]!.centreMhz, 10), 9);
    expect(near.link.rows).toEqual([near.link.reference]);
  });
});

describe("planChannel, hopping", () => {
  const hopping = planChannel({ emitters, profile: findProfile("hop-79") });

  it("has a hop set and no channel", () => {
    expect([hopping.recommended.channel, hopping.backup.channel, hopping.link.channel]).toEqual([
      null,
      null,
      null,
    ]);
    expect(hopping.hopSet!.channels).toHaveLength(79);
    expect(hopping.link.frequencyMhz).toBe(2441);
    expect(hopping.link.reference!.interferenceMarginDb).toBeCloseTo(hopping.hopSet!.marginDb!, 9);
  });

  it("averages the frames over the hop set", () => {
    const loss = hopping.ranking.reduce((sum, { frames }) => sum + frames.typical.lossRatio, 0) / 79;
    expect(hopping.frames!.typical.lossRatio).toBeCloseTo(loss, 12); // one transmission a frame: p is linear in s
    expect(hopping.frames!.typical.clearAirRatio).toBeCloseTo(hopping.hopSet!.clearAirRatio, 12);
  });

  it("counts only the kept frequencies where ranges are avoided", () => {
    const avoiding = planChannel({ emitters, profile: findProfile("hop-79-avoid") });
    const kept = new Set(avoiding.hopSet!.channels);
    expect(kept.size).toBeLessThan(79);
    const used = avoiding.ranking.filter(({ channel }) => kept.has(channel));
    const loss = used.reduce((sum, { frames }) => sum + frames.typical.lossRatio, 0) / used.length;
    expect(avoiding.frames!.typical.lossRatio).toBeCloseTo(loss, 12);
    expect(avoiding.frames!.typical.lossRatio).toBeLessThan(hopping.frames!.typical.lossRatio);
  });
});

describe("planChannel, nothing to choose", () => {
  it("says so where no channel lies inside the band", () => {
    const plan = planChannel({ emitters, profile, bandMhz: [2300, 2310] });
    expect(plan.recommended.channel).toBeNull();
    expect(plan.frames).toBeNull();
    expect(plan.link.rows).toEqual([]);
    expect(plan.ranking.every(({ allowed }) => !allowed)).toBe(true);
  });

  it("has no frames and no link where no hop frequency lies inside the band", () => {
    const plan = planChannel({ emitters, profile: findProfile("hop-79"), bandMhz: [2300, 2310] });
    expect(plan.frames).toBeNull();
    expect(plan.link.rows).toEqual([]);
    expect(plan.hopSet!.channels).toEqual([]);
    // Infinity never leaves: it would be a null without a reason in JSON.
    expect(plan.hopSet!.marginDb).not.toBe(-Infinity);
  });

  it("ranks a quiet band by number, with nobody behind it", () => {
    const plan = planChannel({ emitters: [], profile });
    expect(plan.ranking[0]!.channel).toBe(1); // least path loss at the lowest frequency
    expect(plan.ranking.every(({ contributors }) => contributors.length === 0)).toBe(true);
  });

  it.each([
    ["a distance of 0", { distanceM: 0 }],
    ["a distance of NaN", { distanceM: Number.NaN }],
    ["a row at −1 m", { distancesM: [5, -1] }],
    ["a reliability of 1", { reliability: 1 }],
    ["a busy share above 1", { busyShareRatio: 1.1 }],
    ["bursts of 0 ms", { burstMs: 0 }],
  ])("throws for %s", (_, wrong) => {
    expect(() => planChannel({ emitters, profile, ...wrong })).toThrow(ArgumentError);
  });
});
