import { describe, expect, it } from "vitest";
import { beaconLevelDbm } from "../../src/scorer/beacon-level.js";
import { interferenceDistribution } from "../../src/scorer/index.js";

const NOISE = interferenceDistribution(-104, []);
// Wanted −60 with a C/I of 14 dB: the threshold is −74 dBm.
const terms = (busyShareRatio: number) => ({ wantedDbm: -60, requiredCiDb: 14, busyShareRatio });
const notAsked = (): number => {
  throw new Error("the clear air could not change the level");
};

describe("beaconLevelDbm", () => {
  it("stays as it is at or below the threshold, without asking for the clear air", () => {
    expect(beaconLevelDbm(-80, NOISE, terms(0.01), notAsked)).toBe(-80);
    expect(beaconLevelDbm(-74, NOISE, terms(0.01), notAsked)).toBe(-74);
  });
  it("is held at the threshold where the exact clear air says that the busy share holds", () => {
    expect(beaconLevelDbm(-73.9, NOISE, terms(0.01), () => 0.995)).toBe(-74);
    expect(beaconLevelDbm(-73.9, NOISE, terms(0.01), () => 0.99 - 5e-10)).toBe(-74); // slack of 1e-9
    expect(beaconLevelDbm(-73.9, NOISE, terms(0.5), () => 0.5 - 1e-9)).toBe(-74); // itself included
  });
  it("stays as it is where the clear air says that it doesn't", () => {
    expect(beaconLevelDbm(-73.9, NOISE, terms(0.01), () => 0.985)).toBe(-73.9);
    expect(beaconLevelDbm(-73.9, NOISE, terms(0.01), () => 0.99 - 2e-9)).toBe(-73.9);
  });
  it("never falls below what is always there", () => {
    const rest = interferenceDistribution(-70, []);
    expect(beaconLevelDbm(-70, rest, terms(0.01), notAsked)).toBe(-70);
    expect(beaconLevelDbm(-69, rest, terms(1), () => 0)).toBe(-70);
  });
  it("is the loudest of every group at a busy share of 0, however seldom", () => {
    expect(beaconLevelDbm(-65, NOISE, terms(0), notAsked)).toBe(-65);
  });
});
