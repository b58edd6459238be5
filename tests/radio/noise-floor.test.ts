import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile, noiseFloorDbm, profileNoiseFloorDbm } from "../../src/radio/index.js";

describe("noise floor", () => {
  test("k·290 K·B: −113.98, −110.96, −100.96, −97.95 dBm for 1, 2, 20, 40 MHz", () => {
    // Physics with the exact Boltzmann constant of the SI; −174 is the trade's rounding of −173.975.
    for (const bandwidthMhz of [1, 2, 20, 40]) {
      const exactDbm = 10 * Math.log10(1.380649e-23 * 290 * bandwidthMhz * 1e6 * 1000);
      const ours = noiseFloorDbm({ bandwidthMhz, noiseFigureDb: 0 });
      expect(Math.abs(ours - exactDbm)).toBeLessThan(0.026);
    }
    expect(noiseFloorDbm({ bandwidthMhz: 1, noiseFigureDb: 0 })).toBeCloseTo(-114, 12);
  });
  test("3.01 dB a doubling of bandwidth, dB for dB of noise figure", () => {
    const at = (bandwidthMhz: number, noiseFigureDb: number): number =>
      noiseFloorDbm({ bandwidthMhz, noiseFigureDb });
    expect(at(4, 7) - at(2, 7)).toBeCloseTo(10 * Math.log10(2), 12);
    expect(at(2, 9) - at(2, 7)).toBeCloseTo(2, 12);
  });
  test("the profiles' own: −104 and −100.99 dBm by hand", () => {
    expect(profileNoiseFloorDbm(findProfile("raster-13"))).toBeCloseTo(-174 + 60 + 10, 12);
    expect(profileNoiseFloorDbm(findProfile("raster-16"))).toBeCloseTo(-174 + 63.0103 + 10, 4);
  });
  test("throws", () => {
    for (const bad of [0, -1, NaN, Infinity])
      expect(() => noiseFloorDbm({ bandwidthMhz: bad, noiseFigureDb: 7 })).toThrow(ArgumentError);
    expect(() => noiseFloorDbm({ bandwidthMhz: 1, noiseFigureDb: NaN })).toThrow(ArgumentError);
  });
});
