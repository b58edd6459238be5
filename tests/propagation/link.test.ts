import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import {
  fadeAllowanceDb,
  findReach,
  linkBudget,
  linkReach,
  linkRow,
  linkTable,
  profileTerms,
  reachM,
  receivedDbm,
  referenceFadeLaw,
  referencePathModel,
  verdictOf,
} from "../../src/propagation/index.js";
import type { LinkSetting } from "../../src/propagation/index.js";
import { findProfile, profileNoiseFloorDbm } from "../../src/radio/index.js";

const profile = findProfile("raster-13");
const alone: LinkSetting = {
  ...profileTerms(profile),
  frequencyMhz: 2437,
  pathModel: referencePathModel,
  interferenceDbm: profileNoiseFloorDbm(profile),
  fadeAllowanceDb: fadeAllowanceDb({ ...referenceFadeLaw, reliability: 0.99 }),
};

describe("received level and budget", () => {
  test("every line once, with its sign", () => {
    // Powers of two: any line left out, doubled or with the wrong sign shows in the sum.
    const terms = {
      txPowerDbm: 1,
      txFeederLossDb: 2,
      txGainDbi: 4,
      pathLossDb: 8,
      wallLossDb: 16,
      enclosureLossDb: 32,
      crowdLossDb: 64,
      polarisationLossDb: 128,
      rxGainDbi: 256,
    };
    expect(receivedDbm(terms)).toBe(1 - 2 + 4 - 8 - 16 - 32 - 64 - 128 + 256);
    expect(receivedDbm({ txPowerDbm: 1, pathLossDb: 8 })).toBe(-7);
  });
  test("the reference receiver at 20 m by hand: 18 + 2 − 68.36 − 10 + 2 dBm", () => {
    const row = linkRow(alone, 20);
    const lossDb = 20 * Math.log10(2437) + 22 * Math.log10(20) - 28; // ITU-R P.1238
    expect(row.receivedDbm).toBeCloseTo(12 - lossDb, 10);
    expect(row.sensitivityMarginDb).toBeCloseTo(102 - lossDb, 10);
    expect(row.interferenceMarginDb).toBeCloseTo(12 - lossDb + 104 - 14, 10);
    expect(row.workingMarginDb).toBeCloseTo(102 - lossDb - row.fadeAllowanceDb, 10);
  });
  test("floors count with the path: 13 dB more on it, 13 dB less of everything else", () => {
    const [bare, under] = [linkRow(alone, 20), linkRow({ ...alone, floorLossDb: 13 }, 20)];
    expect(under.pathLossDb - bare.pathLossDb).toBeCloseTo(13, 10);
    expect(bare.receivedDbm - under.receivedDbm).toBeCloseTo(13, 10);
    expect(bare.workingMarginDb - under.workingMarginDb).toBeCloseTo(13, 10);
  });
  test("noise alone ties with the sensitivity and counts as range", () => {
    expect(linkRow(alone, 20).limit).toBe("range");
    expect(linkRow({ ...alone, interferenceDbm: -80 }, 20).limit).toBe("interference");
    expect(linkRow({ ...alone, interferenceDbm: -120 }, 20).limit).toBe("range");
  });
  test("a budget holds every line, unnamed ones 0, and its EIRP", () => {
    const budget = linkBudget({
      txPowerDbm: 18,
      txFeederLossDb: 1,
      txGainDbi: 5,
      pathLossDb: 70,
      sensitivityDbm: -90,
      interferenceDbm: -70,
      requiredCiDb: 14,
      fadeAllowanceDb: 3,
    });
    expect(budget).toEqual({
      txPowerDbm: 18,
      txFeederLossDb: 1,
      txGainDbi: 5,
      pathLossDb: 70,
      wallLossDb: 0,
      enclosureLossDb: 0,
      crowdLossDb: 0,
      polarisationLossDb: 0,
      rxGainDbi: 0,
      eirpDbm: 22,
      receivedDbm: -48,
      sensitivityDbm: -90,
      sensitivityMarginDb: 42,
      interferenceDbm: -70,
      requiredCiDb: 14,
      interferenceMarginDb: 8,
      fadeAllowanceDb: 3,
      workingMarginDb: 5,
      limit: "interference",
      verdict: "thin",
    });
  });
  test("a table keeps the order of its distances and has the keys of the JSON", () => {
    const rows = linkTable(alone, [40, 5, 0.2, 150]);
    expect(rows.map((row) => row.distanceM)).toEqual([40, 5, 0.2, 150]);
    expect(Object.keys(rows[0]!).sort()).toEqual(
      [
        "caveats",
        "distanceM",
        "fadeAllowanceDb",
        "interferenceMarginDb",
        "limit",
        "pathLossDb",
        "receivedDbm",
        "sensitivityMarginDb",
        "verdict",
        "workingMarginDb",
      ].sort(),
    );
    expect(rows[2]!.caveats).toContain("near-field");
    expect(rows[3]!.caveats).toEqual(["beyond-fitted-distance"]);
  });
  test("throws on a term that is not finite; an antenna's null passes as no power", () => {
    expect(() => receivedDbm({ txPowerDbm: NaN, pathLossDb: 8 })).toThrow("txPowerDbm");
    expect(() => receivedDbm({ txPowerDbm: 1, pathLossDb: Infinity })).toThrow("pathLossDb");
    expect(() => receivedDbm({ txPowerDbm: 1, pathLossDb: 8, rxGainDbi: Infinity })).toThrow("rxGainDbi");
    expect(receivedDbm({ txPowerDbm: 1, pathLossDb: 8, rxGainDbi: -Infinity })).toBe(-Infinity);
    const terms = { txPowerDbm: 1, pathLossDb: 8, sensitivityDbm: -90, interferenceDbm: -100 };
    expect(() => linkBudget({ ...terms, requiredCiDb: NaN, fadeAllowanceDb: 0 })).toThrow("requiredCiDb");
    expect(() => linkBudget({ ...terms, requiredCiDb: 1, fadeAllowanceDb: NaN })).toThrow("fadeAllowanceDb");
    expect(() => linkRow(alone, 0)).toThrow(ArgumentError);
  });
});

describe("verdict", () => {
  test("limits at 0, 6 and 15 dB", () => {
    const expected = [
      [-0.001, "fails"],
      [0, "thin"],
      [-1e-12, "thin"],
      [5.999, "thin"],
      [6, "sound"],
      [14.999, "sound"],
      [15, "ample"],
      [Infinity, "ample"],
      [-Infinity, "fails"],
    ] as const;
    for (const [marginDb, verdict] of expected) expect(verdictOf(marginDb)).toBe(verdict);
    expect(() => verdictOf(NaN)).toThrow(ArgumentError);
  });
});

describe("reach", () => {
  test("against the closed form: 10^((20 + C − 20 log f)/N), rounded down to 1 cm", () => {
    for (const interferenceDbm of [-104, -80, -70, -60]) {
      const setting = { ...alone, interferenceDbm };
      const spareDb = 12 - Math.max(-90, interferenceDbm + 14) - alone.fadeAllowanceDb;
      const exactM = 10 ** ((spareDb + 28 - 20 * Math.log10(2437)) / 22);
      expect(linkReach(setting).reachM).toBe(Math.floor(exactM * 100) / 100);
    }
  });
  test("the margin holds at the reach and fails a centimetre on", () => {
    const margin = (distanceM: number): number =>
      linkRow({ ...alone, interferenceDbm: -72 }, distanceM).workingMarginDb;
    const reach = reachM(margin)!;
    expect(margin(reach)).toBeGreaterThanOrEqual(0);
    expect(margin(reach + 0.01)).toBeLessThan(0);
  });
  test("not steady: a null overhead, lobes further out; every centimetre tried from outside in", () => {
    const margins: ((distanceM: number) => number)[] = [
      (m) => (m > 3 && m < 8 ? 1 : -1),
      (m) => (m < 2 || (m > 30 && m < 31) ? 1 : -1),
      (m) => Math.sin(m) - m / 50,
      (m) => Math.cos(40 * Math.log(m)) - m / 300,
      (m) => 1 - Math.abs(m - 400) / 3,
      // A stretch between two whole centimetres is passed over for the next one inwards.
      (m) => (m <= 0.4 || Math.abs(m - 0.505) < 0.004 ? 1 : -1),
    ];
    for (const margin of margins) {
      let cm = 100_000;
      while (cm >= 10 && margin(cm / 100) < 0) cm--;
      expect(cm).toBeGreaterThan(10);
      expect(reachM(margin)).toBe(cm / 100);
    }
  });
  test("nowhere: 0; at the shortest distance only; everywhere: null with the reason; beyond 100 m: a caveat", () => {
    expect(findReach(() => -1)).toEqual({ reachM: 0, reason: null, caveats: [] });
    expect(reachM((m) => 0.1 - m)).toBe(0.1);
    expect(reachM((m) => 0.0999 - m)).toBe(0);
    expect(findReach(() => 0)).toEqual({
      reachM: null,
      reason: "the margin still holds at 1000 m",
      caveats: ["beyond-fitted-distance"],
    });
    expect(reachM((m) => (m > 1000 ? 1 : -1))).toBe(0); // nobody looks beyond
    expect(findReach((m) => 100.01 - m).caveats).toEqual(["beyond-fitted-distance"]);
    expect(findReach((m) => 100 - m)).toEqual({ reachM: 100, reason: null, caveats: [] });
    expect(reachM((m) => 999.994 - m)).toBe(999.99);
  });
  test("throws on NaN", () => {
    expect(() => findReach((m) => (m < 50 ? NaN : -1))).toThrow(ArgumentError);
  });
});
