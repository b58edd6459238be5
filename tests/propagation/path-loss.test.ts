import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import {
  buildingLosses,
  floorLossDb,
  freeSpacePathLossDb,
  indoorModelOf,
  indoorPathLossDb,
  logDistancePathLossDb,
  pathLoss,
  pathModelWords,
  referencePathModel,
} from "../../src/propagation/index.js";
import type { Building, PathModel } from "../../src/propagation/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const LAST_DIGIT_DB = 5.1e-10; // the tables print nine decimals

/** Powers simulated with ns-3 (fixtures/reference/README.md). */
describe("against the outside simulator", () => {
  test("free space, all rows", () => {
    for (const row of referenceCsv("friis.csv")) {
      const ours = freeSpacePathLossDb(Number(row["distance_m"]), Number(row["freq_mhz"]));
      expect(Math.abs(ours - Number(row["loss_db"]))).toBeLessThan(LAST_DIGIT_DB);
    }
  });
  test("indoor, every building, floor count and distance", () => {
    for (const row of referenceCsv("itu1238.csv")) {
      const model = indoorModelOf(row["building"] as Building, Number(row["floors"]));
      const point = { distanceM: Number(row["distance_m"]), frequencyMhz: Number(row["freq_mhz"]) };
      expect(Math.abs(pathLoss(model, point).lossDb - Number(row["loss_db"]))).toBeLessThan(LAST_DIGIT_DB);
    }
  });
  test("log-distance, all rows", () => {
    for (const row of referenceCsv("logdistance.csv")) {
      const ours = logDistancePathLossDb({
        distanceM: Number(row["distance_m"]),
        exponent: Number(row["exponent"]),
        referenceLossDb: Number(row["ref_loss_db"]),
        referenceDistanceM: Number(row["ref_distance_m"]),
      });
      // The table's reference loss itself is rounded to nine decimals.
      expect(Math.abs(ours - Number(row["loss_db"]))).toBeLessThan(2 * LAST_DIGIT_DB);
    }
  });
});

describe("published and hand-worked values at 2450 MHz", () => {
  test("free space: 32.45 + 20 log f(MHz) + 20 log d(km), ITU-R P.525 eq (4) with the exact 32.448", () => {
    for (const distanceM of [1, 5, 10, 20, 50, 100])
      expect(freeSpacePathLossDb(distanceM, 2450)).toBeCloseTo(
        32.4478 + 20 * Math.log10(2450) + 20 * Math.log10(distanceM / 1000),
        4,
      );
  });
  test("another route: power over the sphere times the isotropic aperture λ²/4π", () => {
    const wavelengthM = 299_792_458 / 2.437e9;
    const density = 1 / (4 * Math.PI * 17 ** 2);
    const aperture = wavelengthM ** 2 / (4 * Math.PI);
    expect(freeSpacePathLossDb(17, 2437)).toBeCloseTo(-10 * Math.log10(density * aperture), 10);
  });
  test("indoor, N = 28 and 30: worked values of ITU-R P.1238's formula, two decimals", () => {
    const expected = { 5: [59.35, 60.75], 10: [67.78, 69.78], 20: [76.21, 78.81], 50: [87.35, 90.75] };
    for (const [distance, [residential, office]] of Object.entries(expected)) {
      const point = { distanceM: Number(distance), frequencyMhz: 2450 };
      expect(Math.abs(pathLoss(indoorModelOf("residential", 0), point).lossDb - residential!)).toBeLessThan(
        0.0051,
      );
      expect(Math.abs(pathLoss(indoorModelOf("office", 0), point).lossDb - office!)).toBeLessThan(0.0051);
    }
  });
  test("free space and N = 20 by the rounded constants of ITU-R P.525 and P.1238, two decimals", () => {
    const expected = {
      5: [54.16, 53.76],
      10: [60.18, 59.78],
      20: [66.2, 65.8],
      50: [74.16, 73.76],
      100: [80.18, 79.78],
    };
    for (const [distance, [freeSpace, indoor]] of Object.entries(expected)) {
      const point = { distanceM: Number(distance), frequencyMhz: 2450 };
      // P.525's constant is 32.4 in the table and 32.4478 here.
      expect(Math.abs(pathLoss({ kind: "free-space" }, point).lossDb - 0.0478 - freeSpace!)).toBeLessThan(
        0.0051,
      );
      const model = { kind: "indoor", distancePowerCoefficient: 20, floorLossDb: 0 } as const;
      expect(Math.abs(pathLoss(model, point).lossDb - indoor!)).toBeLessThan(0.0051);
    }
  });
  test("the reference receiver: 20 m at 2437 MHz, N = 22", () => {
    const byHandDb = 20 * Math.log10(2437) + 22 * Math.log10(20) - 28; // ITU-R P.1238
    expect(pathLoss(referencePathModel, { distanceM: 20, frequencyMhz: 2437 }).lossDb).toBeCloseTo(
      byHandDb,
      12,
    );
  });
});

describe("invariants", () => {
  test("free space: 6.02 dB per doubling of distance or frequency", () => {
    const doublingDb = 20 * Math.log10(2);
    for (const d of [0.2, 1, 3.3, 40, 400]) {
      expect(freeSpacePathLossDb(2 * d, 2437) - freeSpacePathLossDb(d, 2437)).toBeCloseTo(doublingDb, 10);
      expect(freeSpacePathLossDb(d, 4874) - freeSpacePathLossDb(d, 2437)).toBeCloseTo(doublingDb, 10);
    }
  });
  test("indoor: N dB and log-distance: 10·n dB per tenfold distance, below 1 m too", () => {
    for (const distanceM of [0.05, 0.5, 2, 20]) {
      const indoor = { frequencyMhz: 2437, distancePowerCoefficient: 22, floorLossDb: 0 };
      const indoorStep =
        indoorPathLossDb({ ...indoor, distanceM: 10 * distanceM }) -
        indoorPathLossDb({ ...indoor, distanceM });
      expect(indoorStep).toBeCloseTo(22, 10);
      const fitted = { exponent: 2.7, referenceLossDb: 41, referenceDistanceM: 3 };
      const fittedStep =
        logDistancePathLossDb({ ...fitted, distanceM: 10 * distanceM }) -
        logDistancePathLossDb({ ...fitted, distanceM });
      expect(fittedStep).toBeCloseTo(27, 10);
    }
    expect(
      logDistancePathLossDb({ distanceM: 3, exponent: 2, referenceLossDb: 41, referenceDistanceM: 3 }),
    ).toBe(41);
  });
});

describe("caveats", () => {
  const caveatsAt = (model: PathModel, distanceM: number): readonly string[] =>
    pathLoss(model, { distanceM, frequencyMhz: 2450 }).caveats;
  test("near field below three wavelengths (0.367 m), reference distance, 100 m", () => {
    expect(caveatsAt({ kind: "free-space" }, 0.36)).toEqual(["near-field", "below-reference-distance"]);
    expect(caveatsAt({ kind: "free-space" }, 0.37)).toEqual(["below-reference-distance"]);
    expect(caveatsAt({ kind: "free-space" }, 1)).toEqual([]);
    expect(caveatsAt({ kind: "free-space" }, 100)).toEqual([]);
    expect(caveatsAt({ kind: "free-space" }, 100.01)).toEqual(["beyond-fitted-distance"]);
    const fitted = { kind: "log-distance", exponent: 3, referenceLossDb: 60, referenceDistanceM: 4 } as const;
    expect(caveatsAt(fitted, 3.9)).toContain("below-reference-distance");
    expect(caveatsAt(fitted, 4)).toEqual([]);
  });
  test("below free space: N = 22 up to 10^(0.4478/2) = 1.675 m", () => {
    // 22·log d − 28 < 20·log d − 27.5522 by hand.
    expect(caveatsAt(referencePathModel, 1.67)).toEqual(["below-free-space"]);
    expect(caveatsAt(referencePathModel, 1.68)).toEqual([]);
    const freeSpaceAsFit = {
      kind: "log-distance",
      exponent: 2,
      referenceLossDb: freeSpacePathLossDb(1, 2450),
    } as const;
    expect(caveatsAt(freeSpaceAsFit, 33)).toEqual([]);
  });
  test("words name the model and its figures", () => {
    const words = (model: PathModel): string => pathLoss(model, { distanceM: 5, frequencyMhz: 2450 }).model;
    expect(words({ kind: "free-space" })).toContain("P.525");
    expect(words(indoorModelOf("office", 2))).toMatch(/P\.1238.*N = 30.*19 dB/);
    expect(words({ kind: "log-distance", exponent: 2.5, referenceLossDb: 41 })).toMatch(/2\.5.*41 dB at 1 m/);
  });
});

describe("buildings and mistakes", () => {
  test("floor laws of ITU-R P.1238 (1.8-2 GHz): 4n, 15 + 4(n−1), 6 + 3(n−1)", () => {
    for (const floors of [1, 2, 5]) {
      expect(floorLossDb("residential", floors)).toBe(4 * floors);
      expect(floorLossDb("office", floors)).toBe(15 + 4 * (floors - 1));
      expect(floorLossDb("commercial", floors)).toBe(6 + 3 * (floors - 1));
    }
    for (const row of Object.values(buildingLosses))
      expect(row.distancePowerCoefficient.source).toContain("P.1238");
  });
  test("throws", () => {
    for (const bad of [0, -1, NaN, Infinity]) {
      expect(() => freeSpacePathLossDb(bad, 2450)).toThrow(ArgumentError);
      expect(() => freeSpacePathLossDb(1, bad)).toThrow(ArgumentError);
      expect(() => logDistancePathLossDb({ distanceM: bad, exponent: 2, referenceLossDb: 40 })).toThrow(
        ArgumentError,
      );
      expect(() =>
        logDistancePathLossDb({ distanceM: 1, exponent: 2, referenceLossDb: 40, referenceDistanceM: bad }),
      ).toThrow(ArgumentError);
    }
    const indoor = { distanceM: 5, frequencyMhz: 2437, distancePowerCoefficient: 22, floorLossDb: 0 };
    for (const wrong of [
      { distanceM: 0 },
      { frequencyMhz: -1 },
      { distancePowerCoefficient: NaN },
      { floorLossDb: -1 },
    ])
      expect(() => indoorPathLossDb({ ...indoor, ...wrong })).toThrow(ArgumentError);
    expect(() => logDistancePathLossDb({ distanceM: 1, exponent: NaN, referenceLossDb: 40 })).toThrow(
      ArgumentError,
    );
    expect(() => logDistancePathLossDb({ distanceM: 1, exponent: 2, referenceLossDb: Infinity })).toThrow(
      ArgumentError,
    );
    expect(() => floorLossDb("barn" as Building, 1)).toThrow("residential, office, commercial");
    expect(() => floorLossDb("constructor" as Building, 1)).toThrow(ArgumentError);
    for (const bad of [-1, 1.5, NaN]) expect(() => floorLossDb("office", bad)).toThrow(ArgumentError);
    expect(() => pathLoss({ kind: "two-ray" } as never, { distanceM: 1, frequencyMhz: 2450 })).toThrow(
      "free-space, indoor, indoor-abg or log-distance",
    );
  });
});

test("an indoor model says which floors it holds", () => {
  expect(pathModelWords(indoorModelOf("office", 0))).toBe("indoor (ITU-R P.1238), N = 30, same floor");
  expect(pathModelWords(indoorModelOf("office", 2))).toBe("indoor (ITU-R P.1238), N = 30, 19 dB of floors");
  const bare: PathModel = { kind: "indoor", distancePowerCoefficient: 28 };
  expect(pathModelWords(bare)).toBe("indoor (ITU-R P.1238), N = 28, same floor");
});
