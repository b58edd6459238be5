import { describe, expect, test } from "vitest";
import {
  findProfile,
  readProfile,
  regionRules,
  regulationIssues,
  regulationReview,
  transmitAirtimeRatio,
} from "../../src/radio/index.js";
import type { PowerRule, RadioProfile, RegionCode, RuleFigure } from "../../src/radio/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";

/** Limits as the rules state them, restated outside the project (fixtures/reference/README.md). */
const published = referenceCsv("regulation.csv");
const value = (domain: string, parameter: string, condition = ""): number => {
  const rows = published.filter(
    (row) =>
      row["domain"] === domain && row["parameter"] === parameter && row["condition"]!.includes(condition),
  );
  expect(rows.length, `${domain} ${parameter} ${condition}`).toBe(1);
  return Number(rows[0]!["value"]);
};
const dbm = (mw: number): number => 10 * Math.log10(mw);
const [fixed, many, few] = [0, 1, 2].map(
  (row) =>
    (region: RegionCode): PowerRule =>
      regionRules[region].rules[row]!,
) as [
  (region: RegionCode) => PowerRule,
  (region: RegionCode) => PowerRule,
  (region: RegionCode) => PowerRule,
];
const mine = (figures: object): RadioProfile =>
  readProfile({ based_on: "hop-79", ...figures }, "mine.yaml").profile!;

/** Every figure of a region's rows, with where it stands. */
const figuresOf = (region: RegionCode): RuleFigure[] =>
  regionRules[region].rules.flatMap((row) =>
    [
      row.leastHopCount,
      row.maxEirpDbm,
      row.maxConductedDbm,
      row.freeAntennaGainDbi,
      row.density?.limitDbmPerMhz ?? null,
      ...row.dwells.map(({ mostDwellS }) => mostDwellS),
    ].filter((figure) => figure !== null),
  );

describe("each figure of the region table against the restated rules", () => {
  test("US", () => {
    const us = regionRules.US;
    expect([us.lowMhz, us.highMhz]).toEqual([2400, 2483.5]);
    expect(many("US").maxConductedDbm!.value).toBeCloseTo(
      dbm(value("US", "conducted_power_fhss", ">=75")),
      9,
    );
    expect(few("US").maxConductedDbm!.value).toBeCloseTo(
      dbm(value("US", "conducted_power_fhss", "fewer")),
      9,
    );
    expect(fixed("US").maxConductedDbm!.value).toBeCloseTo(dbm(value("US", "conducted_power_digital")), 9);
    expect([many("US").leastHopCount!.value, few("US").leastHopCount!.value]).toEqual([
      75,
      value("US", "min_hop_channels"),
    ]);
    for (const row of [many("US"), few("US")])
      expect(row.dwells.map(({ mostDwellS }) => mostDwellS.value)).toEqual([
        value("US", "mean_dwell_per_channel"),
      ]);
    for (const row of us.rules) expect(row.freeAntennaGainDbi!.value).toBe(value("US", "antenna_gain_free"));
    const density = fixed("US").density!;
    expect([density.measuredOverMhz, density.at]).toEqual([0.003, "conducted"]);
    expect(density.limitDbmPerMhz.value).toBeCloseTo(value("US", "psd_conducted") + dbm(1000 / 3), 9);
  });
  test("the power and the free gain of US make the 36 dBm EIRP that the rule implies", () => {
    const { maxConductedDbm, freeAntennaGainDbi } = many("US");
    expect(maxConductedDbm!.value + freeAntennaGainDbi!.value).toBeCloseTo(value("US", "eirp_implied"), 9);
    expect(regionRules.US.remark).toContain(`${value("US", "eirp_equivalent")} dBm EIRP`);
  });
  test("EU, GB and the careful choice for anywhere", () => {
    for (const region of ["EU", "GB", "world"] as const) {
      expect(fixed(region).maxEirpDbm!.value).toBe(value("EU", "eirp"));
      expect(fixed(region).density!.limitDbmPerMhz.value).toBe(value("EU", "psd"));
      expect(many(region).maxEirpDbm!.value).toBe(value("EU", "eirp"));
      expect(many(region).leastHopCount!.value).toBe(value("EU", "fhss_adaptive_min_channels"));
      expect(
        many(region).dwells.map(({ appliesTo, mostDwellS }) => [appliesTo, mostDwellS.value * 1000]),
      ).toEqual([
        ["non-adaptive", value("EU", "fhss_nonadaptive_dwell")],
        ["adaptive", value("EU", "fhss_adaptive_dwell")],
      ]);
      const { fromEirpDbm, mostMediumUseRatio } = regionRules[region].adaptivity;
      expect([fromEirpDbm!.value, 100 * mostMediumUseRatio!.value]).toEqual([
        value("EU", "exempt_power"),
        value("EU", "mu_limit"),
      ]);
    }
  });
  test("CA, AU, NZ and JP", () => {
    expect(fixed("CA").maxEirpDbm!.value).toBeCloseTo(dbm(value("CA", "eirp")), 9);
    expect(fixed("AU").maxEirpDbm!.value).toBeCloseTo(dbm(value("AU", "regdb_max_eirp")), 9);
    expect(fixed("NZ").maxEirpDbm!.value).toBe(value("NZ", "regdb_max_eirp"));
    expect(fixed("JP").density!.limitDbmPerMhz.value).toBeCloseTo(dbm(value("JP", "psd_dsss_ofdm")), 9);
    expect(many("JP").density!.limitDbmPerMhz.value).toBeCloseTo(dbm(value("JP", "psd_fh")), 9);
  });
  test("every figure says its source and how it was read; what no rule was read for is assumed, no standard", () => {
    for (const [region, rule] of Object.entries(regionRules)) {
      const figures = figuresOf(region as RegionCode);
      expect(figures.length, region).toBeGreaterThan(2);
      for (const { source, reading, status } of figures) {
        expect(source.length).toBeGreaterThan(4);
        expect(["read", "read, second-hand", "from memory", "assumed"]).toContain(reading);
        expect(status).toBe(reading === "assumed" ? "assumed" : "standard");
      }
      expect(rule.bandSource.length).toBeGreaterThan(4);
      expect([rule.adaptivity.note.words.length > 10, rule.adaptivity.note.source.length > 4]).toEqual([
        true,
        true,
      ]);
    }
  });
  test("no figure recalled from memory passes for one that was read", () => {
    const recalled = published.filter(({ status }) => status === "memory").map(({ domain }) => domain);
    expect(recalled).toContain("JP");
    expect(figuresOf("JP").map(({ reading }) => reading)).not.toContain("read");
    expect(many("EU").dwells[1]!.mostDwellS.reading).toBe("from memory"); // fhss_adaptive_dwell
    expect(regionRules.EU.adaptivity.mostMediumUseRatio!.reading).toBe("from memory"); // mu_limit
    expect(many("EU").dwells[0]!.mostDwellS.reading).toBe("read"); // fhss_nonadaptive_dwell
  });
});

describe("a radio, point by point", () => {
  test("raster-13 in the EU: 10 dB too much, and no hop rule for a fixed channel", () => {
    const { breaches, judgement, outside } = regulationReview(findProfile("raster-13"), "EU");
    expect(breaches).toMatchObject([{ code: "eirp", eirpDbm: 20, maxEirpDbm: 10, turnDownDb: 10 }]);
    expect(breaches[0]!.words).toMatch(
      /20\.0 dBm EIRP is 10\.0 dB above the 10\.0 dBm of EN 300 328.*turn the power down/,
    );
    expect(judgement.limits.map(({ kind, maxEirpDbm }) => [kind, maxEirpDbm])).toEqual([
      ["density", 10],
      ["eirp", 20],
    ]);
    expect([judgement.leastHopCount, outside]).toEqual([null, []]);
  });
  test("medium use is EIRP / 100 mW × airtime (EN 300 328 V1.8.1 cl. 4.3.1.5.1): 4.5 ms × 44 /s = 19.8 %", () => {
    const at = (tx_power_dbm: number, more = {}) =>
      regulationReview(mine({ tx_power_dbm, ...more }), "EU").adaptivity;
    expect(transmitAirtimeRatio(findProfile("hop-79"))).toBeCloseTo(0.198, 12);
    expect(at(18).mediumUseRatio).toBeCloseTo(0.198, 12); // 18 + 2 dBi = 100 mW
    expect([at(18).asked, at(18).mustAdapt]).toEqual([true, true]);
    expect(at(15)).toMatchObject({ asked: true, mustAdapt: false }); // 50.1 mW: 9.9 %
    expect(at(15).mediumUseRatio).toBeCloseTo(0.198 * 10 ** -0.3, 12);
    expect(at(7.9)).toMatchObject({ asked: false, mustAdapt: null });
    expect(at(8).asked).toBe(true);
    expect(at(18, { packet_ms: 9, universes_per_transmitter_count: 4 }).mediumUseRatio).toBe(1); // no more than all the time
    expect(regulationReview(findProfile("hop-79"), "US").adaptivity).toMatchObject({
      asked: false,
      mustAdapt: null,
    });
  });
  test("airtime counts packets of every universe and every repeat", () => {
    const once = transmitAirtimeRatio(mine({}));
    expect(transmitAirtimeRatio(mine({ universes_per_transmitter_count: 2 }))).toBeCloseTo(2 * once, 12);
    expect(transmitAirtimeRatio(mine({ transmissions_per_frame_count: 3 }))).toBeCloseTo(3 * once, 12);
    expect(transmitAirtimeRatio(mine({ frame_rate_hz: 22 }))).toBeCloseTo(once / 2, 12);
    expect(transmitAirtimeRatio(mine({ packet_ms: 1.5 }))).toBeCloseTo(once / 3, 12);
  });
  test("a radio with too few hop frequencies for any row is told so, not thrown at", () => {
    const ten = mine({ channels: { channel: 0, centre_mhz: 2410, spacing_mhz: 5, channel_count: 10 } });
    for (const region of Object.keys(regionRules) as RegionCode[]) {
      const review = regulationReview(ten, region);
      const breach = review.breaches.find(({ code }) => code === "hop-count");
      expect(breach, region).toMatchObject({ hopCount: 10, least: { value: 15 } });
      expect(review.judgement.hopShortfallCount).toBe(5);
      const [issue] = regulationIssues(review, "ten");
      expect(issue).toMatchObject({
        code: "rule-breach",
        severity: "error",
        source: "ten",
        action: "stated",
      });
      expect(issue!.expected).toMatch(new RegExp(`^${region}: 10 hop frequencies are fewer than the 15 of`));
    }
    const fifteen = mine({ channels: { channel: 0, centre_mhz: 2410, spacing_mhz: 1, channel_count: 15 } });
    expect(regulationReview(fifteen, "EU").breaches).toEqual([]);
  });
  test("a packet longer than any dwell is a breach; up to it none", () => {
    const codes = (packet_ms: number, region: RegionCode): string[] =>
      regulationReview(mine({ packet_ms, tx_power_dbm: -10 }), region).breaches.map(({ code }) => code);
    expect(codes(400, "US")).toEqual([]);
    expect(codes(401, "US")).toEqual(["dwell"]);
    expect(codes(401, "EU")).toEqual(["dwell"]);
    expect(codes(401, "NZ")).toEqual([]); // none read
    const fixedChannel = readProfile(
      { based_on: "raster-13", packet_ms: 900, tx_power_dbm: -10 },
      "a.yaml",
    ).profile!;
    expect(regulationReview(fixedChannel, "US").breaches).toEqual([]);
  });
  test("the power's breach is left to clampToRegion, which may turn it down", () => {
    const loud = regulationReview(mine({ tx_power_dbm: 30 }), "EU");
    expect(loud.breaches.map(({ code }) => code)).toEqual(["eirp"]);
    expect(regulationIssues(loud, "loud")).toEqual([]);
  });
  test("channels that leave the region's band", () => {
    const outside = (name: string, region: RegionCode): readonly number[] =>
      regulationReview(findProfile(name), region).outside.map(({ channel }) => channel);
    expect(outside("raster-16", "EU")).toEqual([]); // 2480 + 1 MHz
    expect(outside("raster-16", "world")).toEqual([25, 26]);
    expect(outside("raster-13", "world")).toEqual([13]); // 2472.5 MHz
  });
});
