import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { jobAvailability, reliabilityForAll } from "../../src/quality/index.js";

describe("jobAvailability", () => {
  // 0.99^20 = 0.8179069 (four-figure tables: 0.8179); 20 · 0.01 = 0.2
  it("twenty receivers at 99 %, by hand", () => {
    const job = jobAvailability({ receiverCount: 20, reliability: 0.99 });
    expect(job.expectedInHoleCount).toBeCloseTo(0.2, 12);
    expect(job.allHoldProbability).toBeCloseTo(0.8179069, 7);
  });
  it("is the binomial distribution: its mean and its term of none, summed term by term", () => {
    const [n, r] = [9, 0.93];
    let [mean, choose] = [0, 1];
    for (let holes = 0; holes <= n; holes++) {
      mean += holes * choose * (1 - r) ** holes * r ** (n - holes);
      choose = (choose * (n - holes)) / (holes + 1);
    }
    const job = jobAvailability({ receiverCount: n, reliability: r });
    expect(job.expectedInHoleCount).toBeCloseTo(mean, 12);
    expect(job.allHoldProbability).toBeCloseTo(r ** 9, 12);
  });
  it("the ends", () => {
    expect(jobAvailability({ receiverCount: 5, reliability: 1 })).toEqual({
      expectedInHoleCount: 0,
      allHoldProbability: 1,
    });
    expect(jobAvailability({ receiverCount: 5, reliability: 0 })).toEqual({
      expectedInHoleCount: 5,
      allHoldProbability: 0,
    });
  });
});

describe("reliabilityForAll", () => {
  // ln 0.99 = −0.01005033585, over 20: x = −0.00050251679; 1 + x + x²/2 = 0.99949760947
  it("99 % for twenty receivers together, by hand", () => {
    expect(reliabilityForAll({ receiverCount: 20, allHoldProbability: 0.99 })).toBeCloseTo(0.9994976094, 9);
    expect(reliabilityForAll({ receiverCount: 1, allHoldProbability: 0.99 })).toBe(0.99);
  });
  it("undoes jobAvailability, and rises with both", () => {
    const count = fc.integer({ min: 1, max: 500 });
    const share = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
    fc.assert(
      fc.property(count, share, (receiverCount, allHoldProbability) => {
        const reliability = reliabilityForAll({ receiverCount, allHoldProbability });
        const back = jobAvailability({ receiverCount, reliability }).allHoldProbability;
        expect(Math.abs(back - allHoldProbability)).toBeLessThan(1e-12);
        expect(reliabilityForAll({ receiverCount: receiverCount + 1, allHoldProbability })).toBeGreaterThan(
          reliability,
        );
      }),
    );
  });
});

describe("throws", () => {
  it.each([0, -1, 1.5, NaN, Infinity, 2e6])("for %s receivers", (receiverCount) => {
    expect(() => jobAvailability({ receiverCount, reliability: 0.9 })).toThrow(ArgumentError);
    expect(() => reliabilityForAll({ receiverCount, allHoldProbability: 0.9 })).toThrow("receiverCount");
  });
  it.each([-0.1, 1.1, NaN])("for a share of %s", (reliability) => {
    expect(() => jobAvailability({ receiverCount: 3, reliability })).toThrow("reliability");
  });
  it.each([0, 1, -0.1, 1.1, NaN])("for a chance of %s for all", (allHoldProbability) => {
    expect(() => reliabilityForAll({ receiverCount: 3, allHoldProbability })).toThrow("allHoldProbability");
  });
  it("for a chance whose share rounds to 1", () => {
    expect(() => reliabilityForAll({ receiverCount: 1000, allHoldProbability: 1 - 1e-15 })).toThrow(
      "clearly below 1",
    );
  });
});
