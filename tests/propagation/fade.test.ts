import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import { fadeAllowanceDb, fadeLawWords, fadeMarginDb, fadeOutageRatio } from "../../src/propagation/index.js";
import type { FadeLaw } from "../../src/propagation/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";
import { relativeError } from "../numeric/relative-error.js";

/** Outages computed with scipy and mpmath (fixtures/reference/README.md). */
const rows = referenceCsv("rayleigh_lognormal.csv").map((row) => {
  const parameter = Number(row["k_db_or_sigma_db"]);
  const law = row["law"]!.replace("_", "-") as FadeLaw["law"];
  const fade: FadeLaw = law === "rician" ? { law, kDb: parameter } : { law, sigmaDb: parameter };
  return { fade, marginDb: Number(row["margin_db"]), outageRatio: Number(row["outage"]) };
});
const laws: FadeLaw[] = [
  { law: "rayleigh" },
  { law: "rician", kDb: 0 },
  { law: "rician", kDb: 6 },
  { law: "rician", kDb: 15 },
  { law: "lognormal", sigmaDb: 4 },
  { law: "rayleigh-lognormal", sigmaDb: 6 },
];

describe("outage against the outside tables", () => {
  test("every row to 1e-12 relative, down to 1e-41", () => {
    expect(new Set(rows.map((row) => row.fade.law)).size).toBe(4);
    for (const { fade, marginDb, outageRatio } of rows)
      expect(
        relativeError(fadeOutageRatio({ ...fade, marginDb }), outageRatio),
        JSON.stringify({ fade, marginDb }),
      ).toBeLessThan(1e-12);
  });
  test("every row back to its margin within 1e-9 dB", () => {
    for (const { fade, marginDb, outageRatio } of rows)
      expect(Math.abs(fadeMarginDb({ ...fade, outageRatio }) - marginDb)).toBeLessThan(1e-9);
  });
  test("the allowance at reliability 1 − outage, where that subtraction keeps the digits", () => {
    const kept = rows.filter((row) => row.outageRatio > 1e-5);
    expect(kept.length).toBeGreaterThan(60);
    for (const { fade, marginDb, outageRatio } of kept)
      expect(Math.abs(fadeAllowanceDb({ ...fade, reliability: 1 - outageRatio }) - marginDb)).toBeLessThan(
        1e-9,
      );
  });
});

describe("published and hand-worked values", () => {
  test("Rayleigh allowances for 90 … 99.99 %: −10 log(−ln p), textbook", () => {
    const expected = { 0.9: 9.77, 0.95: 12.9, 0.99: 19.98, 0.999: 30.0, 0.9999: 40.0 };
    for (const [reliability, allowanceDb] of Object.entries(expected))
      expect(
        Math.abs(fadeAllowanceDb({ law: "rayleigh", reliability: Number(reliability) }) - allowanceDb),
      ).toBeLessThan(0.005);
    // −ln(1e-30) = 69.0776: a share of which 1 − it has lost every digit.
    expect(fadeAllowanceDb({ law: "rayleigh", reliability: 1e-30 })).toBeCloseTo(-18.3934, 4);
  });
  test("Rician K = 10 dB at 5, 10, 15 dB: 2.381, 0.0739, 0.00517 %, from Q₁", () => {
    const expected = { 5: 0.02381, 10: 0.000739, 15: 0.0000517 };
    for (const [marginDb, outage] of Object.entries(expected))
      expect(
        relativeError(fadeOutageRatio({ law: "rician", kDb: 10, marginDb: Number(marginDb) }), outage),
      ).toBeLessThan(1e-3);
  });
  test("log-normal: σ times the one-sided factor 2.3263 of 99 %", () => {
    expect(fadeAllowanceDb({ law: "lognormal", sigmaDb: 8, reliability: 0.99 })).toBeCloseTo(8 * 2.3263, 3);
  });
});

describe("by another route", () => {
  test("Rician: numeric integration of the Rice density over the angle of the scatter", () => {
    // P(|√(2K) + n| < b) with n complex normal: ∫∫ over the disc in polar form about the origin.
    const [k, marginDb] = [10 ** 0.6, 8];
    const [a, b] = [Math.sqrt(2 * k), Math.sqrt(2 * (1 + k) * 10 ** (-marginDb / 10))];
    let sum = 0;
    const [radii, angles] = [2000, 200];
    for (let i = 0; i < radii; i++) {
      const r = ((i + 0.5) * b) / radii;
      for (let j = 0; j < angles; j++) {
        const angle = (2 * Math.PI * (j + 0.5)) / angles;
        sum += r * Math.exp(-(r * r + a * a - 2 * a * r * Math.cos(angle)) / 2);
      }
    }
    const integral = (sum * (b / radii) * (2 * Math.PI)) / angles / (2 * Math.PI);
    expect(relativeError(fadeOutageRatio({ law: "rician", kDb: 6, marginDb }), integral)).toBeLessThan(1e-5);
  });
  test("Rayleigh × log-normal and Rician: seeded Monte Carlo of 400 000 positions within 4 standard errors", () => {
    const random = seededRandom(2437);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const count = 400_000;
    const [sigmaDb, kDb, marginDb] = [5, 6, 9];
    const direct = Math.sqrt(10 ** (kDb / 10));
    const meanTotal = direct ** 2 + 1;
    let [shadowed, inSight] = [0, 0];
    for (let i = 0; i < count; i++) {
      const powerDb = 10 * Math.log10(-Math.log(1 - random())) + sigmaDb * normal();
      if (powerDb < -marginDb) shadowed++;
      const power = (direct + normal() / Math.SQRT2) ** 2 + (normal() / Math.SQRT2) ** 2;
      if (10 * Math.log10(power / meanTotal) < -marginDb) inSight++;
    }
    for (const [hits, law] of [
      [shadowed, { law: "rayleigh-lognormal", sigmaDb }],
      [inSight, { law: "rician", kDb }],
    ] as const) {
      const exact = fadeOutageRatio({ ...law, marginDb });
      const standardError = Math.sqrt((exact * (1 - exact)) / count);
      expect(Math.abs(hits / count - exact)).toBeLessThan(4 * standardError);
    }
  });
});

describe("invariants", () => {
  test.each(laws)("outage falls with the margin and the inverse undoes it: %j", (law) => {
    let before = 1;
    for (let marginDb = -6; marginDb <= 30; marginDb += 1.5) {
      const outageRatio = fadeOutageRatio({ ...law, marginDb });
      expect(outageRatio).toBeLessThanOrEqual(before);
      before = outageRatio;
      if (outageRatio < 1e-300 || outageRatio > 0.999) continue;
      expect(Math.abs(fadeMarginDb({ ...law, outageRatio }) - marginDb)).toBeLessThan(1e-9);
    }
  });
  test("limits: weak K is Rayleigh, small σ adds nothing, K steadies", () => {
    const rayleigh = fadeOutageRatio({ law: "rayleigh", marginDb: 12 });
    expect(fadeOutageRatio({ law: "rician", kDb: -150, marginDb: 12 })).toBeCloseTo(rayleigh, 13);
    expect(fadeOutageRatio({ law: "rayleigh-lognormal", sigmaDb: 1e-6, marginDb: 12 })).toBeCloseTo(
      rayleigh,
      11,
    );
    const at = (kDb: number): number => fadeAllowanceDb({ law: "rician", kDb, reliability: 0.99 });
    expect(at(6)).toBeGreaterThan(at(10));
    expect(at(40)).toBeLessThan(0.2);
    expect(fadeOutageRatio({ law: "rician", kDb: 40, marginDb: -200 })).toBe(1);
  });
  test("deep Rayleigh × log-normal: 10^(−M/10)·e^(s²/2), the mean of a log-normal, s = σ·ln 10/10", () => {
    for (const sigmaDb of [3, 8, 20]) {
      const s = (sigmaDb * Math.LN10) / 10;
      const deep = 1e-30 * Math.exp((s * s) / 2);
      const ours = fadeOutageRatio({ law: "rayleigh-lognormal", sigmaDb, marginDb: 300 });
      expect(relativeError(ours, deep)).toBeLessThan(1e-12);
    }
  });
  test("words say the law and its parameter", () => {
    expect(fadeLawWords({ law: "rayleigh" })).toContain("out of sight");
    expect(fadeLawWords({ law: "rician", kDb: 6 })).toContain("K = 6 dB");
    expect(fadeLawWords({ law: "lognormal", sigmaDb: 8 })).toContain("sigma = 8 dB (shadowing only)");
    expect(fadeLawWords({ law: "rayleigh-lognormal", sigmaDb: 7 })).toContain("sigma = 7 dB");
  });
});

test("throws", () => {
  for (const bad of [0, 1, -1, NaN]) {
    expect(() => fadeAllowanceDb({ law: "rayleigh", reliability: bad })).toThrow(ArgumentError);
    expect(() => fadeMarginDb({ law: "rayleigh", outageRatio: bad })).toThrow(ArgumentError);
  }
  for (const bad of [undefined, NaN, 41, Infinity])
    expect(() => fadeOutageRatio({ law: "rician", kDb: bad, marginDb: 10 })).toThrow("kDb");
  for (const bad of [undefined, NaN, 0, -3, Infinity]) {
    expect(() => fadeOutageRatio({ law: "lognormal", sigmaDb: bad, marginDb: 10 })).toThrow("sigmaDb");
    expect(() => fadeMarginDb({ law: "rayleigh-lognormal", sigmaDb: bad, outageRatio: 0.1 })).toThrow(
      "sigmaDb",
    );
  }
  expect(() => fadeOutageRatio({ law: "rayleigh", marginDb: NaN })).toThrow(ArgumentError);
  expect(() => fadeOutageRatio({ law: "weibull" as never, marginDb: 3 })).toThrow("rayleigh, rician");
  expect(() => fadeAllowanceDb({ law: "weibull" as never, reliability: 0.9 })).toThrow("rayleigh, rician");
});
