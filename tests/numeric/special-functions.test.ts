import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import {
  noncentralChiSquareCdf,
  normalCdf,
  normalTail,
  normalTailQuantile,
  poissonMass,
  trapezoid,
} from "../../src/numeric/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";
import { relativeError } from "./relative-error.js";

const rows = referenceCsv("special_functions.csv");
const functions: Record<string, (argument: number, parameter: number) => number> = {
  normal_tail: (x) => normalTail(x),
  normal_tail_quantile: (p) => normalTailQuantile(p),
  poisson_mass: poissonMass,
  noncentral_chi_square_cdf: noncentralChiSquareCdf,
};

// Source: mpmath 1.3.0 at 45 digits by other routes (fixtures/reference/README.md).
describe("against 45-digit arithmetic", () => {
  test.each(Object.keys(functions))("%s to 2e-14 relative", (name) => {
    const ofName = rows.filter((row) => row["function"] === name);
    expect(ofName.length).toBeGreaterThanOrEqual(8);
    for (const row of ofName) {
      const ours = functions[name]!(Number(row["argument"]), Number(row["parameter"]));
      expect(relativeError(ours, Number(row["value"])), JSON.stringify(row)).toBeLessThan(2e-14);
    }
  });
});

describe("normal distribution", () => {
  test("one-sided factors of published tables", () => {
    // Abramowitz and Stegun Table 26.5 style values: 90, 95, 99, 99.9 %.
    const published = { 0.1: 1.2816, 0.05: 1.6449, 0.01: 2.3263, 0.001: 3.0902 };
    for (const [tail, z] of Object.entries(published))
      expect(normalTailQuantile(Number(tail))).toBeCloseTo(z, 4);
  });
  test("both halves, infinities, underflow", () => {
    for (let x = -6; x <= 6; x += 0.25) expect(normalCdf(x) + normalTail(x)).toBeCloseTo(1, 15);
    expect(normalTail(Infinity)).toBe(0);
    expect(normalTail(-Infinity)).toBe(1);
    expect(normalTail(50)).toBe(0);
    expect(normalTailQuantile(0.9)).toBeCloseTo(-1.2815515655446004, 14);
  });
  test("the tail is the integral of the density (trapezoid, 20 standard deviations)", () => {
    for (const x of [0, 0.7, 1.5, 3]) {
      const shifted = trapezoid((t) => Math.exp(-0.5 * x * x - x * t - 0.5 * t * t), 0, 20, 200_000);
      expect(relativeError(normalTail(x), shifted / Math.sqrt(2 * Math.PI))).toBeLessThan(1e-8);
    }
  });
  test("throws", () => {
    expect(() => normalTail(NaN)).toThrow(ArgumentError);
    for (const bad of [0, 1, -0.1, 1.1, NaN]) expect(() => normalTailQuantile(bad)).toThrow(ArgumentError);
  });
});

describe("Poisson mass", () => {
  test.each([0.3, 7, 19.9, 20.1, 400])("sums to one and has its mean, m = %d", (m) => {
    let [total, mean] = [0, 0];
    for (let k = 0; k < m + 40 * Math.sqrt(m) + 60; k++) {
      total += poissonMass(k, m);
      mean += k * poissonMass(k, m);
    }
    expect(relativeError(total, 1)).toBeLessThan(1e-13);
    expect(relativeError(mean, m)).toBeLessThan(1e-13);
  });
  test("the two forms meet where they change over", () => {
    for (const k of [15, 16, 20, 21]) {
      expect(relativeError(poissonMass(k, 20), (poissonMass(k - 1, 20) * 20) / k)).toBeLessThan(1e-13);
    }
    expect(poissonMass(3, 0)).toBe(0);
  });
  test("throws", () => {
    for (const bad of [-1, 0.5, NaN, Infinity]) expect(() => poissonMass(bad, 1)).toThrow(ArgumentError);
    for (const bad of [-1, NaN, Infinity]) expect(() => poissonMass(1, bad)).toThrow(ArgumentError);
  });
});

describe("noncentral chi-square", () => {
  test("without noncentrality it is exponential: 1 − e^(−x/2)", () => {
    for (const x of [1e-12, 0.1, 1, 10, 60])
      expect(relativeError(noncentralChiSquareCdf(x, 0), -Math.expm1(-x / 2))).toBeLessThan(1e-14);
  });
  test("rises with x, falls with λ, ends at 1 however far", () => {
    let before = 0;
    for (let x = 0.5; x < 60; x += 0.5) {
      const now = noncentralChiSquareCdf(x, 15);
      expect(now).toBeGreaterThan(before);
      expect(now).toBeGreaterThan(noncentralChiSquareCdf(x, 16));
      before = now;
    }
    expect(noncentralChiSquareCdf(1e12, 4)).toBe(1);
    expect(noncentralChiSquareCdf(Number.MAX_VALUE, 4)).toBe(1);
  });
  test("throws", () => {
    for (const bad of [-1, NaN, Infinity]) {
      expect(() => noncentralChiSquareCdf(bad, 1)).toThrow(ArgumentError);
      expect(() => noncentralChiSquareCdf(1, bad)).toThrow(ArgumentError);
    }
  });
});
