import { describe, expect, test } from "vitest";
import {
  fitPathLoss,
  pathModelPredictionDb,
  pathModelRecord,
  readPathModelRecord,
} from "../../src/commissioning/index.js";
import type { FittedPathLoss } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { pathLossDb } from "../../src/propagation/index.js";
import { exactLineFit } from "../helpers/exact-line-fit.js";
import { syntheticWalk } from "../helpers/synthetic-walk.js";

const plain = { readingCount: 30, exponent: 3, referenceLossDb: 41, sigmaDb: 5 };
const walk = syntheticWalk({ ...plain, seed: 6 });
const model = pathModelRecord(fitPathLoss(walk) as FittedPathLoss, { frequencyMhz: 2450 });

describe("pathModelPredictionDb", () => {
  test("agrees with the textbook form, s²·(1 + 1/n + (x − x̄)²/Sxx), worked from sums", () => {
    const x = walk.distanceM.map((each) => 10 * Math.log10(each));
    const mean = x.reduce((sum, each) => sum + each, 0) / x.length;
    const spread = x.reduce((sum, each) => sum + (each - mean) ** 2, 0);
    const { variance, intercept, slope } = exactLineFit(x, walk.lossDb);
    for (const distanceM of [1, 5, 20, 90]) {
      const at = 10 * Math.log10(distanceM);
      const sigmaDb = Math.sqrt(variance * (1 + 1 / x.length + (at - mean) ** 2 / spread));
      const prediction = pathModelPredictionDb(model, distanceM);
      expect(prediction.lossDb).toBeCloseTo(intercept + slope * at, 9);
      expect(prediction.sigmaDb).toBeCloseTo(sigmaDb, 9);
      // 2.048407: Student's t, 28 degrees of freedom, 0.025 above (printed tables).
      expect(prediction.intervalDb[1] - prediction.lossDb).toBeCloseTo(2.048407 * sigmaDb, 4);
      expect(prediction.isExtrapolated).toBe(distanceM === 1 || distanceM === 90);
    }
  });
  test("is the model's own loss wherever a log-distance model is taken", () => {
    const there = pathLossDb(model, { distanceM: 17, frequencyMhz: 2450 });
    expect(pathModelPredictionDb(model, 17).lossDb).toBeCloseTo(there, 10);
  });
  test("holds a new reading 92 to 98 times of 100", () => {
    let held = 0;
    for (let seed = 1; seed <= 500; seed++) {
      const [old, fresh] = [seed, seed + 5000].map((each) => syntheticWalk({ ...plain, seed: each }));
      const fitted = pathModelRecord(fitPathLoss(old!) as FittedPathLoss);
      const [low, high] = pathModelPredictionDb(fitted, fresh!.distanceM[0]!).intervalDb;
      held += +(low <= fresh!.lossDb[0]! && fresh!.lossDb[0]! <= high);
    }
    expect(held / 500).toBeGreaterThanOrEqual(0.92);
    expect(held / 500).toBeLessThanOrEqual(0.98);
  });
  test("adds each wall, and refuses walls that the model doesn't know", () => {
    const distanceM = [2, 3, 5, 8, 12, 20, 4, 10];
    const wallCount = [0, 1, 0, 1, 2, 0, 2, 1];
    const lossDb = distanceM.map((each, index) => 40 + 25 * Math.log10(each) + 7 * wallCount[index]!);
    const walled = pathModelRecord(fitPathLoss({ distanceM, lossDb, wallCount }) as FittedPathLoss);
    expect(pathModelPredictionDb(walled, 10, { wallCount: 2 }).lossDb).toBeCloseTo(79, 9);
    expect(() => pathModelPredictionDb(model, 10, { wallCount: 1 })).toThrow(ArgumentError);
    expect(() => pathModelPredictionDb(model, 0)).toThrow(ArgumentError);
    expect(() => pathModelPredictionDb(model, 10, { wallCount: -1 })).toThrow(ArgumentError);
    expect(() => pathModelPredictionDb(model, 10, { confidenceRatio: 1 })).toThrow(ArgumentError);
    expect(() => pathModelRecord(fitPathLoss(walk) as FittedPathLoss, { frequencyMhz: 0 })).toThrow(
      ArgumentError,
    );
  });
});

describe("readPathModelRecord", () => {
  const kept = (): Record<string, unknown> => JSON.parse(JSON.stringify(model)) as Record<string, unknown>;

  test("gives back what was kept", () => {
    expect(readPathModelRecord(kept(), { source: "m.json" })).toEqual({ model, issues: [] });
  });
  test.each<[string, unknown]>([
    ["schema", "stillband/path-model@2"],
    ["kind", "indoor"],
    ["exponent", 0.5],
    ["exponent", "3"],
    ["referenceLossDb", null],
    ["referenceDistanceM", 0],
    ["sigmaDb", -1],
    ["wallLossDb", "6"],
    ["distanceRangeM", [9, 3]],
    ["readingCount", 2.5],
    ["notHeardCount", -1],
    ["freedomCount", 0],
    ["covariance", [[1, 0]]],
    [
      "covariance",
      [
        [1, 0.5],
        [0.4, 1],
      ],
    ],
    [
      "covariance",
      [
        [1, 2],
        [2, 1],
      ],
    ],
    ["frequencyMhz", "2450"],
  ])("refuses %s: %j, naming it", (key, value) => {
    const { model: none, issues } = readPathModelRecord({ ...kept(), [key]: value }, { source: "m.json" });
    expect(none).toBeNull();
    expect(issues.map(({ column, source, severity }) => [column, source, severity])).toEqual([
      [key, "m.json", "error"],
    ]);
  });
  test("tells every mistake at once, and what is missing", () => {
    const { issues } = readPathModelRecord(
      { ...kept(), exponent: 9, sigmaDb: undefined },
      { source: "m.json" },
    );
    expect(issues.map(({ column, code }) => [column, code])).toEqual([
      ["exponent", "bad-cell"],
      ["sigmaDb", "missing-cell"],
    ]);
    for (const data of [null, [], "text", 3])
      expect(readPathModelRecord(data, { source: "m" }).model).toBeNull();
  });
});
