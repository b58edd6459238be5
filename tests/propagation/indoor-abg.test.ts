import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import {
  freeSpacePathLossDb,
  indoorAbgPathLossDb,
  indoorAbgRow,
  indoorAbgRows,
  pathLoss,
  pathModelSigmaDb,
} from "../../src/propagation/index.js";
import type { IndoorPlace, IndoorSight, PathModel } from "../../src/propagation/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const LAST_DIGIT_DB = 0.00501; // two decimals printed
const model = (place: IndoorPlace, sight: IndoorSight): PathModel => ({ kind: "indoor-abg", place, sight });
const caveatsAt = (
  place: IndoorPlace,
  sight: IndoorSight,
  distanceM: number,
  frequencyMhz = 2450,
): readonly string[] => pathLoss(model(place, sight), { distanceM, frequencyMhz }).caveats;

/** Computed from equation (1) of ITU-R P.1238-11 and its Table 2 outside the project; no printed worked example exists. */
const WORKED: readonly (readonly [number, IndoorPlace, IndoorSight, number])[] = [
  ...[52.73, 57.12, 61.52, 67.33, 71.72].map(
    (loss, i) => [[5, 10, 20, 50, 100][i]!, "office", "LoS", loss] as const,
  ),
  ...[55.99, 63.39, 70.8, 80.59, 87.99].map(
    (loss, i) => [[5, 10, 20, 50, 100][i]!, "office", "NLoS", loss] as const,
  ),
  ...[48.27, 53.18, 58.08, 64.57, 69.48].map(
    (loss, i) => [[5, 10, 20, 50, 100][i]!, "corridor", "LoS", loss] as const,
  ),
  ...[48.68, 55.64, 62.59, 71.78, 78.74].map(
    (loss, i) => [[5, 10, 20, 50, 100][i]!, "industrial", "LoS", loss] as const,
  ),
  ...[52.72, 64.12, 75.53, 90.62, 102.02].map(
    (loss, i) => [[5, 10, 20, 50, 100][i]!, "industrial", "NLoS", loss] as const,
  ),
];

describe("ITU-R P.1238-11", () => {
  test("Table 2 (fixtures/reference/p1238_abg.csv): coefficients, sigma and ranges of every row", () => {
    const rows = referenceCsv("p1238_abg.csv");
    expect(rows.length).toBe(6);
    for (const row of rows) {
      const ours = indoorAbgRow(row["environment"] as IndoorPlace, row["condition"] as IndoorSight);
      expect([ours.alpha, ours.betaDb, ours.gamma, ours.sigmaDb]).toEqual(
        ["alpha", "beta", "gamma", "sigma_db"].map((name) => Number(row[name])),
      );
      expect(ours.frequencyRangeMhz.map((mhz) => mhz / 1000)).toEqual([
        Number(row["f_low_ghz"]),
        Number(row["f_high_ghz"]),
      ]);
      expect(ours.distanceRangeM).toEqual([Number(row["d_low_m"]), Number(row["d_high_m"])]);
      expect([ours.status, ours.source]).toEqual(["standard", expect.stringContaining("P.1238-11")]);
    }
    expect(Object.values(indoorAbgRows).flatMap((bySight) => Object.keys(bySight)).length).toBe(rows.length);
  });
  test.each(WORKED)("at %d m, %s %s: %d dB at 2450 MHz", (distanceM, place, sight, lossDb) => {
    expect(
      Math.abs(indoorAbgPathLossDb({ place, sight, distanceM, frequencyMhz: 2450 }) - lossDb),
    ).toBeLessThan(LAST_DIGIT_DB);
  });
  test("frequency counts in GHz: an office at 1 m loses 42.5 dB at 2.45 GHz, near free space's 40.2", () => {
    const office = indoorAbgPathLossDb({ place: "office", sight: "LoS", distanceM: 1, frequencyMhz: 2450 });
    expect(Math.abs(office - 42.5)).toBeLessThan(0.05);
  });
  test("10·α dB per tenfold distance, 10·γ dB per tenfold frequency, below the range too", () => {
    const at = (distanceM: number, frequencyMhz: number): number =>
      indoorAbgPathLossDb({ place: "corridor", sight: "NLoS", distanceM, frequencyMhz });
    for (const distanceM of [0.1, 3, 40]) {
      expect(at(10 * distanceM, 2450) - at(distanceM, 2450)).toBeCloseTo(27.7, 10);
      expect(at(distanceM, 24_500) - at(distanceM, 2450)).toBeCloseTo(24.8, 10);
    }
  });
});

describe("as a path model", () => {
  test("the loss, the name of the edition and sigma beside it", () => {
    const path = pathLoss(model("office", "NLoS"), { distanceM: 10, frequencyMhz: 2450 });
    expect(Math.abs(path.lossDb - 63.39)).toBeLessThan(LAST_DIGIT_DB);
    expect([path.sigmaDb, path.caveats]).toEqual([5.04, []]);
    expect(path.model).toMatch(/P\.1238-11.*office NLoS.*5\.04 dB/);
  });
  test("beyond the row's distances or frequencies it says so", () => {
    expect(caveatsAt("office", "NLoS", 4)).not.toContain("outside-model-range");
    expect(caveatsAt("office", "NLoS", 30)).toEqual([]);
    expect(caveatsAt("office", "NLoS", 30.1)).toEqual(["outside-model-range"]);
    expect(caveatsAt("office", "NLoS", 3.9)).toContain("outside-model-range");
    expect(caveatsAt("corridor", "NLoS", 20, 600)).toContain("outside-model-range");
    expect(caveatsAt("corridor", "NLoS", 20, 625)).not.toContain("outside-model-range");
    expect(caveatsAt("industrial", "NLoS", 105)).toEqual(["beyond-fitted-distance"]);
  });
  test("never below free space without saying so, and the loss is not raised to it", () => {
    let below = 0;
    for (const place of Object.keys(indoorAbgRows) as IndoorPlace[])
      for (const sight of ["LoS", "NLoS"] as const)
        for (let distanceM = 0.5; distanceM < 150; distanceM *= 1.1) {
          const path = pathLoss(model(place, sight), { distanceM, frequencyMhz: 2450 });
          const isBelow = path.lossDb < freeSpacePathLossDb(distanceM, 2450) - 1e-9;
          expect(path.caveats.includes("below-free-space")).toBe(isBelow);
          expect(path.lossDb).toBe(indoorAbgPathLossDb({ place, sight, distanceM, frequencyMhz: 2450 }));
          if (isBelow) below++;
        }
    expect(below).toBeGreaterThan(50);
    // By hand at 2450 MHz: corridor and industrial hall in sight at 10 m, industrial without sight at 5 m.
    expect(caveatsAt("corridor", "LoS", 10)).toEqual(["below-free-space"]);
    expect(caveatsAt("industrial", "LoS", 10)).toEqual(["below-free-space"]);
    expect(caveatsAt("industrial", "NLoS", 5)).toEqual(["below-free-space"]);
  });
  test("log-distance keeps its sigma beside the loss; free space and the form with N have none", () => {
    const fitted = { kind: "log-distance", exponent: 2.4, referenceLossDb: 41 } as const;
    const point = { distanceM: 10, frequencyMhz: 2450 };
    const shadowed = pathLoss({ ...fitted, sigmaDb: 3.5 }, point);
    expect([shadowed.lossDb, shadowed.sigmaDb]).toEqual([65, 3.5]);
    expect(shadowed.model).toContain("sigma 3.5 dB");
    expect([pathLoss(fitted, point).lossDb, pathLoss(fitted, point).sigmaDb]).toEqual([65, null]);
    expect(pathModelSigmaDb({ kind: "free-space" })).toBeNull();
    expect(pathModelSigmaDb({ kind: "indoor", distancePowerCoefficient: 22 })).toBeNull();
  });
  test("throws", () => {
    const office = { place: "office", sight: "LoS", distanceM: 5, frequencyMhz: 2450 } as const;
    for (const bad of [0, -1, NaN, Infinity]) {
      expect(() => indoorAbgPathLossDb({ ...office, distanceM: bad })).toThrow(ArgumentError);
      expect(() => indoorAbgPathLossDb({ ...office, frequencyMhz: bad })).toThrow(ArgumentError);
    }
    expect(() => indoorAbgPathLossDb({ ...office, place: "theatre" as never })).toThrow(
      "office, corridor, industrial",
    );
    expect(() => indoorAbgPathLossDb({ ...office, sight: "los" as never })).toThrow("LoS or NLoS");
    for (const sigmaDb of [-1, NaN])
      expect(() =>
        pathLoss(
          { kind: "log-distance", exponent: 2, referenceLossDb: 40, sigmaDb },
          { distanceM: 5, frequencyMhz: 2450 },
        ),
      ).toThrow(ArgumentError);
  });
});
