import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { brickWall, spectralOverlapDb, transmitShapes } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import { emitterKinds, emitterSignals, placedEmitters, venueSite } from "../../src/venue/index.js";
import type { EmitterType, VenueEmitter } from "../../src/venue/index.js";
import { venue, wall } from "../helpers/venues.js";

const profile = findProfile("raster-13");
const device = (type: EmitterType, more: Partial<VenueEmitter> = {}): VenueEmitter => ({
  name: type,
  type,
  at: { x: 0, y: 0, z: 1 },
  eirpDbm: null,
  airtimeRatio: null,
  centreMhz: null,
  bandwidthMhz: null,
  ...more,
});
const signals = (type: EmitterType, more: Partial<VenueEmitter> = {}) =>
  emitterSignals(device(type, more), 2, profile);

describe("what other emitters send", () => {
  it("is the published spectrum of an oven, and its sum", () => {
    const [header, ...rows] = readFileSync("fixtures/reference/microwave_oven.csv", "utf8")
      .trim()
      .split("\n");
    expect(header!.startsWith("model,f_low_mhz,f_label_centre_mhz,psd")).toBe(true);
    const bands = rows
      .map((row) => row.split(",").slice(0, 4))
      .filter(([model]) => model === "oven1")
      .map(([, low, high, psd]) => ({ low: Number(low), high: Number(high), psd: Number(psd) }));
    const sumMw = bands.reduce((sum, { low, high, psd }) => sum + 10 ** (psd / 10) * (high - low) * 1e6, 0);
    const [oven] = signals("microwave-oven");
    expect(oven!.levelDbm).toBeCloseTo(10 * Math.log10(sumMw), 1);
    expect([oven!.airtimeRatio, oven!.contentionChannel]).toEqual([0.5, null]);
    // In each band's middle the shape lies where the table has it, relative to the densest band.
    for (const { low, high, psd } of bands) {
      const offsetMhz = (low + high) / 2 - oven!.centreMhz;
      const { points } = oven!.shape;
      const after = points.findIndex(([mhz]) => mhz >= offsetMhz - 1e-9);
      const [fromMhz, fromDb] = points[Math.max(0, after - 1)]!;
      const [toMhz, toDb] = points[after]!;
      const share = toMhz === fromMhz ? 1 : (offsetMhz - fromMhz) / (toMhz - fromMhz);
      expect(fromDb + share * (toDb - fromDb)).toBeCloseTo(psd + 38, 9);
    }
  });
  it("is every hop in turn for what hops, adding up to its airtime, at most one at a time", () => {
    const hops = signals("bluetooth", { airtimeRatio: 0.4, eirpDbm: 7 });
    expect(hops.map(({ centreMhz }) => centreMhz)).toEqual(Array.from({ length: 79 }, (_, k) => 2402 + k));
    expect(hops.reduce((sum, { airtimeRatio }) => sum + airtimeRatio, 0)).toBeCloseTo(0.4, 12);
    expect(new Set(hops.map(({ contentionChannel }) => contentionChannel))).toEqual(new Set([-3]));
    expect(hops.every(({ levelDbm, shape }) => levelDbm === 7 && shape === transmitShapes.bluetoothBr)).toBe(
      true,
    );
    expect(signals("microphone")).toHaveLength(40); // every 2 MHz
  });
  it("is on its own frequency where that is known", () => {
    const [one, ...more] = signals("bluetooth", { centreMhz: 2440 });
    expect([one!.centreMhz, one!.contentionChannel, more]).toEqual([2440, null, []]);
    expect(signals("video-link", { centreMhz: 2450, bandwidthMhz: 8 })[0]!.shape).toEqual(brickWall(8));
  });
  it("counts on every frequency at once where one that stays isn't known", () => {
    const [anywhere] = signals("ieee-802.15.4", { eirpDbm: 10 });
    const [flat] = signals("ieee-802.15.4", { eirpDbm: 10, centreMhz: 2450, bandwidthMhz: 2 });
    // A 1 MHz receiver anywhere in the band takes what one straight on the signal would.
    const takes = (centreMhz: number, signal = anywhere!): number =>
      signal.levelDbm + spectralOverlapDb(signal.shape, brickWall(1), centreMhz - signal.centreMhz);
    for (const mhz of [2401, 2437, 2472]) expect(takes(mhz)).toBeCloseTo(takes(2450, flat), 9);
  });
  it("is for another wireless DMX what the planned radio itself sends", () => {
    const [dmx] = signals("wireless-dmx", { centreMhz: 2462 });
    expect(dmx!.shape).toBe(profile.emission.value);
    expect(dmx!.levelDbm).toBe(20); // 18 dBm + 2 dBi
    expect(dmx!.airtimeRatio).toBeCloseTo((4.5 * 44) / 1000, 12);
  });
  it("is known for every type, with where it comes from", () => {
    for (const [type, { shape, eirpDbm, airtimeRatio }] of Object.entries(emitterKinds)) {
      for (const { source, status } of [shape, eirpDbm, airtimeRatio]) {
        expect(source.length, type).toBeGreaterThan(10);
        expect(["standard", "assumed"]).toContain(status);
      }
      expect(airtimeRatio.value > 0 && airtimeRatio.value <= 1, type).toBe(true);
      expect(signals(type as EmitterType).length, type).toBeGreaterThan(0);
    }
  });
});

describe("other emitters at a receiver", () => {
  it("arrive by the path model and through walls", () => {
    const walls = [wall({ x: 3, y: -5 }, { x: 3, y: 5 }, { lossDb: 9 })];
    const emitters = [device("analogue-video", { centreMhz: 2450, eirpDbm: 12 })];
    const [heard] = placedEmitters(
      venueSite(venue({ walls, emitters })),
      profile,
    )({
      at: { x: 12, y: 0, z: 6 },
      room: "hall",
    });
    // 13 m (12, 0, 5), N = 22 at 2442 MHz.
    const lossDb = 20 * Math.log10(2442) + 22 * Math.log10(13) - 28 + 9;
    expect(heard!.levelDbm).toBeCloseTo(12 - lossDb, 9);
  });
});
