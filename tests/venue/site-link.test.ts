/** Antennas, heights, walls and floors in the reference link, by hand arithmetic. */
import { describe, expect, it } from "vitest";
import { fadeAllowanceDb } from "../../src/propagation/index.js";
import type { Antenna, PathModel } from "../../src/propagation/index.js";
import { findProfile } from "../../src/radio/index.js";
import { OPEN_SITE, planChannel, planLink, referenceSetting } from "../../src/venue/index.js";
import type { LinkPlan, LinkSite, PlanChannelOptions } from "../../src/venue/index.js";
import { score } from "../helpers/scores.js";

const profile = findProfile("raster-13");
const MHZ = 2437;
const DIPOLE: Antenna = { kind: "dipole" };

function linkOf(site: Partial<LinkSite>, more: Partial<PlanChannelOptions> = {}): LinkPlan {
  const setting = referenceSetting({ emitters: [], profile, site: { ...OPEN_SITE, ...site }, ...more });
  const allowanceDb = fadeAllowanceDb({ ...setting.fadeLaw, reliability: setting.reliability });
  return planLink(setting, allowanceDb, [score(6, 0, null, { interferenceDbm: -104 })], null);
}

/** ITU-R P.1238, N = 22, one floor. */
const pathDb = (distanceM: number): number => 20 * Math.log10(MHZ) + 22 * Math.log10(distanceM) - 28;
/** C. A. Balanis, Antenna Theory, section 4.6 (from memory): the half-wave dipole, θ from its rod. */
function dipoleDbi(acrossM: number, alongM: number): number {
  const distanceM = Math.hypot(acrossM, alongM);
  const field = Math.cos(((Math.PI / 2) * alongM) / distanceM) / (acrossM / distanceM);
  return 10 * Math.log10(1.6409224) + 20 * Math.log10(field);
}

describe("heights", () => {
  const heights = { txHeightM: 2, rxHeightM: 6 };
  const link = linkOf({ heights, txAntenna: DIPOLE, rxAntenna: DIPOLE }, { distancesM: [3, 10, 20] });

  it("run the path in three dimensions and the patterns towards each other, row by row", () => {
    for (const row of link.rows) {
      const floorM = row.floorDistanceM!;
      const distanceM = Math.hypot(floorM, 4);
      const gainDbi = dipoleDbi(floorM, 4);
      expect(row.distanceM).toBeCloseTo(distanceM, 12);
      expect(row.txGainDbi).toBeCloseTo(gainDbi, 5);
      expect(row.rxGainDbi).toBeCloseTo(gainDbi, 5);
      // 18 dBm, canopy 10 dB.
      expect(row.receivedDbm).toBeCloseTo(18 + 2 * gainDbi - pathDb(distanceM) - 10, 4);
      expect(row.polarisationLossDb).toBe(0);
    }
    expect(link.rows.map(({ floorDistanceM }) => floorDistanceM)).toEqual([3, 10, 20]);
    expect(link.reference!.floorDistanceM).toBe(20);
  });

  it("reach as far as the margin lasts: along the floor to the centimetre below, and in three dimensions", () => {
    const near = linkOf({ heights: { txHeightM: 1, rxHeightM: 9 }, walls: [wall(30)] });
    const marginDb = (floorM: number): number =>
      18 + 2 - pathDb(Math.hypot(floorM, 8)) - 30 - 10 + 2 + 90 - near.fadeAllowanceDb;
    const floorM = near.reachFloorM!;
    expect(marginDb(floorM)).toBeGreaterThanOrEqual(-1e-9);
    expect(marginDb(floorM + 0.01)).toBeLessThan(0);
    // The 3-D reach by P.1238 solved for the distance.
    const exactM =
      10 ** ((18 + 2 - 30 - 10 + 2 + 90 - near.fadeAllowanceDb - 20 * Math.log10(MHZ) + 28) / 22);
    expect(near.reachM).toBeCloseTo(Math.floor(exactM * 100) / 100, 9);
  });

  it("have no floor figure where the ends are level", () => {
    const level = linkOf({});
    expect([level.reference!.floorDistanceM, level.reachFloorM, level.reference!.distanceM]).toEqual([
      null,
      null,
      20,
    ]);
  });
});

function wall(lossDb: number): LinkSite["walls"][number] {
  return { words: `${lossDb}dB`, crossing: { lossDb } };
}

describe("antennas", () => {
  const panel: Antenna = { kind: "panel", gainDbi: 9, azimuthBeamwidthDeg: 70, elevationBeamwidthDeg: 60 };

  it("look at each other at azimuth 0, at both ends", () => {
    const { reference } = linkOf({ txAntenna: panel, rxAntenna: panel });
    expect(reference!.txGainDbi).toBeCloseTo(9, 9);
    expect(reference!.rxGainDbi).toBeCloseTo(9, 9);
    const away = linkOf({ rxAntenna: { ...panel, azimuthDeg: 180 } }).reference!;
    expect(away.rxGainDbi).toBeCloseTo(9 - 20, 9); // the floor of the lobes: 20 dB below the peak
    expect(away.txGainDbi).toBe(2); // the profile's own
    expect(away.rxNull).toBe(true);
  });

  it("half a beamwidth off is half the power", () => {
    const turned = linkOf({ txAntenna: { ...panel, azimuthDeg: 35 } }).reference!;
    expect(turned.txGainDbi).toBeCloseTo(9 - 10 * Math.log10(2), 6);
  });

  it("crossed lose the 10 dB of the indoor cap", () => {
    const across: Antenna = { kind: "dipole", mounting: "sideways", azimuthDeg: 90 };
    const { reference } = linkOf({ txAntenna: DIPOLE, rxAntenna: across });
    expect(reference!.polarisationLossDb).toBe(10);
  });

  it("a rod that points at the receiver gives it nothing: the verdict fails and a warning has the cure", () => {
    const laid: Antenna = { kind: "dipole", mounting: "sideways" };
    const link = linkOf({ txAntenna: laid }, { distancesM: [20] });
    expect(link.reference).toMatchObject({
      txGainDbi: -Infinity,
      receivedDbm: -Infinity,
      workingMarginDb: -Infinity,
      verdict: "fails",
      heldRatio: 0,
      txNull: true,
    });
    expect([link.reachM, link.reachNoSightM]).toEqual([0, 0]);
    expect(link.warnings).toHaveLength(1);
    expect(link.warnings[0]).toMatchObject({
      code: "null-of-transmitter",
      distanceM: 20,
      move: { helpDb: null, reason: "in-true-null" },
    });
    // The best of the sixteen ways, 1 m square aside or a little nearer: the dipole's gain there and the bare 2 dBi.
    const [sideM, alongM] = [Math.sin((5 * Math.PI) / 16), Math.cos((5 * Math.PI) / 16)];
    const { move } = link.warnings[0] as { move: { afterDb: number } };
    expect(move.afterDb).toBeGreaterThan(dipoleDbi(sideM, 20 + alongM) + 2);
    expect(move.afterDb).toBeLessThan(dipoleDbi(1, 19) + 2 + 1e-9);
  });

  it("the whole plan stands in such a null too: no margin, no clear air, every frame lost", () => {
    for (const name of ["raster-13", "hop-79", "hop-79-avoid"]) {
      const site = { ...OPEN_SITE, txAntenna: { kind: "dipole", mounting: "sideways" } } as const;
      const plan = planChannel({ emitters: [], profile: findProfile(name), site });
      expect(plan.ranking.every(({ marginDb }) => marginDb === -Infinity)).toBe(true);
      expect(plan.ranking.every(({ clearAirRatio }) => clearAirRatio === 0)).toBe(true);
      expect(plan.frames!.typical.lossRatio).toBe(1);
      expect(plan.link.reference!.verdict).toBe("fails");
      if (plan.hopSet !== null) expect(plan.hopSet.marginDb).toBe(-Infinity);
    }
  });

  it("moving 1 m aside of a receiver overhead helps by what gains and spreading change", () => {
    const heights = { txHeightM: 2, rxHeightM: 6 };
    const link = linkOf({ heights, txAntenna: DIPOLE }, { distanceM: 0.5, distancesM: [0.5] });
    const level = (floorM: number): number => dipoleDbi(floorM, 4) - 20 * Math.log10(Math.hypot(floorM, 4));
    expect(link.warnings[0]).toMatchObject({ code: "null-of-transmitter", moveM: 1 });
    const { move } = link.warnings[0] as { move: { helpDb: number; azimuthDeg: number } };
    expect(move.helpDb).toBeCloseTo(level(1.5) - level(0.5), 4);
    expect(move.azimuthDeg).toBe(180); // straight away from the receiver
  });
});

describe("walls and floors", () => {
  it("stand in every row and in the wanted level of every channel", () => {
    const open = linkOf({});
    const walled = linkOf({ walls: [wall(7), wall(5.5)] });
    walled.rows.forEach((row, index) => {
      expect(row.wallLossDb).toBe(12.5);
      expect(row.receivedDbm).toBeCloseTo(open.rows[index]!.receivedDbm - 12.5, 9);
    });
    const site = { ...OPEN_SITE, walls: [wall(12.5)] };
    const [bare, plan] = [{}, { site }].map((more) => planChannel({ emitters: [], profile, ...more }));
    plan!.ranking.forEach(({ wantedDbm }, index) =>
      expect(wantedDbm).toBeCloseTo(bare!.ranking[index]!.wantedDbm - 12.5, 9),
    );
  });

  // ITU-R P.2040-3 at 2.45 GHz: concrete 200 mm loses 14.80 dB (band mean within some tenths of it).
  it("a slab's loss is the published one, its edition named", () => {
    const concrete = { words: "concrete:200mm", crossing: { material: "concrete", thicknessM: 0.2 } };
    const link = linkOf({ walls: [concrete] });
    expect(Math.abs(link.walls[0]!.lossDb - 14.8)).toBeLessThan(0.15);
    expect(link.walls[0]).toMatchObject({ wall: "concrete:200mm", edition: "ITU-R P.2040-3" });
    expect(link.reference!.wallLossDb).toBe(link.walls[0]!.lossDb);
  });

  it("warns of a wall whose loss is held or carried over from other frequencies", () => {
    const of = (material: string): LinkSite["walls"][number] => ({
      words: `${material}:20mm`,
      crossing: { material, thicknessM: 0.02 },
    });
    expect(linkOf({ walls: [of("metal"), of("brick"), of("floorboard")] }).warnings).toMatchObject([
      { code: "opaque-capped", wall: "metal:20mm", lossDb: 100 },
      { code: "outside-material-range", wall: "floorboard:20mm" },
    ]);
  });

  // ITU-R P.1238 (as ns-3 states it): office 15 + 4·(n − 1) dB.
  it.each<readonly [string, PathModel]>([
    ["indoor", { kind: "indoor", distancePowerCoefficient: 30 }],
    ["log-distance", { kind: "log-distance", exponent: 2.2, referenceLossDb: 40 }],
    ["free space", { kind: "free-space" }],
  ])("two floors of an office cost 19 dB with %s, reach and all", (_, pathModel) => {
    const floors = { building: "office", floorCount: 2 } as const;
    const [open, floored] = [linkOf({}, { pathModel }), linkOf({ floors }, { pathModel })];
    floored.rows.forEach((row, index) => {
      expect(row.floorLossDb).toBe(19);
      expect(row.pathLossDb).toBeCloseTo(open.rows[index]!.pathLossDb + 19, 9);
    });
    expect(floored.budget!.receivedDbm).toBeCloseTo(floored.reference!.receivedDbm, 9);
    const last = linkOf({ floors }, { pathModel, distanceM: floored.reachM ?? 1000 }).reference!;
    expect(last.workingMarginDb).toBeGreaterThanOrEqual(-1e-9);
    if (floored.reachM !== null) {
      const beyond = linkOf({ floors }, { pathModel, distanceM: floored.reachM + 0.02 }).reference!;
      expect(beyond.workingMarginDb).toBeLessThan(0);
    }
  });
});

describe("the share of positions held", () => {
  // Rayleigh: exp(−10^(−M/10)) of positions lie above a margin M.
  it("is Rayleigh's closed form at each row's lesser margin", () => {
    const link = linkOf({ walls: [wall(40)] }, { fadeLaw: { law: "rayleigh" }, distancesM: [5, 40, 200] });
    for (const row of link.rows) {
      const marginDb = Math.min(row.sensitivityMarginDb, row.interferenceMarginDb);
      expect(row.heldRatio).toBeCloseTo(Math.exp(-(10 ** (-marginDb / 10))), 9);
    }
  });
  it("is the stated share where the working margin is 0", () => {
    const { reachM, fadeAllowanceDb: allowanceDb } = linkOf({ walls: [wall(30)] });
    const row = linkOf({ walls: [wall(30)] }, { distanceM: reachM! }).reference!;
    expect(row.workingMarginDb).toBeCloseTo(0, 2);
    expect(row.heldRatio).toBeCloseTo(0.99, 4);
    expect(allowanceDb).toBeGreaterThan(0);
  });
});

describe("the budget line by line", () => {
  it("adds up to the reference row", () => {
    const site = { txAntenna: DIPOLE, heights: { txHeightM: 3, rxHeightM: 7 }, walls: [wall(4)] };
    const { budget, reference } = linkOf(site);
    const b = budget!;
    const sum =
      b.txPowerDbm -
      b.txFeederLossDb +
      b.txGainDbi -
      b.pathLossDb -
      b.wallLossDb -
      b.enclosureLossDb -
      b.crowdLossDb -
      b.polarisationLossDb +
      b.rxGainDbi;
    expect(b.receivedDbm).toBeCloseTo(sum, 9);
    expect(b.receivedDbm).toBeCloseTo(reference!.receivedDbm, 9);
    expect(b.workingMarginDb).toBeCloseTo(reference!.workingMarginDb, 9);
  });
});
