import { describe, expect, test } from "vitest";
import { ArgumentError, formatIssue } from "../../src/issues/index.js";
import {
  breachIssue,
  clampToRegion,
  findProfile,
  judgeRegion,
  readProfile,
  regionRules,
} from "../../src/radio/index.js";
import type { RadioProfile, RegionCode } from "../../src/radio/index.js";

const raster = findProfile("raster-13");
const hopper = findProfile("hop-79");
const avoider = findProfile("hop-79-avoid");
const judge = (profile: RadioProfile, region: RegionCode) => judgeRegion({ profile, region });

describe("limits as published, hand-worked", () => {
  test("EU and GB: EN 300 328, 20 dBm EIRP; not hopping, 10 dBm in any MHz too", () => {
    for (const region of ["EU", "GB"] as const) {
      expect(judge(raster, region)).toMatchObject({
        maxEirpDbm: 10,
        eirpDbm: 20,
        turnDownDb: 10,
        maxTxPowerDbm: 8,
      });
      expect(judge(findProfile("raster-16"), region).maxEirpDbm).toBeCloseTo(10 + 3.0103, 4); // 2 MHz wide
      expect(judge(hopper, region)).toMatchObject({ maxEirpDbm: 20, turnDownDb: 0, leastHopCount: 15 });
    }
  });
  test("a signal narrower than the MHz it is measured in counts whole; a wide one ends at 20 dBm", () => {
    const wide = (bandwidthMhz: number) => ({
      ...raster,
      bandwidthMhz: { ...raster.bandwidthMhz, value: bandwidthMhz },
    });
    expect(judge(wide(0.2), "EU").maxEirpDbm).toBe(10);
    expect(judge(wide(20), "EU").maxEirpDbm).toBe(20);
  });
  test("US: 47 CFR 15.247, 1 W conducted up to 6 dBi, then dB for dB: 36 dBm EIRP and no more", () => {
    const withGain = (txGainDbi: number, txFeederLossDb = 0) =>
      judgeRegion({ profile: hopper, region: "US", txGainDbi, txFeederLossDb });
    expect(withGain(2)).toMatchObject({ maxEirpDbm: 32, maxTxPowerDbm: 30 });
    expect(withGain(6).maxEirpDbm).toBe(36);
    expect(withGain(14)).toMatchObject({ maxEirpDbm: 36, maxTxPowerDbm: 22 });
    expect(withGain(14, 8)).toMatchObject({ maxEirpDbm: 36, maxTxPowerDbm: 30 });
    expect(judge(raster, "US").maxEirpDbm).toBe(32); // the density limit of 33.2 dBm in 1 MHz lies higher
    expect(judge(raster, "US").remark).toContain("500 kHz");
  });
  test("US: fewer than 75 hop frequencies, 125 mW", () => {
    expect(judgeRegion({ profile: avoider, region: "US", hopCount: 75 }).maxTxPowerDbm).toBeCloseTo(30, 9);
    expect(judgeRegion({ profile: avoider, region: "US", hopCount: 74 }).maxTxPowerDbm).toBeCloseTo(20.97, 2);
    expect(judge(avoider, "US").maxTxPowerDbm).toBeCloseTo(20.97, 2); // judged at the fewest it may use
    expect(judge(hopper, "US").leastHopCount).toBe(75);
  });
  test("CA and AU 4 W, NZ 36 dBm EIRP as wireless-regdb 2026-05-19 states", () => {
    expect(judge(raster, "CA").maxEirpDbm).toBeCloseTo(36.02, 2);
    expect(judge(raster, "AU").maxEirpDbm).toBeCloseTo(36.02, 2);
    expect(judge(raster, "NZ").maxEirpDbm).toBe(36);
  });
  test("JP: ARIB STD-T66 from memory, 10 mW/MHz, hopping 3 mW/MHz, 2.14 dBi free", () => {
    expect(judge(raster, "JP").maxTxPowerDbm).toBeCloseTo(10, 9);
    expect(judge(hopper, "JP").maxTxPowerDbm).toBeCloseTo(4.77, 2);
    const gain = judgeRegion({ profile: raster, region: "JP", txGainDbi: 5.14 });
    expect(gain.maxTxPowerDbm).toBeCloseTo(7, 9);
  });
  test("band edges; the world row is the narrowest and lowest", () => {
    for (const rule of Object.values(regionRules)) {
      expect([rule.lowMhz, rule.highMhz]).toEqual(rule.region === "world" ? [2402, 2472] : [2400, 2483.5]);
      expect(rule.lowMhz).toBeLessThanOrEqual(regionRules.world.lowMhz);
    }
    expect(judge(raster, "world").maxEirpDbm).toBe(10);
    expect(judge(hopper, "world").maxEirpDbm).toBe(20);
  });
  test("every row states a limit with a source, hopping rows fall from the most hop frequencies", () => {
    for (const { rules, region } of Object.values(regionRules)) {
      for (const row of rules) {
        const stated = [row.maxEirpDbm, row.maxConductedDbm, row.density?.limitDbmPerMhz ?? null];
        const limits = stated.filter((limit) => limit !== null);
        expect(limits.length, region).toBeGreaterThan(0);
        for (const limit of limits) expect(limit.source.length).toBeGreaterThan(5);
      }
      const counts = rules
        .filter((row) => row.modulation === "hopping")
        .map((row) => row.leastHopCount!.value);
      expect(counts).toEqual([...counts].sort((a, b) => b - a));
      expect(rules.some((row) => row.modulation === "fixed")).toBe(true);
    }
  });
});

describe("judging and clamping", () => {
  test("turning down by turnDownDb meets the limit in every region", () => {
    for (const profile of [raster, hopper, avoider])
      for (const region of Object.keys(regionRules) as RegionCode[]) {
        const loud = judgeRegion({ profile, region, txPowerDbm: 40 });
        expect(loud.turnDownDb).toBeGreaterThan(0);
        const turned = judgeRegion({ profile, region, txPowerDbm: 40 - loud.turnDownDb });
        expect(turned.turnDownDb).toBe(0);
        expect(turned.eirpDbm).toBeCloseTo(turned.maxEirpDbm, 9);
        expect(loud.remark).toContain("the local rule and the radio's own approval decide");
      }
  });
  test("a built-in power is turned down and says so; within the rule nothing changes", () => {
    const { profile, issue } = clampToRegion(raster, "EU");
    expect(profile.txPowerDbm).toMatchObject({ value: 8, status: "standard" });
    expect({ ...profile, txPowerDbm: raster.txPowerDbm }).toEqual(raster);
    expect(issue).toMatchObject({ code: "assumed", severity: "note" });
    expect(formatIssue(issue!)).toMatch(/8\.0 dBm, 10\.0 dB lower.*EN 300 328/);
    expect(clampToRegion(hopper, "EU")).toMatchObject({ profile: hopper, issue: null });
  });
  test("a power of the user's own is never changed: its breach is an error with the dB", () => {
    const mine = readProfile({ based_on: "raster-13", tx_power_dbm: 20 }, "mine.yaml").profile!;
    const { profile, issue } = clampToRegion(mine, "GB");
    expect(profile).toBe(mine);
    expect(issue).toMatchObject({ code: "rule-breach", severity: "error" });
    expect(formatIssue(issue!)).toMatch(/22\.0 dBm EIRP is 12\.0 dB too much/);
    const typed = judgeRegion({ profile: raster, region: "EU", txPowerDbm: 14 });
    expect(breachIssue(typed, "--tx-power")).toMatchObject({ source: "--tx-power", severity: "error" });
    expect(breachIssue(judge(hopper, "EU"), "--tx-power")).toBeNull();
  });
  test("throws", () => {
    expect(() => judge(raster, "XX" as RegionCode)).toThrow("US, CA, EU, GB, AU, NZ, JP, world");
    expect(() => judge(raster, "toString" as RegionCode)).toThrow(ArgumentError);
    expect(() => judgeRegion({ profile: raster, region: "EU", txPowerDbm: NaN })).toThrow(ArgumentError);
    expect(() => judgeRegion({ profile: raster, region: "EU", txGainDbi: Infinity })).toThrow(ArgumentError);
    expect(() => judgeRegion({ profile: hopper, region: "US", hopCount: 14 })).toThrow("15 hop frequencies");
  });
});
