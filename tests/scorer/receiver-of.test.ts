import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { receiverOf } from "../../src/scorer/index.js";
import { profileWith } from "../helpers/profiles.js";

describe("receiverOf", () => {
  // −174 dBm/Hz + 60 dB for 1 MHz + 10 dB; antenna 2 dBi − canopy 10 dB.
  it("takes noise floor, gain and selectivity from the profile, by hand", () => {
    const receiver = receiverOf(findProfile("raster-13"));
    expect(receiver.noiseFloorDbm).toBeCloseTo(-104, 12);
    expect(receiver.gainDb).toBe(-8);
    expect(receiver.selectivity).toBe(findProfile("raster-13").selectivity.value);
  });

  it("follows other figures", () => {
    const profile = profileWith("raster-16", { noiseFigureDb: 6, rxGainDbi: 0, enclosureLossDb: 3 });
    // 2 MHz is 63.0103 dBHz.
    expect(receiverOf(profile).noiseFloorDbm).toBeCloseTo(-174 + 63.0103 + 6, 4);
    expect(receiverOf(profile).gainDb).toBe(-3);
  });
});
