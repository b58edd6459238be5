import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { longestRunProbability } from "../../src/quality/index.js";
import { longestRun } from "../helpers/lost-frames-simulation.js";
import { referenceCsv } from "../helpers/reference-csv.js";
import { relativeError } from "../numeric/relative-error.js";

const chance = (failureProbability: number, runLength: number, trials: number): number =>
  longestRunProbability({ trials, runLength, failureProbability });

describe("longestRunProbability against tables of 80-digit arithmetic (fixtures/reference/README.md)", () => {
  it.each([
    ["longest_run.csv", 30, 1e-13],
    ["longest_run_long.csv", 11, 2e-12],
  ])("every row of %s", (file, rowCount, tolerance) => {
    const rows = referenceCsv(file);
    expect(rows.length).toBe(rowCount);
    for (const row of rows) {
      const ours = chance(Number(row["p_fail"]), Number(row["k"]), Number(row["n"]));
      const words = JSON.stringify(row);
      expect(relativeError(ours, Number(row["prob_run_ge_k"])), words).toBeLessThan(tolerance);
      // Near 1 the complement counts: to the spacing of doubles there.
      expect(Math.abs(1 - ours - Number(row["prob_run_lt_k"])), words).toBeLessThan(1e-12);
    }
  });
});

describe("longestRunProbability, published values", () => {
  // M. F. Schilling, College Math. J. 21 (1990): of 256 sequences of 8 tosses 208 have no run of heads above 3.
  it("fair coin, 8 tosses, a run of 4 or more: 48 of 256", () => {
    expect(chance(0.5, 4, 8)).toBeCloseTo(48 / 256, 15);
  });
  // Counts of a worked example: 8 of 16 and 19 of 32 sequences hold two heads in a row.
  it("fair coin, a run of 2 in 4 and 5 tosses", () => {
    expect(chance(0.5, 2, 4)).toBeCloseTo(8 / 16, 15);
    expect(chance(0.5, 2, 5)).toBeCloseTo(19 / 32, 15);
  });
  // About 37.9 %, a figure often quoted for a million tosses.
  it("a run of 20 heads in a million tosses", () => {
    expect(chance(0.5, 20, 1e6)).toBeCloseTo(0.379, 3);
  });
});

describe("longestRunProbability by other routes", () => {
  it("every sequence of up to 16 trials, counted", () => {
    for (let trials = 1; trials <= 16; trials++) {
      // sequences by longest run and number of failures
      const counts = Array.from({ length: trials + 1 }, () => new Float64Array(trials + 1));
      for (let bits = 0; bits < 2 ** trials; bits++) {
        const flags = Array.from({ length: trials }, (_, i) => (bits >> i) & 1);
        counts[longestRun(flags)]![flags.filter((flag) => flag === 1).length]!++;
      }
      for (const p of [0.003, 0.2, 0.5, 0.9, 0.9999])
        for (let k = 1; k <= trials; k++) {
          let sum = 0;
          for (let longest = k; longest <= trials; longest++)
            counts[longest]!.forEach((count, failures) => {
              sum += count * p ** failures * (1 - p) ** (trials - failures);
            });
          expect(relativeError(chance(p, k, trials), sum), `${trials} ${p} ${k}`).toBeLessThan(1e-13);
        }
    }
  });
  it("a run of one is any failure at all: 1 − (1 − p)^n", () => {
    for (const p of [1e-15, 1e-6, 0.01, 0.5])
      for (const n of [3, 100, 237_600])
        expect(relativeError(chance(p, 1, n), -Math.expm1(n * Math.log1p(-p)))).toBeLessThan(1e-12);
  });
  // Feller I, XIII.7 (7.11): the dominant root of the generating function, exact but for terms that die with n.
  it("ten hours at 44 frames a second with k up to 10,000: Feller's root", () => {
    for (const [p, k] of [
      [0.9985, 10_000],
      [0.99, 1200],
      [0.9, 110],
      [0.5, 21],
    ] as const) {
      const n = 44 * 60 * 600;
      const c = (1 - p) * p ** k;
      let excess = c;
      for (let i = 0; i < 200; i++) excess = c * Math.exp((k + 1) * Math.log1p(excess));
      const none =
        ((1 - p * (1 + excess)) / ((1 - k * excess) * (1 - p))) * Math.exp(-(n + 1) * Math.log1p(excess));
      expect(Math.abs(1 - none - chance(p, k, n)), `${p} ${k}`).toBeLessThan(1e-10);
    }
  });
});

describe("longestRunProbability, invariants and mistakes", () => {
  it("rises with p and n, falls with k, and stays in 0..1", () => {
    const probability = fc.double({ min: 0, max: 1, noNaN: true });
    const count = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(probability, probability, count, count, (p, q, k, n) => {
        const here = chance(Math.min(p, q), k, n);
        const slack = 1 + 1e-12;
        expect(here).toBeGreaterThanOrEqual(0);
        expect(here).toBeLessThanOrEqual(1);
        expect(here).toBeLessThanOrEqual(chance(Math.max(p, q), k, n) * slack);
        expect(here).toBeLessThanOrEqual(chance(Math.min(p, q), k, n + 1) * slack);
        expect(chance(Math.min(p, q), k + 1, n)).toBeLessThanOrEqual(here * slack);
      }),
    );
  });
  it("the ends: no trials, more in a row than there are, never and always a failure", () => {
    expect(chance(0.5, 1, 0)).toBe(0);
    expect(chance(1, 11, 10)).toBe(0);
    expect(chance(0, 1, 1e6)).toBe(0);
    expect(chance(1, 7, 1e6)).toBe(1);
    expect(chance(0.1, 5000, 1e6)).toBe(0); // 1e-5000 is no double
  });
  it.each([
    ["trials", { trials: -1 }],
    ["trials", { trials: 1.5 }],
    ["trials", { trials: NaN }],
    ["trials", { trials: 2e8 }],
    ["runLength", { runLength: 0 }],
    ["runLength", { runLength: 2.5 }],
    ["runLength", { runLength: Infinity }],
    ["failureProbability", { failureProbability: -0.1 }],
    ["failureProbability", { failureProbability: 1.1 }],
    ["failureProbability", { failureProbability: NaN }],
  ])("throws for %s: %j", (argument, wrong) => {
    const call = (): number =>
      longestRunProbability({ trials: 10, runLength: 3, failureProbability: 0.1, ...wrong });
    expect(call).toThrow(ArgumentError);
    expect(call).toThrow(argument);
  });
});
