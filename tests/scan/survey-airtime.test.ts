import { describe, expect, it } from "vitest";
import { ASSUMED_AIRTIME } from "../../src/scan/index.js";
import { airtimeOf } from "../../src/scan/survey-airtime.js";
import type { Heard } from "../../src/scan/survey-source.js";

const heard = (crowdRank: number, airtimeRatio: number | null): Heard => ({
  place: "hall",
  crowdRank,
  signalDbm: -60,
  airtimeRatio,
});
const [EMPTY, PART, FULL] = [0, 1, 2];

describe("airtimeOf, reported", () => {
  // The d3-array definition: h = (n − 1)·p, linear between neighbours. Five values: h = 3.6, 0.4 + 0.6·(0.5 − 0.4).
  it("is the 0.9 quantile of what was reported, by hand", () => {
    const reports = [0.5, 0.1, 0.4, 0.2, 0.3].map((ratio) => heard(EMPTY, ratio));
    expect(airtimeOf(reports, -60, EMPTY)).toEqual({
      airtimeRatio: expect.closeTo(0.46, 12) as number,
      airtimeAssumed: false,
    });
  });

  it("looks only at the fullest crowd in which the source reported a load", () => {
    const reports = [heard(EMPTY, 0.9), heard(PART, 0.2), heard(FULL, null)];
    expect(airtimeOf(reports, -60, FULL)).toEqual({ airtimeRatio: 0.2, airtimeAssumed: false });
  });

  it("takes a report of 0 and of 1 as reports", () => {
    expect(airtimeOf([heard(FULL, 0)], -40, FULL)).toEqual({ airtimeRatio: 0, airtimeAssumed: false });
    expect(airtimeOf([heard(FULL, 1)], -40, FULL)).toEqual({ airtimeRatio: 1, airtimeAssumed: false });
  });
});

describe("airtimeOf, assumed", () => {
  // Section on airtime of the project's own contract: 0.10 empty, 0.25 part, 0.50 full; common practice, no source.
  it.each([
    [EMPTY, -60, 0.1],
    [PART, -60, 0.25],
    [FULL, -60, 0.5],
    [FULL, -75, 0.5],
    [FULL, -75.001, 0.1],
    [PART, -90, 0.1],
  ])("crowd %s, %s dBm: %s", (fullestRank, levelDbm, airtimeRatio) => {
    const result = airtimeOf([heard(EMPTY, null)], levelDbm, fullestRank);
    expect(result).toEqual({ airtimeRatio, airtimeAssumed: true });
  });

  it("can be given other figures", () => {
    const figures = { ...ASSUMED_AIRTIME, fullRatio: 0.8, ownFromDbm: -65 };
    expect(airtimeOf([heard(FULL, null)], -60, FULL, figures).airtimeRatio).toBe(0.8);
    expect(airtimeOf([heard(FULL, null)], -70, FULL, figures).airtimeRatio).toBe(0.1);
  });
});
