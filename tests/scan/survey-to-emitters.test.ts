import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import { buildSurvey, toEmitters } from "../../src/scan/index.js";
import { reading, scanOf } from "../helpers/readings.js";

describe("toEmitters", () => {
  it("hands on level, centre, airtime and shape; turns go by the primary channel", () => {
    const survey = buildSurvey([
      scanOf([
        reading({ widthMhz: 40, centreMhz: 2447, signalDbm: -48, airtimeRatio: 0.3 }),
        reading({ bssid: "02:00:5e:20:00:01", channel: 11, centreMhz: 2462, signalDbm: -80, standard: "b" }),
      ]),
    ]);
    expect(toEmitters(survey)).toEqual([
      {
        id: "02:00:5e:10:00:01",
        centreMhz: 2447,
        shape: transmitShapes.ht40,
        levelDbm: -48,
        airtimeRatio: 0.3,
        airtimeAssumed: false,
        contentionChannel: 6,
      },
      {
        id: "02:00:5e:20:00:01",
        centreMhz: 2462,
        shape: transmitShapes.dsss22,
        levelDbm: -80,
        airtimeRatio: 0.1,
        airtimeAssumed: true,
        contentionChannel: 11,
      },
    ]);
  });
});
