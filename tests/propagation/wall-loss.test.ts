import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import {
  layersPlanningLoss,
  layersTransmission,
  OPAQUE_LOSS_DB,
  slabPlanningLoss,
  slabPlanningLossDb,
  slabTransmission,
  slabTransmissionLossDb,
  wallLoss,
  wallLossDb,
} from "../../src/propagation/index.js";
import type { WallCrossing, WallLayer } from "../../src/propagation/index.js";
import { matchedFields } from "../helpers/matched-fields.js";
import type { Pair } from "../helpers/matched-fields.js";

const random = seededRandom(16);
const lossy = (): WallLayer => ({
  material: { a: 1 + 7 * random(), b: 0, c: 0.2 * random() ** 2, d: 0 },
  thicknessM: 0.003 + 0.1 * random(),
});
const stacks = Array.from({ length: 120 }, (_, index) => ({
  layers: Array.from({ length: 1 + (index % 6) }, lossy),
  frequencyMhz: 2400 + 83.5 * random(),
  incidenceDeg: 85 * random(),
  polarisation: index % 2 === 0 ? ("TE" as const) : ("TM" as const),
}));
const studWall = [
  { material: "plasterboard", thicknessM: 0.0125 },
  { material: "air", thicknessM: 0.1 },
  { material: "plasterboard", thicknessM: 0.0125 },
];

describe("layers (transfer matrix)", () => {
  test("one layer is the slab, whatever the material and angle", () => {
    for (const { layers, ...wave } of stacks) {
      const layer = layers[0]!;
      const [one, slab] = [
        layersTransmission({ layers: [layer], ...wave }),
        slabTransmission({ ...layer, ...wave }),
      ];
      expect(Math.abs(one.lossDb - slab.lossDb)).toBeLessThan(1e-9);
      expect(Math.abs(one.reflectedRatio - slab.reflectedRatio)).toBeLessThan(1e-9);
    }
    for (const material of ["concrete", "glass", "wet ground", "metal"])
      for (const incidenceDeg of [0, 30, 89]) {
        const [layer, wave] = [
          { material, thicknessM: 0.3 },
          { frequencyMhz: 2450, incidenceDeg },
        ];
        const one = layersTransmission({ layers: [layer], ...wave });
        expect(Math.abs(one.lossDb - slabTransmissionLossDb({ ...layer, ...wave }))).toBeLessThan(1e-9);
      }
  });
  test("any stack against the fields matched at every face", () => {
    for (const { layers, frequencyMhz, incidenceDeg, polarisation } of stacks) {
      const matched = matchedFields(
        layers.map(({ material, thicknessM }) => {
          const { a, c } = material as { a: number; c: number };
          return { eta: [a, -c / (2 * Math.PI * frequencyMhz * 1e6 * 8.8541878128e-12)] as Pair, thicknessM };
        }),
        frequencyMhz,
        incidenceDeg,
        polarisation,
      );
      const ours = layersTransmission({ layers, frequencyMhz, incidenceDeg, polarisation });
      expect(Math.abs(ours.lossDb + 10 * Math.log10(matched.transmittedRatio))).toBeLessThan(1e-8);
      expect(Math.abs(ours.reflectedRatio - matched.reflectedRatio)).toBeLessThan(1e-10);
    }
  });
  test("cut into slices it is the same wall; air in front changes nothing; seen from behind it loses the same", () => {
    for (const { layers, ...wave } of stacks.slice(0, 40)) {
      const lossDb = layersTransmission({ layers, ...wave }).lossDb;
      const sliced = layers
        .flatMap((layer) => [layer, layer])
        .map((layer) => ({ ...layer, thicknessM: layer.thicknessM / 2 }));
      expect(layersTransmission({ layers: sliced, ...wave }).lossDb).toBeCloseTo(lossDb, 9);
      const aired = [{ material: "air", thicknessM: 0.7 }, ...layers];
      expect(layersTransmission({ layers: aired, ...wave }).lossDb).toBeCloseTo(lossDb, 9);
      expect(layersTransmission({ layers: [...layers].reverse(), ...wave }).lossDb).toBeCloseTo(lossDb, 9);
    }
  });
  test("no power is made: |R|² + |T|² ≤ 1, and = 1 without loss", () => {
    for (const { layers, ...wave } of stacks) {
      const lossy = layersTransmission({ layers, ...wave });
      expect(lossy.transmittedRatio + lossy.reflectedRatio).toBeLessThan(1);
      const clear = layers.map(({ material, thicknessM }) => ({
        material: { ...(material as object), c: 0 } as never,
        thicknessM,
      }));
      const whole = layersTransmission({ layers: clear, ...wave });
      expect(whole.transmittedRatio + whole.reflectedRatio).toBeCloseTo(1, 10);
    }
  });
  test("a foil in the wall makes it opaque; a layer out of its range is said", () => {
    const foil = layersTransmission({
      layers: [...studWall, { material: "metal", thicknessM: 0.001 }],
      frequencyMhz: 2450,
    });
    expect([foil.lossDb, foil.caveats]).toEqual([OPAQUE_LOSS_DB, ["opaque-capped"]]);
    const boards = layersTransmission({
      layers: [{ material: "floorboard", thicknessM: 0.02 }],
      frequencyMhz: 2450,
    });
    expect(boards.caveats).toEqual(["outside-material-range"]);
  });
});

describe("planning values", () => {
  /** Mean of |T|² by the midpoint rule, far finer than needed. */
  const midpointDb = (lossDbAt: (frequencyMhz: number) => number, count = 20_000): number => {
    let sum = 0;
    for (let index = 0; index < count; index++)
      sum += 10 ** (-lossDbAt(2400 + (83.5 * (index + 0.5)) / count) / 10);
    return -10 * Math.log10(sum / count);
  };
  test.each([
    { material: "concrete", thicknessM: 0.2 },
    { material: "brick", thicknessM: 0.215, incidenceDeg: 40 },
    { material: "glass", thicknessM: 0.006, incidenceDeg: 60, polarisation: "TM" as const },
    { material: { a: 9, b: 0, c: 0, d: 0 }, thicknessM: 3 },
    { material: "very dry ground", thicknessM: 20, incidenceDeg: 20 },
    { material: { a: 30, b: 0, c: 0.0005, d: 0 }, thicknessM: 8 },
  ])("a slab's mean of power over 2400–2483.5 MHz: %o", (query) => {
    const wantedDb = midpointDb((frequencyMhz) => slabTransmissionLossDb({ ...query, frequencyMhz }));
    expect(Math.abs(slabPlanningLossDb(query) - wantedDb)).toBeLessThan(2e-6);
  });
  test("a layered wall's too, and one layer is the slab's", () => {
    const wave = { layers: studWall, incidenceDeg: 35 };
    const wantedDb = midpointDb((frequencyMhz) => layersTransmission({ ...wave, frequencyMhz }).lossDb, 4000);
    expect(Math.abs(layersPlanningLoss(wave).lossDb - wantedDb)).toBeLessThan(2e-6);
    const slab = { material: "brick", thicknessM: 0.1 };
    expect(layersPlanningLoss({ layers: [slab] }).lossDb).toBeCloseTo(slabPlanningLossDb(slab), 9);
  });
  test("whole standing waves in the band: power averages to the lossless etalon's 1/√(1 + F)", () => {
    // Mean over a period of 1/(1 + F·sin²): 1/√(1 + F), F = 4r²/(1 − r²)²; thickness for exactly 4 periods.
    const permittivity = 9;
    const rSquared = ((1 - 3) / (1 + 3)) ** 2;
    const finesse = (4 * rSquared) / (1 - rSquared) ** 2;
    const thicknessM = (4 * 299_792_458) / (2 * 3 * 83.5e6);
    const lossDb = slabPlanningLossDb({ material: { a: permittivity, b: 0, c: 0, d: 0 }, thicknessM });
    expect(lossDb).toBeCloseTo(5 * Math.log10(1 + finesse), 6);
  });
  test("names the edition and what was stretched", () => {
    expect(slabPlanningLoss({ material: "floorboard", thicknessM: 0.02 })).toMatchObject({
      edition: "ITU-R P.2040-3",
      caveats: ["outside-material-range"],
    });
    expect(slabPlanningLoss({ material: "metal", thicknessM: 0.002 }).lossDb).toBeCloseTo(OPAQUE_LOSS_DB, 12);
  });
});

describe("walls on a path", () => {
  test("add up, each at its own angle; no wall, no loss", () => {
    const brick = { material: "brick", thicknessM: 0.1, incidenceDeg: 30 };
    const crossings: WallCrossing[] = [
      brick,
      { ...brick, incidenceDeg: 60 },
      { layers: studWall },
      { lossDb: 7 },
    ];
    const byHandDb =
      slabPlanningLossDb(brick) +
      slabPlanningLossDb({ ...brick, incidenceDeg: 60 }) +
      layersPlanningLoss({ layers: studWall }).lossDb +
      7;
    expect(wallLossDb(crossings)).toBeCloseTo(byHandDb, 12);
    expect(wallLoss(crossings).crossings.map(({ edition }) => edition)).toEqual([
      "ITU-R P.2040-3",
      "ITU-R P.2040-3",
      "ITU-R P.2040-3",
      "loss given in dB",
    ]);
    expect(wallLoss([])).toEqual({ lossDb: 0, crossings: [], caveats: [] });
  });
  test("each caveat is said once", () => {
    const boards = { material: "floorboard", thicknessM: 0.02 };
    expect(wallLoss([boards, boards, { material: "metal", thicknessM: 0.01 }]).caveats).toEqual([
      "outside-material-range",
      "opaque-capped",
    ]);
  });
  test("a loss in dB counts the same at every angle", () => {
    expect(wallLossDb([{ lossDb: 5, incidenceDeg: 70, polarisation: "TM" }])).toBe(5);
  });
  test("takes a key without a value as one left out", () => {
    const none = { material: undefined, layers: undefined };
    const crossings = [
      { ...none, lossDb: 3 },
      { material: "air", thicknessM: 0.1, layers: undefined, lossDb: undefined },
    ] as unknown as WallCrossing[];
    expect(wallLoss(crossings).crossings).toEqual([
      { lossDb: 3, edition: "loss given in dB", caveats: [] },
      { lossDb: 0, edition: "ITU-R P.2040-3", caveats: [] },
    ]);
  });
  test("a material out of its range in any layer is a caveat", () => {
    // ITU-R P.2040-3 table 3: wood from 1 MHz, concrete from 1 GHz.
    const layers = [
      { material: "wood", thicknessM: 0.02 },
      { material: "concrete", thicknessM: 0.1 },
    ];
    expect(layersTransmission({ layers, frequencyMhz: 1000 }).caveats).toEqual([]);
    expect(layersTransmission({ layers, frequencyMhz: 900 }).caveats).toEqual(["outside-material-range"]);
  });
  test("takes sixteen layers", () => {
    const layers = new Array<WallLayer>(16).fill({ material: "air", thicknessM: 0.1 });
    expect(layersTransmission({ layers, frequencyMhz: 2450 }).lossDb).toBeCloseTo(0, 9);
  });
  test.each([
    [[{ lossDb: 3 }, {}], "crossings[1]"],
    [[{ lossDb: 3, material: "brick", thicknessM: 0.1 }], "lossDb and material"],
    [[{ lossDb: -1 }], "crossings[0].lossDb"],
    [[{ lossDb: NaN }], "crossings[0].lossDb"],
    [[{ layers: [] }], "1 to 16 layers"],
    [[{ layers: Array.from({ length: 17 }, () => studWall[0]) }], "1 to 16 layers"],
    [[{ layers: "brick" }], "1 to 16 layers"],
    [[{ material: "brick" }], "thicknessM"],
    [[{ material: "brick", thicknessM: 0.1, incidenceDeg: 90 }], "incidenceDeg"],
    [[{ layers: studWall, polarisation: "up" }], "polarisation"],
  ])("refuses %o", (crossings, words) => {
    expect(() => wallLossDb(crossings as never)).toThrow(ArgumentError);
    expect(() => wallLossDb(crossings as never)).toThrow(words);
  });
});
