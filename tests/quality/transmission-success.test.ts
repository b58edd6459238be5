import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import { transmissionSuccessRatio } from "../../src/quality/index.js";
import type { TransmissionTerms } from "../../src/quality/index.js";
import { simulatedSuccessRatio } from "../helpers/burst-simulation.js";

const terms = (given: Partial<TransmissionTerms>): TransmissionTerms => ({
  clearAirRatio: 1,
  harmfulRatios: [],
  packetMs: 4.5,
  burstMs: 2,
  receivedDbm: -60,
  sensitivityDbm: -90,
  ...given,
});
const success = (given: Partial<TransmissionTerms>): number => transmissionSuccessRatio(terms(given));

describe("transmissionSuccessRatio, by hand", () => {
  it("is the clear air where no source is harmful alone", () => {
    expect(success({})).toBe(1);
    expect(success({ clearAirRatio: 0.9 })).toBe(0.9);
  });

  // τ·a/(burst·(1−a)) = 4.5·0.2/(2·0.8) = 0.5625; 0.8·e^−0.5625 = 0.8·0.569783 = 0.455826.
  it("loses what a harmful burst begins in, one group", () => {
    expect(success({ clearAirRatio: 0.8, harmfulRatios: [0.2] })).toBeCloseTo(0.455826, 6);
  });

  // Two groups: 0.5625 and 4.5·0.5/(2·0.5) = 2.25, together e^−2.8125 = 0.0600547; times 0.4.
  it("multiplies groups", () => {
    expect(success({ clearAirRatio: 0.4, harmfulRatios: [0.2, 0.5] })).toBeCloseTo(0.4 * 0.0600547, 7);
  });

  it("is less for a longer transmission and more for longer bursts of the same airtime", () => {
    const base = success({ harmfulRatios: [0.2] });
    expect(success({ harmfulRatios: [0.2], packetMs: 9 })).toBeCloseTo(base ** 2, 12);
    expect(success({ harmfulRatios: [0.2], burstMs: 4 })).toBeCloseTo(base ** 0.5, 12);
  });

  it("is 0 under a group that is always harmful, without clear air, and below the sensitivity", () => {
    expect(success({ harmfulRatios: [0.1, 1] })).toBe(0);
    expect(success({ clearAirRatio: 0 })).toBe(0);
    expect(success({ receivedDbm: -90.001 })).toBe(0);
    expect(success({ receivedDbm: -90 })).toBe(1);
    expect(success({ receivedDbm: -90 - 5e-10 })).toBe(1); // slack of 1e-9 dB
  });
});

describe("transmissionSuccessRatio against an event simulation", () => {
  // 60,000 transmissions, one standard deviation √(s(1−s)/60000) ≤ 0.0021; starts lie 27 ms apart on average, more
  // than ten bursts, so that neighbours hardly depend on each other. 4.5 deviations allowed.
  it.each([
    ["one source", [0.2], 4.5, 2],
    ["one busy source", [0.6], 1.5, 2],
    ["long bursts", [0.3], 4.5, 5],
    ["three groups", [0.05, 0.1, 0.2], 4.5, 2],
    ["short transmissions", [0.5, 0.3], 0.4, 2],
  ])("%s", (_, shares, packetMs, burstMs) => {
    const clearAirRatio = shares.reduce((clear, share) => clear * (1 - share), 1);
    const expected = success({ clearAirRatio, harmfulRatios: shares, packetMs, burstMs });
    const simulated = simulatedSuccessRatio(
      shares.map((onRatio) => ({ onRatio, burstMs })),
      packetMs,
      60_000,
      seededRandom(4711),
    );
    expect(Math.abs(simulated - expected)).toBeLessThan(
      4.5 * Math.sqrt((expected * (1 - expected)) / 60_000),
    );
  });
});

describe("transmissionSuccessRatio, invariants and mistakes", () => {
  it("stays in 0..1 and never rises with a harmful share", () => {
    const ratio = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(ratio, fc.array(ratio, { maxLength: 5 }), ratio, (clearAirRatio, shares, more) => {
        const before = success({ clearAirRatio, harmfulRatios: shares });
        const after = success({ clearAirRatio, harmfulRatios: [...shares, more] });
        expect(before).toBeGreaterThanOrEqual(0);
        expect(before).toBeLessThanOrEqual(1);
        expect(after).toBeLessThanOrEqual(before);
      }),
    );
  });

  it.each([
    ["clear air above 1", { clearAirRatio: 1.1 }],
    ["clear air of NaN", { clearAirRatio: Number.NaN }],
    ["a share below 0", { harmfulRatios: [-0.1] }],
    ["a share above 1", { harmfulRatios: [1.1] }],
    ["a share of NaN", { harmfulRatios: [Number.NaN] }],
    ["a packet of 0 ms", { packetMs: 0 }],
    ["a burst of 0 ms", { burstMs: 0 }],
    ["a level of NaN", { receivedDbm: Number.NaN }],
    ["a sensitivity of NaN", { sensitivityDbm: Number.NaN }],
  ])("throws for %s", (_, wrong) => {
    expect(() => success(wrong)).toThrow(ArgumentError);
  });

  it("throws for a share above 1 also after one that decides", () => {
    expect(() => success({ harmfulRatios: [1, 1.5] })).toThrow(ArgumentError);
  });
});
