import { describe, expect, test } from "vitest";
import { fitPathLoss } from "../../src/commissioning/index.js";
import type { FittedPathLoss, PathLossFit, PathLossReadings } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { leastSquares, studentTTailQuantile } from "../../src/numeric/index.js";
import { exactLineFit } from "../helpers/exact-line-fit.js";
import { referenceCsv } from "../helpers/reference-csv.js";
import { syntheticWalk } from "../helpers/synthetic-walk.js";
import { relativeError } from "../numeric/relative-error.js";

const plain = { readingCount: 40, exponent: 2.8, referenceLossDb: 40, sigmaDb: 4 };

function fitted(fit: PathLossFit): FittedPathLoss {
  if (fit.refusal !== null) throw new Error(fit.refusal.reason);
  return fit;
}

describe("least squares", () => {
  test.each([1, 2, 3])("agrees with the normal equations in exact rationals, seed %i", (seed) => {
    const walk = syntheticWalk({ ...plain, seed, readingCount: 25 });
    const fit = fitted(fitPathLoss(walk));
    const exact = exactLineFit(
      walk.distanceM.map((each) => 10 * Math.log10(each)),
      walk.lossDb,
    );
    expect(fit.method).toBe("least-squares");
    expect(relativeError(fit.exponent, exact.slope)).toBeLessThan(1e-12);
    expect(relativeError(fit.referenceLossDb, exact.intercept)).toBeLessThan(1e-12);
    expect(relativeError(fit.sigmaDb, Math.sqrt(exact.variance))).toBeLessThan(1e-12);
    expect(relativeError(fit.covariance[0]![0]!, exact.interceptVariance)).toBeLessThan(1e-11);
    expect(relativeError(fit.covariance[1]![1]!, exact.slopeVariance)).toBeLessThan(1e-11);
    // 2.0687: Student's t, 23 degrees of freedom, 0.025 above (printed tables).
    const half = 2.0687 * Math.sqrt(exact.slopeVariance);
    expect(fit.exponentInterval[0]).toBeCloseTo(exact.slope - half, 4);
    expect(fit.exponentInterval[1]).toBeCloseTo(exact.slope + half, 4);
  });
  test("gives back an exact model, with no scatter and nothing named", () => {
    const distanceM = [1, 2, 4, 8, 16, 32];
    const fit = fitted(
      fitPathLoss({ distanceM, lossDb: distanceM.map((each) => 41.5 + 31 * Math.log10(each)) }),
    );
    expect(fit.exponent).toBeCloseTo(3.1, 12);
    expect(fit.referenceLossDb).toBeCloseTo(41.5, 12);
    expect(fit.sigmaDb).toBeLessThan(1e-12);
    expect([fit.robust, fit.outliers, fit.notes]).toEqual([null, [], []]);
  });
  test("does not depend on the order of readings, nor the exponent on the reference distance", () => {
    const walk = syntheticWalk({ ...plain, seed: 9 });
    const fit = fitted(fitPathLoss(walk));
    const turned = fitted(
      fitPathLoss({ distanceM: [...walk.distanceM].reverse(), lossDb: [...walk.lossDb].reverse() }),
    );
    expect(turned.exponent).toBeCloseTo(fit.exponent, 12);
    const far = fitted(fitPathLoss({ ...walk, referenceDistanceM: 10 }));
    expect(far.exponent).toBeCloseTo(fit.exponent, 11);
    expect(far.referenceLossDb).toBeCloseTo(fit.referenceLossDb + 10 * fit.exponent, 10);
    expect(far.sigmaDb).toBeCloseTo(fit.sigmaDb, 11);
  });
});

describe("walls", () => {
  const distanceM = [2, 3, 5, 8, 12, 20, 4, 10, 25, 6];
  const wallCount = [0, 0, 0, 1, 1, 2, 1, 0, 2, 0];

  test("are a further regressor: an exact one is given back", () => {
    const lossDb = distanceM.map((each, index) => 40 + 22 * Math.log10(each) + 6.5 * wallCount[index]!);
    const fit = fitted(fitPathLoss({ distanceM, lossDb, wallCount }));
    expect([fit.exponent, fit.referenceLossDb, fit.wallLossDb]).toEqual([
      expect.closeTo(2.2, 11),
      expect.closeTo(40, 10),
      expect.closeTo(6.5, 10),
    ]);
    expect(fit.freedomCount).toBe(7);
  });
  test("all the same say that their loss is in the reference loss", () => {
    const lossDb = distanceM.map((each) => 46.5 + 22 * Math.log10(each) + (each % 3));
    const fit = fitted(fitPathLoss({ distanceM, lossDb, wallCount: distanceM.map(() => 1) }));
    expect([fit.wallLossDb, fit.wallLossIntervalDb, fit.notes]).toEqual([null, null, ["walls-not-fitted"]]);
  });
  test("before a single reading leave figures finite: that reading alone decides them", () => {
    const lossDb = distanceM.map((each, index) => 40 + 22 * Math.log10(each) + (index % 3));
    const fit = fitted(
      fitPathLoss({ distanceM, lossDb, wallCount: distanceM.map((_, index) => +(index === 4)) }),
    );
    for (const each of [fit.wallLossDb!, ...fit.wallLossIntervalDb!, ...fit.robust!.wallLossIntervalDb!])
      expect(Number.isFinite(each)).toBe(true);
    expect(fit.residualDb[4]).toBeCloseTo(0, 9);
  });
  test("that seem to help are noted", () => {
    const lossDb = distanceM.map(
      (each, index) => 40 + 22 * Math.log10(each) - 3 * wallCount[index]! + (each % 2),
    );
    expect(fitted(fitPathLoss({ distanceM, lossDb, wallCount })).notes).toContain("negative-wall-loss");
  });
});

describe("readings not heard", () => {
  test("enter by their likelihood: as a general optimiser finds it (fixtures/reference/README.md)", () => {
    const rows = referenceCsv("censored_walks.csv");
    for (const reference of referenceCsv("censored_fits.csv")) {
      const own = rows.filter((row) => row["case"] === reference["case"]);
      const withWalls = reference["wall_loss_db"] !== "";
      const fit = fitted(
        fitPathLoss({
          distanceM: own.map((row) => Number(row["distance_m"])),
          lossDb: own.map((row) => Number(row["loss_db"])),
          censored: own.map((row) => row["censored"] === "1"),
          ...(withWalls && { wallCount: own.map((row) => Number(row["walls"])) }),
        }),
      );
      const [count, parameterCount] = [own.length, withWalls ? 3 : 2];
      expect(fit.method).toBe("censored-likelihood");
      expect(relativeError(fit.exponent, Number(reference["exponent"]))).toBeLessThan(1e-9);
      expect(relativeError(fit.referenceLossDb, Number(reference["reference_loss_db"]))).toBeLessThan(1e-9);
      const sigmaDb = Number(reference["sigma_db"]) * Math.sqrt(count / (count - parameterCount));
      expect(relativeError(fit.sigmaDb, sigmaDb)).toBeLessThan(1e-9);
      expect(fit.notHeardCount).toBe(Number(reference["censored_count"]));
      expect(fit.freedomCount).toBe(count - fit.notHeardCount - parameterCount);
    }
  });
  test("are never a level: dropping them, or taking their limit as one, flattens the model", () => {
    const biases = { kept: 0, dropped: 0, asLevel: 0 };
    for (let seed = 1; seed <= 60; seed++) {
      const walk = syntheticWalk({ ...plain, seed, sigmaDb: 6, limitDb: 80 });
      const isHeard = (_: unknown, index: number): boolean => !walk.censored[index]!;
      const heard = { distanceM: walk.distanceM.filter(isHeard), lossDb: walk.lossDb.filter(isHeard) };
      biases.kept += (fitted(fitPathLoss(walk)).exponent - 2.8) / 60;
      biases.dropped += (fitted(fitPathLoss(heard)).exponent - 2.8) / 60;
      biases.asLevel +=
        (fitted(fitPathLoss({ ...walk, censored: walk.censored.map(() => false) })).exponent - 2.8) / 60;
    }
    expect(Math.abs(biases.kept)).toBeLessThan(0.12);
    expect(biases.dropped).toBeLessThan(-0.25);
    expect(biases.asLevel).toBeLessThan(-0.25);
  });
  test("that agree with an exact model leave it as it is; that contradict it are refused", () => {
    const distanceM = [1, 2, 4, 8, 16, 32, 64];
    const lossDb = distanceM.map((each) => 40 + 30 * Math.log10(each));
    const censored = distanceM.map((each) => each === 64);
    const agreeing = fitPathLoss({ distanceM, lossDb: [...lossDb.slice(0, 6), 90], censored });
    expect(fitted(agreeing).exponent).toBeCloseTo(3, 10);
    const contrary = fitPathLoss({ distanceM, lossDb: [...lossDb.slice(0, 6), 140], censored });
    expect(contrary.refusal === null ? fitted(contrary).sigmaDb : contrary.refusal.code).not.toBe(0);
    expect(contrary.refusal === null && contrary.sigmaDb < 1).toBe(false);
  });
});

describe("500 seeded walks", () => {
  const settings = [
    ["clean", {}, 0.02],
    ["some not heard", { limitDb: 82 }, 0.03],
    ["one in ten 15 dB off", { outlierRatio: 0.1 }, 0.04],
    ["both", { limitDb: 82, outlierRatio: 0.1 }, 0.05],
  ] as const;

  test.each(settings)(
    "%s: 95 of 100 intervals hold the truth (92 to 98), without bias",
    (...[, more, mostBias]) => {
      const held = { exponent: 0, robust: 0, reference: 0 };
      const off = { exponent: 0, robust: 0 };
      for (let seed = 1; seed <= 500; seed++) {
        const fit = fitted(fitPathLoss(syntheticWalk({ ...plain, ...more, seed })));
        held.exponent += holds(fit.exponentInterval, 2.8);
        held.reference += holds(fit.referenceLossIntervalDb, 40);
        held.robust += holds(fit.robust!.exponentInterval, 2.8);
        off.exponent += (fit.exponent - 2.8) / 500;
        off.robust += (fit.robust!.exponent - 2.8) / 500;
      }
      for (const count of Object.values(held)) {
        expect(count / 500).toBeGreaterThanOrEqual(0.92);
        expect(count / 500).toBeLessThanOrEqual(0.98);
      }
      expect(Math.abs(off.exponent)).toBeLessThan(mostBias);
      expect(Math.abs(off.robust)).toBeLessThan(mostBias);
    },
  );
  test("outliers: the robust exponent strays less, and a strayed reading is named", () => {
    const squares = { plain: 0, robust: 0 };
    for (let seed = 1; seed <= 200; seed++) {
      const fit = fitted(fitPathLoss(syntheticWalk({ ...plain, sigmaDb: 3, outlierRatio: 0.1, seed })));
      squares.plain += (fit.exponent - 2.8) ** 2;
      squares.robust += (fit.robust!.exponent - 2.8) ** 2;
    }
    expect(squares.robust).toBeLessThan(0.75 * squares.plain);
  });
  test("a dozen readings: the robust interval is wide enough too", () => {
    let held = 0;
    for (let seed = 1; seed <= 500; seed++) {
      const fit = fitted(fitPathLoss(syntheticWalk({ ...plain, readingCount: 12, seed })));
      held += holds(fit.robust!.exponentInterval, 2.8);
    }
    expect(held / 500).toBeGreaterThanOrEqual(0.92);
    expect(held / 500).toBeLessThanOrEqual(0.98);
  });
  test("a clean walk names an outlier in about one of twenty", () => {
    let named = 0;
    for (let seed = 1; seed <= 300; seed++)
      named += +(fitted(fitPathLoss(syntheticWalk({ ...plain, seed }))).outliers.length > 0);
    expect(named / 300).toBeLessThan(0.08);
  });
});

function holds([low, high]: readonly [number, number], truth: number): number {
  return +(low <= truth && truth <= high);
}

describe("outliers", () => {
  test("are named by index and side, those not heard where they should have been, furthest first", () => {
    const walk = syntheticWalk({ ...plain, seed: 4, sigmaDb: 2 });
    const nearest = walk.distanceM.indexOf(Math.min(...walk.distanceM));
    walk.lossDb[8]! += 14;
    walk.lossDb[20]! -= 11;
    walk.lossDb[nearest] = 75; // the receiver's floor, where some 48 dB are expected
    walk.censored[nearest] = true;
    const { outliers } = fitted(fitPathLoss(walk));
    expect(outliers.map(({ readingIndex, kind }) => [readingIndex, kind])).toEqual([
      [nearest, "not-heard"],
      [8, "more-loss"],
      [20, "less-loss"],
    ]);
    for (const { residualDb, limitDb } of outliers) expect(Math.abs(residualDb)).toBeGreaterThan(limitDb);
  });
  test("one not heard where nothing was to be expected is none", () => {
    const walk = syntheticWalk({ ...plain, seed: 4, sigmaDb: 2 });
    const far = { distanceM: [...walk.distanceM, 400], lossDb: [...walk.lossDb, 85] };
    expect(fitted(fitPathLoss({ ...far, censored: [...walk.censored, true] })).outliers).toEqual([]);
    // The same reading as a level is 28 dB off.
    expect(fitted(fitPathLoss(far)).outliers.map(({ readingIndex }) => readingIndex)).toEqual([40]);
  });
  test("that pull the model by 3 dB at one end are said; none are, where both fits agree", () => {
    const distanceM = [2, 3, 4, 6, 8, 12, 16, 20, 24, 30, 36, 42, 5, 10, 14, 28];
    const lossDb = distanceM.map((each, index) => 40 + 30 * Math.log10(each) + (index % 3) - 1);
    expect(fitted(fitPathLoss({ distanceM, lossDb })).notes).toEqual([]);
    lossDb[0]! += 30;
    const fit = fitted(fitPathLoss({ distanceM, lossDb }));
    expect(fit.outliers.map(({ readingIndex }) => readingIndex)).toEqual([0]);
    expect(fit.notes).toContain("robust-differs");
    expect(Math.abs(fit.robust!.exponent - 3)).toBeLessThan(Math.abs(fit.exponent - 3) / 2);
  });
  test("scatter above 10 dB and an exponent wide open are noted", () => {
    const lossDb = [40, 75, 50, 88, 60, 95, 70];
    const fit = fitted(fitPathLoss({ distanceM: [2, 3, 4, 5, 6, 8, 9], lossDb }));
    expect(fit.notes).toEqual(expect.arrayContaining(["large-scatter", "exponent-uncertain"]));
  });
});

describe("refusals, each with what to measure next", () => {
  const distances = [2, 3, 5, 8, 12, 20, 30, 40];
  const line = (exponent: number, distanceM = distances): PathLossReadings => ({
    distanceM,
    lossDb: distanceM.map((each) => 40 + 10 * exponent * Math.log10(each)),
  });
  const cases: [string, PathLossReadings, string][] = [
    ["too few", line(3, [2, 4, 8, 16, 32]), "too-few-readings"],
    ["none at all", { distanceM: [], lossDb: [] }, "too-few-readings"],
    ["too few heard", { ...line(3), censored: distances.map((_, index) => index > 4) }, "too-few-readings"],
    [
      "too few for walls",
      { ...line(3, [2, 4, 6, 9, 16, 32]), wallCount: [0, 1, 0, 1, 0, 1] },
      "too-few-readings",
    ],
    ["one distance", line(3, [5, 5, 5, 5, 5, 5, 5]), "one-distance"],
    ["a short span", line(3, [5, 6, 7, 8, 9, 14.9]), "short-span"],
    [
      "mostly not heard",
      {
        distanceM: [...distances, ...distances],
        lossDb: [...line(3).lossDb, ...line(3).lossDb],
        censored: [...distances, ...distances].map((_, index) => index > 6),
      },
      "mostly-not-heard",
    ],
    ["an exponent below 1", line(0.9), "nonsense-exponent"],
    ["an exponent above 6", line(6.1), "nonsense-exponent"],
    ["a falling loss", line(-2), "nonsense-exponent"],
    [
      "walls in step with the distance",
      { ...line(3, [1, 10, 100, 1, 10, 100, 1]), wallCount: [0, 1, 2, 0, 1, 2, 0] },
      "walls-not-separable",
    ],
  ];
  test.each(cases)("%s", (_name, readings, code) => {
    const fit = fitPathLoss(readings);
    expect(fit.refusal?.code).toBe(code);
    expect([fit.exponent, fit.referenceLossDb, fit.sigmaDb]).toEqual([null, null, null]);
    expect(fit.refusal!.reason.length).toBeGreaterThan(10);
    expect(fit.refusal!.next.length).toBeGreaterThan(10);
  });
  test("but not on their limits: six readings, 3 : 1, exponents 1 and 6", () => {
    for (const exponent of [1, 6]) expect(fitPathLoss(line(exponent)).refusal).toBeNull();
    expect(fitPathLoss(line(3, [5, 6, 7, 8, 9, 15])).refusal).toBeNull();
  });
  test("readings that leave no maximum are refused, not looped on", () => {
    const distanceM = [2, 4, 8, 16, 32, 3, 6];
    const lossDb = distanceM.map((each) => 40 + 30 * Math.log10(each));
    const fit = fitPathLoss({
      distanceM,
      lossDb,
      censored: [false, false, false, false, false, false, true],
    });
    expect(fitted(fit).exponent).toBeCloseTo(3, 9);
  });
});

describe("a caller's mistakes throw", () => {
  const good = { distanceM: [1, 2, 4, 8, 16, 32], lossDb: [40, 49, 58, 67, 76, 85] };
  test.each([
    { ...good, lossDb: [1] },
    { ...good, censored: [true] },
    { ...good, wallCount: [1] },
    { ...good, distanceM: [0, 2, 4, 8, 16, 32] },
    { ...good, lossDb: [NaN, 49, 58, 67, 76, 85] },
    { ...good, wallCount: [-1, 0, 0, 0, 0, 0] },
    { ...good, referenceDistanceM: 0 },
    { ...good, confidenceRatio: 95 },
  ])("%o", (readings) => {
    expect(() => fitPathLoss(readings)).toThrow(ArgumentError);
  });
});

test("the two ways to a quantile agree: a straight fit's interval is coefficient ± t · standard error", () => {
  const walk = syntheticWalk({ ...plain, seed: 2 });
  const fit = fitted(fitPathLoss({ ...walk, confidenceRatio: 0.9 }));
  const design = walk.distanceM.map((each) => [1, 10 * Math.log10(each)]);
  const { unscaledCovariance } = leastSquares(design, walk.lossDb)!;
  const half = studentTTailQuantile(0.05, 38) * fit.sigmaDb * Math.sqrt(unscaledCovariance[1]![1]!);
  expect(fit.exponentInterval[1] - fit.exponent).toBeCloseTo(half, 12);
});
