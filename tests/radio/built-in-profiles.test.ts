import { describe, expect, test } from "vitest";
import { requireShape } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import {
  builtInProfiles,
  enclosureLosses,
  findProfile,
  nearestWord,
  rasterChannels,
} from "../../src/radio/index.js";
import type { Figure, RadioProfile } from "../../src/radio/index.js";

function figuresOf(profile: RadioProfile): [string, Figure<unknown>][] {
  return Object.entries(profile).filter(
    (entry): entry is [string, Figure<unknown>] =>
      typeof entry[1] === "object" && entry[1] !== null && "value" in entry[1],
  );
}

describe("channel plans", () => {
  test("raster-13: 2412 … 2472 MHz, 5 MHz apart (thirteen: common practice, no source)", () => {
    const { channels } = findProfile("raster-13");
    expect(channels.map(({ channel }) => channel)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13]);
    for (const { channel, centreMhz } of channels) expect(centreMhz).toBe(2407 + 5 * channel);
  });
  test("raster-16: IEEE 802.15.4, 2405 + 5(k − 11) MHz, k = 11 … 26", () => {
    const { channels } = findProfile("raster-16");
    expect(channels.length).toBe(16);
    for (const { channel, centreMhz } of channels) expect(centreMhz).toBe(2405 + 5 * (channel - 11));
    expect([channels[0]!.channel, channels[15]!.channel]).toEqual([11, 26]);
  });
  test("hop-79: Bluetooth Core Vol 2 Part A Table 2.1, 2402 + k MHz, k = 0 … 78", () => {
    for (const name of ["hop-79", "hop-79-avoid"]) {
      const { channels, hopping } = findProfile(name);
      expect(channels.length).toBe(79);
      for (const { channel, centreMhz } of channels) expect(centreMhz).toBe(2402 + channel);
      expect(channels[0]!.channel).toBe(0);
      expect(hopping).toMatchObject({ avoids: name === "hop-79-avoid", leastHopCount: { value: 15 } });
    }
  });
  test("an even raster throws on what is none", () => {
    const raster = { channel: 1, centreMhz: 2412, spacingMhz: 5, channelCount: 3 };
    expect(rasterChannels(raster).map(({ centreMhz }) => centreMhz)).toEqual([2412, 2417, 2422]);
    for (const wrong of [
      { channel: -1 },
      { channel: 1.5 },
      { centreMhz: 0 },
      { spacingMhz: NaN },
      { channelCount: 0 },
    ])
      expect(() => rasterChannels({ ...raster, ...wrong })).toThrow(ArgumentError);
  });
});

describe("figures", () => {
  test("the four, the default first", () => {
    expect(builtInProfiles.map(({ name }) => name)).toEqual([
      "raster-13",
      "raster-16",
      "hop-79",
      "hop-79-avoid",
    ]);
  });
  test.each(["raster-13", "hop-79", "hop-79-avoid"])("%s holds the GFSK figures", (name) => {
    const profile = findProfile(name);
    const values = Object.fromEntries(figuresOf(profile).map(([key, figure]) => [key, figure.value]));
    expect(values).toMatchObject({
      requiredCiDb: 11 + 3, // RF.TS p34 Table 4.6, and 3 dB assumed
      bandwidthMhz: 1,
      noiseFigureDb: 10,
      sensitivityDbm: -114 + 10 + 14, // kTB + noise figure + required C/I
      txPowerDbm: 18,
      txFeederLossDb: 0,
      txGainDbi: 2,
      rxGainDbi: 2,
      enclosure: "slotted-metal",
      enclosureLossDb: 10,
      packetMs: 4.5,
      transmissionsPerFrameCount: 1,
      frameRateHz: 44, // ANSI E1.11: 44.10 at most
      universesPerTransmitterCount: 1,
      receiversFollow: "unknown",
      relinkS: null,
    });
    expect(profile.requiredCiDb.status).toBe("assumed");
    expect(profile.selectivity.status).toBe("standard");
  });
  test("raster-16 differs where O-QPSK does", () => {
    const profile = findProfile("raster-16");
    expect(profile.bandwidthMhz.value).toBe(2);
    expect(profile.requiredCiDb).toMatchObject({ value: 5, status: "assumed" });
    expect(profile.sensitivityDbm).toMatchObject({ value: -85, status: "standard" }); // IEEE 802.15.4, memory
    expect(profile.selectivity.value.points).toContainEqual([7.5, -20]);
    expect(profile.selectivity.value.points).toContainEqual([-100, -35]);
    expect(profile.emission.value.points).toContainEqual([3.5, -20]); // IEEE 802.15.4 mask, memory
  });
  test("each figure has a status and a source in words, each shape is one, none is the user's", () => {
    for (const profile of builtInProfiles) {
      const figures = figuresOf(profile);
      expect(figures.length).toBe(18);
      for (const [key, figure] of figures) {
        expect(["standard", "assumed"], key).toContain(figure.status);
        expect(figure.source.length, key).toBeGreaterThan(5);
      }
      expect(profile.generic).toBe(true);
      requireShape("selectivity", profile.selectivity.value);
      requireShape("emission", profile.emission.value);
    }
  });
  test("enclosures (assumed, all four)", () => {
    const losses = Object.entries(enclosureLosses).map(([name, figure]) => [
      name,
      figure.value,
      figure.status,
    ]);
    expect(losses).toEqual([
      ["antenna-outside", 0, "assumed"],
      ["plastic-or-glass", 3, "assumed"],
      ["slotted-metal", 10, "assumed"],
      ["closed-metal", 20, "assumed"],
    ]);
    expect(enclosureLosses["closed-metal"].source).toContain("bring the antenna out");
  });
  test("an unknown name throws and the nearest is suggested", () => {
    expect(() => findProfile("raster13")).toThrow("did you mean raster-13?");
    expect(() => findProfile("elephant")).toThrow(ArgumentError);
    expect(() => findProfile("elephant")).not.toThrow("did you mean");
  });
});

describe("nearest word", () => {
  test("a third of the letters may be wrong, case and underscores don't count", () => {
    expect(nearestWord("TX_POWER_DBM", ["rxGainDbi", "txPowerDbm"])).toBe("txPowerDbm");
    expect(nearestWord("kitten", ["sitting", "mitten"])).toBe("mitten");
    expect(nearestWord("abc", ["xyz"])).toBeNull();
    expect(nearestWord("x".repeat(100_000), ["txPowerDbm"])).toBeNull();
    expect(nearestWord("", ["abc"])).toBeNull();
  });
});
