/** Where one reading lies: against quadratures apart, closed forms and the limits of either spread. */
import { describe, expect, test } from "vitest";
import { readingIntervalDb } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { fadeMarginDb } from "../../src/propagation/index.js";

const rayleigh = readingIntervalDb({ law: "rayleigh" });
const rician = readingIntervalDb({ law: "rician", kDb: 6 });

/**
 * scipy 1.17.1: quad of the density of norm or t(ν) times 1 − exp(−10^(y/10)), or ncx2.cdf(2(1+K)·10^(y/10), 2, 2K)
 * with K = 10^0.6, over σ·t; brentq at 2.5 % and 97.5 %.
 */
const QUADRATURES: readonly (readonly [
  law: "rayleigh" | "rician",
  sigmaDb: number,
  freedomCount: number | null,
  lowDb: number,
  highDb: number,
])[] = [
  ["rayleigh", 0.25, null, -15.972752, 5.688256],
  ["rician", 0.25, null, -8.787472, 3.879797],
  ["rayleigh", 3, null, -16.968514, 7.932956],
  ["rician", 3, null, -10.487297, 6.92463],
  ["rayleigh", 5, 30, -18.929742, 11.095823],
  ["rician", 5, 30, -13.512229, 10.632545],
  ["rayleigh", 8, 3, -30.677599, 24.456718],
  ["rician", 8, 3, -27.30451, 25.055978],
  ["rician", 3.1, 33, -10.741266, 7.250256],
];

describe("the interval of one reading", () => {
  test.each(QUADRATURES)(
    "%s, σ %d dB, %s degrees: as by quadrature",
    (law, sigmaDb, freedomCount, lowDb, highDb) => {
      const [low, high] = (law === "rayleigh" ? rayleigh : rician)({ sigmaDb, freedomCount });
      expect(Math.abs(low - lowDb)).toBeLessThan(0.02);
      expect(Math.abs(high - highDb)).toBeLessThan(0.02);
    },
  );
  test("without shadowing, Rayleigh: 10·log10(−ln(1 − p))", () => {
    const level = (p: number): number => 10 * Math.log10(-Math.log(1 - p));
    const [low, high] = rayleigh({ sigmaDb: 0, freedomCount: null, confidenceRatio: 0.9 });
    expect(low).toBeCloseTo(level(0.05), 9);
    expect(high).toBeCloseTo(level(0.95), 9);
  });
  test("without fading: ±t·σ of a printed table (t of 10 degrees at 2.5 %: 2.228), ±1.96·σ where σ is known", () => {
    const [low, high] = readingIntervalDb(null)({ sigmaDb: 4, freedomCount: 10 });
    expect([low, high]).toEqual([expect.closeTo(-8.912, 2), expect.closeTo(8.912, 2)]);
    expect(readingIntervalDb(null)({ sigmaDb: 4, freedomCount: null })[1]).toBeCloseTo(7.84, 2);
    expect(readingIntervalDb(null)({ sigmaDb: 0, freedomCount: null })).toEqual([0, 0]);
  });
  test("Rayleigh over a normal local mean is the composite law of the fade allowance", () => {
    const at = (outageRatio: number): number =>
      -fadeMarginDb({ law: "rayleigh-lognormal", sigmaDb: 6, outageRatio });
    const [low, high] = rayleigh({ sigmaDb: 6, freedomCount: null });
    expect(Math.abs(low - at(0.025))).toBeLessThan(0.02);
    expect(Math.abs(high - at(0.975))).toBeLessThan(0.02);
  });
  test("it holds the prediction, and grows with σ and with confidence", () => {
    const widths = [1, 3, 6, 12].map((sigmaDb) => rician({ sigmaDb, freedomCount: null }));
    for (const [low, high] of widths) expect(low < 0 && high > 0).toBe(true);
    const spans = widths.map(([low, high]) => high - low);
    expect([...spans].sort((a, b) => a - b)).toEqual(spans);
    const [low99] = rician({ sigmaDb: 3, freedomCount: null, confidenceRatio: 0.99 });
    expect(low99).toBeLessThan(rician({ sigmaDb: 3, freedomCount: null })[0] - 2);
  });
  test.each([
    ["a law with shadowing in it", () => readingIntervalDb({ law: "lognormal", sigmaDb: 3 })],
    ["σ below 0", () => rician({ sigmaDb: -1, freedomCount: null })],
    ["σ that is no number", () => rician({ sigmaDb: NaN, freedomCount: null })],
    ["a confidence of 1", () => rician({ sigmaDb: 3, freedomCount: null, confidenceRatio: 1 })],
    ["half a degree of freedom", () => rician({ sigmaDb: 3, freedomCount: 0.5 })],
  ])("%s is refused", (_, act) => {
    expect(act).toThrow(ArgumentError);
  });
});
