import { describe, expect, it } from "vitest";
import { brickWall } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import { occupancy } from "../../src/scorer/index.js";

// 20 MHz flat from 2402 to 2422 MHz: a twentieth of it, −13.01 dB, in each MHz.
const SOURCE: Emitter = {
  id: "a",
  centreMhz: 2412,
  shape: brickWall(20),
  levelDbm: -40,
  airtimeRatio: 0.25,
  airtimeAssumed: false,
  contentionChannel: 1,
};
const cells = (emitters: readonly Emitter[], busyShareRatio: number, thresholdDbm = -60) =>
  occupancy({ emitters, lowMhz: 2400, highMhz: 2483.5, thresholdDbm, busyShareRatio });
/** Thermal noise of 1 MHz at 290 K: k·T·B in mW, k = 1.380649e-23 J/K (SI, exact). */
const NOISE_DBM = 10 * Math.log10(1.380649e-23 * 290 * 1e6 * 1e3);

describe("occupancy", () => {
  it("is thermal noise in each whole MHz of an empty band, and none of it busy", () => {
    const empty = cells([], 0.01);
    expect(empty).toHaveLength(83);
    empty.forEach((cell, index) => {
      expect([cell.fromMhz, cell.toMhz]).toEqual([2400 + index, 2401 + index]);
      expect(Math.abs(cell.levelDbm - NOISE_DBM)).toBeLessThan(0.05); // −174 dBm/Hz is rounded from −173.98
      expect(cell.busyRatio).toBe(0);
    });
  });
  it("is a source's share in each MHz that it covers, busy for its airtime", () => {
    const levelDbm = 10 * Math.log10(10 ** -5.3010299957 + 10 ** -11.4);
    for (const cell of cells([SOURCE], 0.24)) {
      const covered = cell.fromMhz >= 2402 && cell.toMhz <= 2422;
      expect(cell.levelDbm).toBeCloseTo(covered ? levelDbm : -114, 6);
      expect(cell.busyRatio).toBeCloseTo(covered ? 0.25 : 0, 9);
    }
  });
  it("leaves out of the level what is on for no longer than the busy share", () => {
    for (const cell of cells([SOURCE], 0.25)) expect(cell.levelDbm).toBeCloseTo(-114, 6);
  });
  it("is busy only above the threshold", () => {
    for (const cell of cells([SOURCE], 0.01, -53)) expect(cell.busyRatio).toBe(0);
    expect(cells([SOURCE], 0.01, -53.1).filter(({ busyRatio }) => busyRatio > 0)).toHaveLength(20);
  });
});
