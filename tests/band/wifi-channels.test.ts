import { describe, expect, it } from "vitest";
import { RADIO_BAND_MHZ, READ_BAND_MHZ, wifiChannelCentreMhz } from "../../src/band/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const CHANNELS = referenceCsv("wifi_channels.csv");

describe("wifiChannelCentreMhz", () => {
  it("has the fourteen centres of the table, exactly", () => {
    expect(CHANNELS.length).toBe(14);
    for (const row of CHANNELS)
      expect(wifiChannelCentreMhz(Number(row["channel"]))).toBe(Number(row["centre_mhz"]));
  });

  it.each([0, 15, 36, -1, 6.5, Number.NaN, Infinity])("knows no channel %s", (channel) => {
    expect(wifiChannelCentreMhz(channel)).toBeNull();
  });
});

describe("band edges", () => {
  // 47 CFR 15.247 and EN 300 328: 2400–2483.5 MHz.
  it("lets a radio work within 2400–2483.5 MHz, and reads what every channel of the table can occupy", () => {
    expect(RADIO_BAND_MHZ).toEqual([2400, 2483.5]);
    expect(READ_BAND_MHZ).toEqual([2400, 2500]);
    for (const row of CHANNELS) {
      expect(Number(row["dsss22_low_mhz"])).toBeGreaterThanOrEqual(READ_BAND_MHZ[0]);
      expect(Number(row["dsss22_high_mhz"])).toBeLessThanOrEqual(READ_BAND_MHZ[1]);
    }
  });
});
