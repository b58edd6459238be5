/** The fade laws over a wide grid: published tables whole, another route for each law, monotone, inverse. */
import { describe, expect, test } from "vitest";
import { fadeAllowanceDb, fadeMarginDb, fadeOutageRatio } from "../../src/propagation/index.js";
import type { FadeLaw } from "../../src/propagation/index.js";
import { relativeError } from "../numeric/relative-error.js";

const K_DB = [-20, -10, -3, 0, 3, 6, 10, 13, 17, 20, 25, 30, 35, 40];
const SIGMA_DB = [0.1, 0.3, 1, 2, 4, 6, 8, 10, 14, 20, 30];
const grid: FadeLaw[] = [
  { law: "rayleigh" },
  ...K_DB.map((kDb) => ({ law: "rician", kDb }) as const),
  ...SIGMA_DB.map((sigmaDb) => ({ law: "lognormal", sigmaDb }) as const),
  ...SIGMA_DB.map((sigmaDb) => ({ law: "rayleigh-lognormal", sigmaDb }) as const),
];
const name = (law: FadeLaw): string => `${law.law} ${law.kDb ?? law.sigmaDb ?? ""}`;

describe("tables of the textbook forms, computed outside the project, to the printed digit", () => {
  test("Rayleigh: availability exp(−10^(−F/10)) at F = 3 … 30 dB", () => {
    const expected = { 3: 60.58, 5: 72.89, 8: 85.34, 10: 90.48, 15: 96.89, 20: 99.005, 30: 99.9 };
    for (const [marginDb, percent] of Object.entries(expected)) {
      const held = 100 * (1 - fadeOutageRatio({ law: "rayleigh", marginDb: Number(marginDb) }));
      expect(Math.abs(held - percent), marginDb).toBeLessThan(0.0051);
    }
  });
  test.each([
    [6, { 5: 10.08, 10: 1.646, 15: 0.364, 20: 0.0999 }],
    [10, { 5: 2.381, 10: 0.0739, 15: 0.00517, 20: 0.00078 }],
  ])("Rician K = %d dB: outage in percent at 5, 10, 15 and 20 dB, 1 − Q₁", (kDb, expected) => {
    for (const [marginDb, percent] of Object.entries(expected)) {
      const outage = 100 * fadeOutageRatio({ law: "rician", kDb, marginDb: Number(marginDb) });
      // Half a unit of the last digit printed.
      const places = String(percent).split(".")[1]!.length;
      expect(Math.abs(outage - percent), marginDb).toBeLessThan(0.51 * 10 ** -places);
    }
  });
  test("log-normal: one-sided factors of 90, 95, 99 and 99.9 %", () => {
    const factors = { 0.9: 1.2816, 0.95: 1.6449, 0.99: 2.3263, 0.999: 3.0902 };
    for (const [reliability, factor] of Object.entries(factors))
      for (const sigmaDb of SIGMA_DB) {
        const allowanceDb = fadeAllowanceDb({ law: "lognormal", sigmaDb, reliability: Number(reliability) });
        expect(Math.abs(allowanceDb / sigmaDb - factor)).toBeLessThan(0.000051);
      }
  });
});

describe("another route for each law, over the whole grid", () => {
  test("Rician: Marcum's Q by the finite integral over an angle", () => {
    // M. K. Simon and M.-S. Alouini, Digital Communication over Fading Channels, section 4.2 (from memory), for
    // a ≠ b, ζ the lesser over the greater. The rectangle rule converges faster than any power for a whole turn.
    let compared = 0;
    for (const kDb of K_DB)
      for (const marginDb of [-6, -2, 0, 1, 3, 6, 9, 12]) {
        const k = 10 ** (kDb / 10);
        const [a, b] = [Math.sqrt(2 * k), Math.sqrt(2 * (1 + k) * 10 ** (-marginDb / 10))];
        const zeta = Math.min(a, b) / Math.max(a, b);
        if (zeta > 0.99) continue; // nearly singular there
        const count = 8192;
        let sum = 0;
        for (let i = 0; i < count; i++) {
          const sine = zeta * Math.sin((2 * Math.PI * (i + 0.5)) / count);
          const square = 1 + 2 * sine + zeta * zeta;
          const weight = (b > a ? 1 + sine : -(zeta * zeta + sine)) / square;
          sum += (weight * Math.exp(-(Math.max(a, b) ** 2) * (square / 2))) / count;
        }
        const outage = b > a ? 1 - sum : sum;
        const ours = fadeOutageRatio({ law: "rician", kDb, marginDb });
        expect(Math.abs(ours - outage), `${kDb} ${marginDb}`).toBeLessThan(1e-12);
        compared++;
      }
    expect(compared).toBeGreaterThan(100);
  });
  test("log-normal: the density integrated by Simpson's rule over 12 standard deviations", () => {
    for (const sigmaDb of SIGMA_DB)
      for (const standard of [-3, -1, 0, 0.5, 1, 2, 3, 5]) {
        const outage = simpson(density, standard, standard + 12, 4000);
        const ours = fadeOutageRatio({ law: "lognormal", sigmaDb, marginDb: standard * sigmaDb });
        expect(relativeError(ours, outage), `${sigmaDb} ${standard}`).toBeLessThan(1e-9);
      }
  });
  test("Rayleigh × log-normal: integrated over the power of the scatter, not over the shadowing", () => {
    // P(X·S < m) = ∫ e^(−x) · P(S < m / x) dx with x = e^u: the other order of integration.
    for (const sigmaDb of SIGMA_DB)
      for (const marginDb of [-10, -3, 0, 5, 10, 20]) {
        const integrand = (u: number): number => {
          const x = Math.exp(u);
          const standard = (-marginDb - 10 * Math.log10(x)) / sigmaDb;
          return Math.exp(u - x) * below(standard);
        };
        const outage = simpson(integrand, -45, 5, 40_000);
        const ours = fadeOutageRatio({ law: "rayleigh-lognormal", sigmaDb, marginDb });
        expect(relativeError(ours, outage), `${sigmaDb} ${marginDb}`).toBeLessThan(1e-6);
      }
  });
});

describe("monotone, and the inverse comes back to 1e-9", () => {
  test.each(grid.map((law) => [name(law), law] as const))("%s", (_, law) => {
    let [before, roundTrips] = [1, 0];
    for (let marginDb = -40; marginDb <= 60; marginDb += 0.83) {
      const outageRatio = fadeOutageRatio({ ...law, marginDb });
      expect(outageRatio).toBeGreaterThanOrEqual(0);
      expect(outageRatio).toBeLessThanOrEqual(before + 5e-16); // the last digit of a number near 1
      before = outageRatio;
      // Close to 1 the outage itself has too few digits left to tell the margin; below 1e-300 it has none.
      if (outageRatio > 1 - 1e-3 || outageRatio < 1e-300) continue;
      expect(Math.abs(fadeMarginDb({ ...law, outageRatio }) - marginDb), String(marginDb)).toBeLessThan(1e-9);
      roundTrips++;
    }
    const steep = law.law === "lognormal" && law.sigmaDb! < 1;
    expect(roundTrips).toBeGreaterThan(steep || (law.kDb ?? 0) >= 25 ? 0 : 10);
  });
  test.each(grid.map((law) => [name(law), law] as const))("%s: shares back to shares", (_, law) => {
    for (const reliability of [0.001, 0.05, 0.3, 0.5, 0.8, 0.9, 0.95, 0.99, 0.999, 0.99999]) {
      const marginDb = fadeAllowanceDb({ ...law, reliability });
      expect(
        relativeError(fadeOutageRatio({ ...law, marginDb }), 1 - reliability),
        String(reliability),
      ).toBeLessThan(1e-9);
    }
  });
});

function density(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** P(Z < z), by the series of Marsaglia (J. Stat. Software 11(4), 2004), and 0 or 1 far out. */
function below(z: number): number {
  if (z < -8) return density(z) / Math.hypot(z, 2 / Math.PI);
  if (z > 8) return 1;
  let [term, sum] = [z, z];
  for (let n = 3; Math.abs(term) > 1e-18 * Math.abs(sum); n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return 0.5 + sum * density(z);
}

function simpson(f: (x: number) => number, low: number, high: number, count: number): number {
  const step = (high - low) / count;
  let sum = f(low) + f(high);
  for (let i = 1; i < count; i++) sum += (i % 2 === 1 ? 4 : 2) * f(low + i * step);
  return (sum * step) / 3;
}
