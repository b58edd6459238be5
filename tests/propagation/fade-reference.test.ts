import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/numeric/index.js";
import {
  fadeAllowanceDb,
  fadeReference,
  meanOverMedianDb,
  referenceOverMedianDb,
} from "../../src/propagation/index.js";
import type { FadeLaw } from "../../src/propagation/index.js";

const dB = (ratio: number): number => 10 * Math.log10(ratio);

/** Two independent standard normals (G. E. P. Box, M. E. Muller). */
function normals(random: () => number): readonly [number, number] {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  const angle = 2 * Math.PI * random();
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** Powers drawn from a law, the reference of each being 1: mean over median by counting. */
function drawnMeanOverMedianDb(draw: (random: () => number) => number): number {
  const random = seededRandom(20240611);
  const powers = Float64Array.from({ length: 200_000 }, () => draw(random)).sort();
  const mean = powers.reduce((sum, power) => sum + power, 0) / powers.length;
  return dB(mean / powers[powers.length / 2]!);
}

const rayleigh = (random: () => number): number => {
  const [a, b] = normals(random);
  return (a * a + b * b) / 2;
};

describe("mean over median", () => {
  // Median of an exponential power of mean 1: ln 2.
  test("Rayleigh: -10·log10(ln 2) = 1.59 dB", () => {
    expect(meanOverMedianDb({ law: "rayleigh" })).toBeCloseTo(1.5917, 4);
  });
  // Mean of 10^(σz/10): exp((σ·ln10/10)²/2), in dB σ²·ln10/20 (log-normal distribution, textbook).
  test.each([1, 4, 8, 12])("log-normal, sigma %d dB: by the moments of a log-normal", (sigmaDb) => {
    const s = (sigmaDb * Math.LN10) / 10;
    expect(meanOverMedianDb({ law: "lognormal", sigmaDb })).toBeCloseTo(dB(Math.exp((s * s) / 2)), 9);
  });
  test("Rician, by 200 000 seeded draws of a direct ray and its scatter", () => {
    for (const kDb of [-6, 0, 6, 12]) {
      const k = 10 ** (kDb / 10);
      const drawn = drawnMeanOverMedianDb((random) => {
        const [a, b] = normals(random);
        const [i, q] = [Math.sqrt(k / (k + 1)) + a / Math.sqrt(2 * (k + 1)), b / Math.sqrt(2 * (k + 1))];
        return i * i + q * q;
      });
      expect(Math.abs(meanOverMedianDb({ law: "rician", kDb }) - drawn), `K ${kDb}`).toBeLessThan(0.04);
    }
  });
  test("Rayleigh and log-normal, by seeded draws", () => {
    for (const sigmaDb of [3, 6]) {
      const drawn = drawnMeanOverMedianDb(
        (random) => rayleigh(random) * 10 ** ((sigmaDb * normals(random)[0]) / 10),
      );
      const stated = meanOverMedianDb({ law: "rayleigh-lognormal", sigmaDb });
      expect(Math.abs(stated - drawn), `sigma ${sigmaDb}`).toBeLessThan(0.08);
    }
  });
  test("Rician goes from Rayleigh to no fading at all as K grows", () => {
    expect(meanOverMedianDb({ law: "rician", kDb: -60 })).toBeCloseTo(1.5917, 3);
    expect(meanOverMedianDb({ law: "rician", kDb: 40 })).toBeLessThan(0.001);
  });
});

describe("what a law counts from", () => {
  test.each<readonly [FadeLaw, "mean" | "median"]>([
    [{ law: "rayleigh" }, "mean"],
    [{ law: "rician", kDb: 6 }, "mean"],
    [{ law: "lognormal", sigmaDb: 6 }, "median"],
    [{ law: "rayleigh-lognormal", sigmaDb: 6 }, "median"],
  ])("%o: the %s", (law, reference) => {
    expect(fadeReference(law)).toBe(reference);
    // By definition: half of all positions lie above the median.
    expect(referenceOverMedianDb(law)).toBeCloseTo(fadeAllowanceDb({ ...law, reliability: 0.5 }), 9);
  });
  test("log-normal shadowing alone has its reference at the median", () => {
    expect(referenceOverMedianDb({ law: "lognormal", sigmaDb: 9 })).toBe(0);
  });
});
