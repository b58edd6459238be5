import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ArgumentError, ownBoxDropsV, throughFedDropsV } from "../../src/index.js";

const length = fc.double({ min: 0, max: 60, noNaN: true });
const load = fc.double({ min: 0, max: 10, noNaN: true });
const run = fc.array(fc.tuple(length, load), { minLength: 1, maxLength: 12 });

describe("voltage drop", () => {
  test("of three equal loads 12 AWG apart, by hand: 2·0.00198 Ω/ft·50 ft·(3 + 2 + 1)·2 A = 2.376 V", () => {
    const resistanceOhmPerM = 0.00198 / 0.3048;
    const feedsM = [15.24, 15.24, 15.24];
    const dropsV = throughFedDropsV({ resistanceOhmPerM, feedsM, loadsA: [2, 2, 2] });
    [1.188, 1.98, 2.376].forEach((handV, index) => expect(dropsV[index]).toBeCloseTo(handV, 12));
  });
  test("of a run equals the sum of what each load alone would lose (superposition)", () => {
    fc.assert(
      fc.property(run, (luminaires) => {
        const feedsM = luminaires.map(([feedM]) => feedM);
        const loadsA = luminaires.map(([, loadA]) => loadA);
        const dropsV = throughFedDropsV({ resistanceOhmPerM: 0.01, feedsM, loadsA });
        const toM = (index: number): number => feedsM.slice(0, index + 1).reduce((a, b) => a + b, 0);
        dropsV.forEach((dropV, at) => {
          // Load i loses 2·r·I over the way that it shares with luminaire `at`.
          const sumV = loadsA.reduce(
            (sum, loadA, i) => sum + 2 * 0.01 * loadA * Math.min(toM(i), toM(at)),
            0,
          );
          expect(dropV).toBeCloseTo(sumV, 9);
        });
      }),
    );
  });
  test("of n equal loads evenly spaced is (n + 1)/2n of the same load all at the end", () => {
    for (const count of [1, 2, 5, 40]) {
      const even = {
        resistanceOhmPerM: 0.02,
        feedsM: Array<number>(count).fill(3),
        loadsA: Array<number>(count).fill(0.5),
      };
      const atEndV = 2 * 0.02 * (3 * count) * (0.5 * count);
      expect(throughFedDropsV(even).at(-1)! / atEndV).toBeCloseTo((count + 1) / (2 * count), 12);
    }
  });
  test("grows along the run, and with every box of its own is never more", () => {
    fc.assert(
      fc.property(run, (luminaires) => {
        const terms = {
          resistanceOhmPerM: 0.02,
          feedsM: luminaires.map(([feedM]) => feedM),
          loadsA: luminaires.map(([, loadA]) => loadA),
        };
        const dropsV = throughFedDropsV(terms);
        const ownV = ownBoxDropsV(terms);
        dropsV.forEach((dropV, index) => {
          expect(dropV).toBeGreaterThanOrEqual((dropsV[index - 1] ?? 0) - 1e-9);
          expect(ownV[index]).toBeLessThanOrEqual(dropV + 1e-9);
        });
      }),
    );
  });
  test("needs a load for each feed, and none below zero", () => {
    expect(() => throughFedDropsV({ resistanceOhmPerM: 1, feedsM: [1], loadsA: [] })).toThrow(ArgumentError);
    expect(() => ownBoxDropsV({ resistanceOhmPerM: 1, feedsM: [-1], loadsA: [1] })).toThrow(ArgumentError);
    expect(() => ownBoxDropsV({ resistanceOhmPerM: NaN, feedsM: [], loadsA: [] })).toThrow(ArgumentError);
  });
});
