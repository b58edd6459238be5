import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { receiverOf } from "../../src/scorer/index.js";
import { onWifiChannel, onWorstWifi } from "../../src/venue/index.js";
import { canMove, isWide } from "../../src/venue/on-wifi-channel.js";
import { findProfile } from "../../src/radio/index.js";
import { numericOverlapRatio } from "../helpers/numeric-overlap.js";
import { referenceCsv } from "../helpers/reference-csv.js";
import { accessPoint } from "../helpers/venue-emitters.js";

const wide = (channel: number, centreMhz: number): Emitter =>
  accessPoint(channel, { shape: transmitShapes.ht40, centreMhz });

describe("onWifiChannel", () => {
  // fixtures/reference/wifi_channels.csv: centres of IEEE 802.11-2020, 40 MHz above the primary to 7, below from 8.
  it.each(referenceCsv("wifi_channels.csv").filter(({ channel }) => Number(channel) <= 13))(
    "puts sources of 20 and 40 MHz on the published centres, channel $channel",
    (row) => {
      const channel = Number(row["channel"]);
      expect(onWifiChannel(accessPoint(4), channel).centreMhz).toBe(Number(row["centre_mhz"]));
      const moved = onWifiChannel(wide(9, 2442), channel);
      const side = channel <= 7 ? "ht40_above_centre_mhz" : "ht40_below_centre_mhz";
      expect(moved.centreMhz).toBe(Number(row[side]));
      expect(moved.shape).toBe(transmitShapes.ht40);
      expect(isWide(moved)).toBe(true);
    },
  );
  it("changes the contention group and nothing else", () => {
    const before = accessPoint(3, { levelDbm: -61, airtimeRatio: 0.4, airtimeAssumed: false });
    expect(onWifiChannel(before, 11)).toEqual({ ...before, centreMhz: 2462, contentionChannel: 11 });
  });
  it("refuses what is no Wi-Fi channel of three", () => {
    for (const channel of [0, 14, 2.5, NaN])
      expect(() => onWifiChannel(accessPoint(1), channel)).toThrow(ArgumentError);
  });
});

describe("canMove", () => {
  it("holds for Wi-Fi and nothing else", () => {
    expect(canMove(accessPoint(14))).toBe(true);
    expect(canMove(accessPoint(6, { contentionChannel: null }))).toBe(false);
  });
});

describe("onWorstWifi", () => {
  const profile = findProfile("raster-13");
  const shapes = [transmitShapes.ht20, transmitShapes.he20, transmitShapes.dsss22];
  it.each(profile.channels)(
    "radio ch $channel: the one of 1, 6, 11 with the most power in it",
    ({ centreMhz }) => {
      const receiver = { ...receiverOf(profile), centreMhz };
      const sources = [
        ...shapes.map((shape, index) => accessPoint(4, { id: `narrow-${index}`, shape })),
        { ...wide(9, 2442), id: "wide" },
      ];
      const moved = onWorstWifi(sources, new Set(sources.map(({ id }) => id)), receiver);
      for (const [index, { shape }] of sources.entries()) {
        // By numeric integration, not by the closed form under test.
        const centres = index === 3 ? [2422, 2447, 2452] : [2412, 2437, 2462];
        const powers = centres.map((atMhz) =>
          numericOverlapRatio(shape, receiver.selectivity, centreMhz - atMhz, 500),
        );
        const taken = powers[[1, 6, 11].indexOf(moved[index]!.contentionChannel!)]!;
        expect(taken).toBeGreaterThanOrEqual(Math.max(...powers) * (1 - 1e-4));
      }
    },
  );
  it("moves only what it is told to, and only Wi-Fi", () => {
    const receiver = { ...receiverOf(profile), centreMhz: 2412 };
    const sources = [
      accessPoint(11, { id: "a" }),
      accessPoint(11, { id: "b" }),
      accessPoint(11, { id: "c", contentionChannel: null }),
    ];
    const moved = onWorstWifi(sources, new Set(["b", "c"]), receiver);
    expect(moved.map(({ centreMhz }) => centreMhz)).toEqual([2462, 2412, 2462]);
  });
});
