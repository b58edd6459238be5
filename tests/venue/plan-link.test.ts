import { fadeAllowanceDb } from "../../src/propagation/index.js";
import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { planLink, referenceSetting } from "../../src/venue/index.js";
import { score } from "../helpers/scores.js";

const setting = referenceSetting({ emitters: [], profile: findProfile("raster-13") });
// ITU-R P.1238 with N = 22 on one floor: 20·log10(f) + 22·log10(d) − 28.
const lossDb = (frequencyMhz: number, distanceM: number): number =>
  20 * Math.log10(frequencyMhz) + 22 * Math.log10(distanceM) - 28;
// 18 dBm + 2 dBi − loss − canopy 10 dB + 2 dBi.
const receivedDbm = (frequencyMhz: number, distanceM: number): number => 12 - lossDb(frequencyMhz, distanceM);

const allowanceDb = fadeAllowanceDb({ ...setting.fadeLaw, reliability: setting.reliability });

describe("planLink, one channel", () => {
  const link = planLink(setting, allowanceDb, [score(6, 0, "a", { interferenceDbm: -80 })], null);

  it("is at that channel's frequency with its interference held constant, row by row, by hand", () => {
    expect([link.channel, link.frequencyMhz, link.interferenceDbm]).toEqual([6, 2437, -80]);
    expect(link.rows.map(({ distanceM }) => distanceM)).toEqual([5, 10, 15, 20, 30, 40, 60]);
    for (const row of link.rows) {
      const levelDbm = receivedDbm(2437, row.distanceM);
      expect(row.pathLossDb).toBeCloseTo(lossDb(2437, row.distanceM), 9);
      expect(row.receivedDbm).toBeCloseTo(levelDbm, 9);
      expect(row.sensitivityMarginDb).toBeCloseTo(levelDbm + 90, 9);
      expect(row.interferenceMarginDb).toBeCloseTo(levelDbm + 80 - 14, 9);
      expect(row.workingMarginDb).toBeCloseTo(levelDbm + 80 - 14 - row.fadeAllowanceDb, 9);
      expect(row.limit).toBe("interference"); // −80 + 14 is above −90
      expect(row.fadeAllowanceDb).toBe(link.fadeAllowanceDb);
    }
    expect(link.reference).toEqual(link.rows[3]);
  });

  // Rayleigh, 99 %: −10·log10(−ln 0.99) = 19.978 dB. Rician K = 6 dB lies between no fading and Rayleigh.
  it("has a Rician allowance for the table and a Rayleigh one beside it", () => {
    expect(link.noSightFadeAllowanceDb).toBeCloseTo(-10 * Math.log10(-Math.log(0.99)), 9);
    expect(link.fadeAllowanceDb).toBeGreaterThan(5);
    expect(link.fadeAllowanceDb).toBeLessThan(link.noSightFadeAllowanceDb);
  });

  // Margin 0 where 22·log10(d) = 12 + 80 − 14 − allowance − 20·log10(f) + 28.
  it("reaches as far as the margin lasts, to the centimetre below", () => {
    const exactM = (allowanceDb: number): number =>
      10 ** ((12 + 80 - 14 - allowanceDb - 20 * Math.log10(2437) + 28) / 22);
    for (const [reachM, allowanceDb] of [
      [link.reachM, link.fadeAllowanceDb],
      [link.reachNoSightM, link.noSightFadeAllowanceDb],
    ] as const) {
      expect(reachM!).toBeLessThanOrEqual(exactM(allowanceDb));
      expect(reachM!).toBeGreaterThan(exactM(allowanceDb) - 0.0101);
    }
  });

  it("is limited by range where the interference is low", () => {
    const quiet = planLink(setting, allowanceDb, [score(6, 0, null, { interferenceDbm: -104 - 1e-3 })], null);
    expect(quiet.rows.every(({ limit }) => limit === "range")).toBe(true);
  });
});

describe("planLink, hop set and no channel", () => {
  const hops = {
    channels: [0, 1, 2],
    excludedRanges: [],
    clearAirRatio: 1,
    marginDb: 5.5,
    whole: { clearAirRatio: 1, marginDb: 5.5 },
  };

  it("gives the hop set's median margin at the reference distance, at its middle frequency", () => {
    const used = [0, 1, 2].map((channel) => score(channel, 0, null, { centreMhz: 2402 + channel }));
    const link = planLink(setting, allowanceDb, used, hops);
    expect([link.channel, link.frequencyMhz]).toEqual([null, 2403]);
    expect(link.reference!.interferenceMarginDb).toBeCloseTo(5.5, 9);
    for (const row of link.rows)
      expect(row.interferenceMarginDb - 5.5).toBeCloseTo(-22 * Math.log10(row.distanceM / 20), 9);
  });

  it("has no rows, and says why, where no channel is left", () => {
    const none = planLink(setting, allowanceDb, [], null);
    expect(none).toMatchObject({ channel: null, frequencyMhz: null, interferenceDbm: null, reference: null });
    expect([none.rows, none.reachM, none.reachNoSightM]).toEqual([[], null, null]);
    expect(none.reachReason).toMatch(/band/);
    expect(none.reachNoSightReason).toMatch(/band/);
  });
});
