import { describe, expect, it } from "vitest";
import { buildSurvey } from "../../src/scan/build-survey.js";
import type { Reading } from "../../src/scan/reading.js";
import { surveyChange } from "../../src/scan/survey-change.js";
import { reading, scanOf } from "../helpers/readings.js";

const survey = (...given: Partial<Reading>[]) => buildSurvey([scanOf(given.map((each) => reading(each)))]);
const A = "02:00:00:00:10:01";
const B = "02:00:00:00:20:01";

describe("surveyChange", () => {
  it("tells by how many dB and how much airtime a radio changed, by hand", () => {
    const [change] = surveyChange(
      survey({ bssid: A, signalDbm: -60, airtimeRatio: 0.2 }),
      survey({ bssid: A, signalDbm: -57, airtimeRatio: 0.55 }),
    );
    expect(change!.levelChangeDb).toBeCloseTo(3, 12);
    expect(change!.airtimeChangeRatio).toBeCloseTo(0.35, 12);
  });

  it("tells who came and who went; nobody counts twice", () => {
    const changes = surveyChange(
      survey({ bssid: A, airtimeRatio: 0.1 }),
      survey({ bssid: B, airtimeRatio: 0.4 }),
    );
    expect(changes.map(({ emitter, before, after }) => [emitter, before === null, after === null])).toEqual([
      [B, true, false],
      [A, false, true],
    ]);
    expect(changes.map(({ levelChangeDb }) => levelChangeDb)).toEqual([null, null]);
  });

  it("knows a radio that moved to another channel by its address", () => {
    const [change, ...others] = surveyChange(
      survey({ bssid: A, channel: 1, centreMhz: 2412 }),
      survey({ bssid: A, channel: 11, centreMhz: 2462 }),
    );
    expect(others).toEqual([]);
    expect([change!.before!.channel, change!.after!.channel]).toEqual([1, 11]);
  });

  it("finds no change between a survey and itself", () => {
    const one = survey({ bssid: A }, { bssid: B, channel: 11, centreMhz: 2462 });
    for (const { levelChangeDb, airtimeChangeRatio } of surveyChange(one, one))
      expect([levelChangeDb, airtimeChangeRatio]).toEqual([0, 0]);
  });
});
