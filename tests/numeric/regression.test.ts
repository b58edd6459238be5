import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import {
  censoredRegression,
  dot,
  huberRegression,
  invertPositive,
  leastSquares,
  normalHazard,
  seededRandom,
  studentTTail,
  studentTTailQuantile,
} from "../../src/numeric/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";
import { relativeError } from "./relative-error.js";

describe("leastSquares", () => {
  test("NIST StRD Norris: certified parameters, their standard deviations and the residual one", () => {
    const rows = referenceCsv("norris.csv");
    expect(rows.length).toBe(36);
    const fit = leastSquares(
      rows.map(({ x }) => [1, Number(x)]),
      rows.map(({ y }) => Number(y)),
    )!;
    const deviation = Math.sqrt(dot(fit.residuals, fit.residuals) / 34);
    expect(relativeError(fit.coefficients[0]!, -0.262323073774029)).toBeLessThan(1e-12);
    expect(relativeError(fit.coefficients[1]!, 1.00211681802045)).toBeLessThan(1e-13);
    expect(relativeError(deviation, 0.884796396144373)).toBeLessThan(1e-12);
    const errors = [0, 1].map((index) => deviation * Math.sqrt(fit.unscaledCovariance[index]![index]!));
    expect(relativeError(errors[0]!, 0.232818234301152)).toBeLessThan(1e-12);
    expect(relativeError(errors[1]!, 0.429796848199937e-3)).toBeLessThan(1e-12);
  });
  test("Rappaport, Wireless Communications, example 4.9 (from memory): exponent 4.4 through a fixed reference", () => {
    // Received at 100, 200, 1000 and 3000 m: 0, −20, −35 and −70 dBm; published: n = 4.4, σ² = 152.36 / 4, logarithms rounded.
    const fit = leastSquares(
      [100, 200, 1000, 3000].map((m) => [10 * Math.log10(m / 100)]),
      [0, 20, 35, 70],
    )!;
    expect(Math.abs(fit.coefficients[0]! - 4.4)).toBeLessThan(0.05);
    expect(Math.abs(dot(fit.residuals, fit.residuals) - 152.36)).toBeLessThan(1);
  });
  test("finds columns that depend on each other, or more of them than rows", () => {
    expect(
      leastSquares(
        [
          [1, 2, 3],
          [1, 4, 5],
          [1, 6, 7],
          [1, 0, 1],
        ],
        [1, 2, 3, 4],
      ),
    ).toBeNull();
    expect(leastSquares([[1, 2]], [1])).toBeNull();
    expect(leastSquares([[0], [0]], [1, 2])).toBeNull();
  });
  test("refuses what is no table", () => {
    expect(() => leastSquares([[1], [1]], [1])).toThrow(ArgumentError);
    expect(() => leastSquares([[1], [1, 2]], [1, 2])).toThrow(ArgumentError);
    expect(() => leastSquares([[1], [NaN]], [1, 2])).toThrow(ArgumentError);
    expect(() => leastSquares([[1], [1]], [1, Infinity])).toThrow(ArgumentError);
  });
});

describe("invertPositive", () => {
  test("the inverse of Hilbert's matrix of order 4: whole numbers, exactly known", () => {
    const hilbert = [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => 1 / (i + j + 1)));
    const inverse = invertPositive(hilbert)!;
    // (−1)^(i+j)·(i+j−1)·C(n+i−1, n−j)·C(n+j−1, n−i)·C(i+j−2, i−1)²
    const expected = [
      [16, -120, 240, -140],
      [-120, 1200, -2700, 1680],
      [240, -2700, 6480, -4200],
      [-140, 1680, -4200, 2800],
    ];
    inverse.forEach((row, i) =>
      row.forEach((each, j) => expect(relativeError(each, expected[i]![j]!)).toBeLessThan(1e-10)),
    );
  });
  test("null where it is not positive definite", () => {
    expect(
      invertPositive([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
    expect(invertPositive([[NaN]])).toBeNull();
  });
});

describe("Student's t", () => {
  test("quantiles by mpmath at 40 digits", () => {
    const rows = referenceCsv("student_t.csv");
    expect(rows.length).toBe(60);
    for (const { freedom, tail, quantile } of rows) {
      const ours = studentTTailQuantile(Number(tail), Number(freedom));
      // The sums are good to 1e-13 of 1, so a rare tail has fewer digits.
      expect(relativeError(ours, Number(quantile)), `${freedom} ${tail}`).toBeLessThan(1e-13 / Number(tail));
      expect(Math.abs(studentTTail(Number(quantile), Number(freedom)) - Number(tail))).toBeLessThan(1e-13);
    }
  });
  test("two degrees in closed form: Q(x) = ½ − x / (2·√(2 + x²))", () => {
    for (const x of [-30, -1, 0, 0.3, 2, 50])
      expect(Math.abs(studentTTail(x, 2) - (0.5 - x / (2 * Math.sqrt(2 + x * x))))).toBeLessThan(1e-14);
    expect([studentTTail(Infinity, 3), studentTTailQuantile(0.9, 7)]).toEqual([
      0,
      expect.closeTo(-studentTTailQuantile(0.1, 7), 12),
    ]);
  });
  test("refuses what is out of range", () => {
    expect(() => studentTTail(NaN, 3)).toThrow(ArgumentError);
    expect(() => studentTTail(1, 0)).toThrow(ArgumentError);
    expect(() => studentTTail(1, 2.5)).toThrow(ArgumentError);
    expect(() => studentTTailQuantile(0, 3)).toThrow(ArgumentError);
    expect(() => studentTTailQuantile(0.1, 1e7)).toThrow(ArgumentError);
  });
});

test("normalHazard joins its two forms and lies between x and x + 1/x far out", () => {
  expect(relativeError(normalHazard(35), normalHazard(35.0000001))).toBeLessThan(1e-8);
  for (const x of [1, 5, 20, 34, 36, 100, 1e6]) {
    expect(normalHazard(x)).toBeGreaterThanOrEqual(x);
    expect(normalHazard(x)).toBeLessThanOrEqual(x + 1 / x);
  }
});

describe("censoredRegression", () => {
  test("the greatest likelihood that a general optimiser finds, with its information by 40-digit differences", () => {
    const readings = referenceCsv("censored_walks.csv");
    const fits = referenceCsv("censored_fits.csv");
    expect(fits.length).toBe(4);
    for (const reference of fits) {
      const own = readings.filter((row) => row["case"] === reference["case"]);
      const withWalls = reference["wall_loss_db"] !== "";
      const fit = censoredRegression(
        own.map((row) => [
          1,
          10 * Math.log10(Number(row["distance_m"])),
          ...(withWalls ? [Number(row["walls"])] : []),
        ]),
        own.map((row) => Number(row["loss_db"])),
        own.map((row) => row["censored"] === "1"),
      )!;
      const expected = ["reference_loss_db", "exponent", "wall_loss_db"].slice(0, withWalls ? 3 : 2);
      expected.forEach((key, i) =>
        expect(relativeError(fit.coefficients[i]!, Number(reference[key])), key).toBeLessThan(1e-9),
      );
      expect(relativeError(fit.sigma, Number(reference["sigma_db"]))).toBeLessThan(1e-9);
      ["var_reference", "var_exponent", "var_wall"]
        .slice(0, expected.length)
        .forEach((key, i) =>
          expect(relativeError(fit.covariance[i]![i]!, Number(reference[key])), key).toBeLessThan(1e-7),
        );
    }
  });
  test("without censoring it is least squares, σ² the mean square", () => {
    const random = seededRandom(3);
    const design = Array.from({ length: 20 }, () => [1, 10 * random()]);
    const observed = design.map(([, x]) => 4 - 2 * x! + random());
    const ml = censoredRegression(
      design,
      observed,
      design.map(() => false),
    )!;
    const ls = leastSquares(design, observed)!;
    ls.coefficients.forEach((each, index) => expect(ml.coefficients[index]!).toBeCloseTo(each, 9));
    expect(ml.sigma).toBeCloseTo(Math.sqrt(dot(ls.residuals, ls.residuals) / 20), 9);
  });
  test("null where there is no maximum: all censored, or all on a line", () => {
    const design = [1, 2, 3, 4].map((x) => [1, x]);
    expect(censoredRegression(design, [1, 2, 3, 5], [true, true, true, true])).toBeNull();
    expect(censoredRegression(design, [1, 2, 3, 4], [false, false, false, false])).toBeNull();
    expect(
      censoredRegression(
        [
          [1, 1],
          [1, 1],
        ],
        [1, 2],
        [false, false],
      ),
    ).toBeNull();
  });
});

describe("huberRegression", () => {
  test("solves Huber's two equations, put down here in their own form", () => {
    const random = seededRandom(11);
    const design = Array.from({ length: 30 }, () => [1, 10 * random()]);
    const observed = design.map(
      ([, x], index) => 3 + 2 * x! + random() + random() + (index % 10 === 0 ? 30 : 0),
    );
    const fit = huberRegression(design, observed)!;
    const psi = design.map((row, i) =>
      Math.max(-1.345, Math.min(1.345, (observed[i]! - dot(row, fit.coefficients)) / fit.sigma)),
    );
    for (const column of [0, 1])
      expect(Math.abs(psi.reduce((sum, each, i) => sum + each * design[i]![column]!, 0))).toBeLessThan(1e-7);
    // E ψ² in a normal scatter, by quadrature: an independent route to the constant.
    let mean = 0;
    for (let z = -8; z < 8; z += 1e-4)
      mean += Math.min(1.345, Math.abs(z + 5e-5)) ** 2 * Math.exp(-0.5 * (z + 5e-5) ** 2) * 1e-4;
    mean /= Math.sqrt(2 * Math.PI);
    expect(dot(psi, psi) / 28 / mean).toBeCloseTo(1, 7);
    expect(Math.abs(fit.coefficients[1]! - 2)).toBeLessThan(0.1);
  });
  test("the mean score of a censored observation is that of a sum over what lies above", () => {
    // One censored observation among many: the equation holds with the average of ψ over z above the limit.
    const random = seededRandom(5);
    const design = Array.from({ length: 25 }, () => [1]);
    const observed = design.map((_, i) => (i < 5 ? 0.8 : random() * 3));
    const censored = design.map((_, i) => i < 5);
    const fit = huberRegression(design, observed, censored)!;
    const limit = (0.8 - fit.coefficients[0]!) / fit.sigma;
    let [above, sum] = [0, 0];
    for (let z = limit + 5e-5; z < 12; z += 1e-4) {
      above += Math.exp(-0.5 * z * z);
      sum += Math.max(-1.345, Math.min(1.345, z)) * Math.exp(-0.5 * z * z);
    }
    const heard = observed
      .slice(5)
      .reduce(
        (total, y) => total + Math.max(-1.345, Math.min(1.345, (y - fit.coefficients[0]!) / fit.sigma)),
        0,
      );
    expect(Math.abs(heard + (5 * sum) / above)).toBeLessThan(1e-5);
  });
  test("null where there is nothing to scale by, or columns depend on each other", () => {
    expect(huberRegression([[1], [1], [1]], [2, 2, 2])).toBeNull();
    expect(
      huberRegression(
        [
          [1, 1],
          [1, 1],
          [1, 1],
        ],
        [1, 2, 3],
      ),
    ).toBeNull();
  });
});
