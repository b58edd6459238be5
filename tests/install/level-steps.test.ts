import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ArgumentError, levelSteps, unevenOffsetsM } from "../../src/index.js";

const drops = fc.array(
  fc.integer({ min: 0, max: 4000 }).map((mm) => mm / 1000),
  { minLength: 1, maxLength: 6 },
);
const step = fc.constantFrom(0.02, 0.025, 0.03175, 0.05);

function spreadM(errorsM: readonly number[]): number {
  return Math.max(...errorsM) - Math.min(...errorsM);
}

/** Every way to give each whole steps, at trim or up to two above it. */
function everySpreadM(dropsM: readonly number[], stepM: number): number {
  const choices = dropsM.map((dropM) =>
    [0, 1, 2].map((fewer) => Math.floor(dropM / stepM + 1e-9) - fewer).filter((count) => count >= 0),
  );
  const walk = (index: number, errorsM: readonly number[]): number =>
    index === dropsM.length
      ? spreadM(errorsM)
      : Math.min(
          ...choices[index]!.map((count) => walk(index + 1, [...errorsM, dropsM[index]! - count * stepM])),
        );
  return walk(0, []);
}

describe("whole links for a row", () => {
  const errors = (dropsM: readonly number[], stepM: number, levelsRows: boolean, mayHangBelowTrim = false) =>
    levelSteps(dropsM, stepM, { levelsRows, mayHangBelowTrim }).map((count, i) => dropsM[i]! - count * stepM);

  test("by hand: 1.001 m and 1.024 m in links of 25 mm come level to 2 mm, a link higher", () => {
    expect(errors([1.001, 1.024], 0.025, false).map((m) => Math.round(m * 1000))).toEqual([1, 24]);
    expect(errors([1.001, 1.024], 0.025, true).map((m) => Math.round(m * 1000))).toEqual([26, 24]);
    // Told that below is allowed, a link lower is nearer: 1 mm above and 1 mm below.
    expect(errors([1.001, 1.024], 0.025, true, true).map((m) => Math.round(m * 1000))).toEqual([1, -1]);
    expect(errors([1.001, 1.024], 0.025, false, true).map((m) => Math.round(m * 1000))).toEqual([1, -1]);
  });
  test("a drop of whole links is filled whole, whatever binary fractions make of it", () => {
    for (let count = 0; count <= 400; count++)
      expect(levelSteps([count * 0.03], 0.03, { levelsRows: true, mayHangBelowTrim: false })).toEqual([
        count,
      ]);
  });
  test("of two ways as level as each other the lower; a luminaire without a link loses none", () => {
    const options = { levelsRows: true, mayHangBelowTrim: false };
    expect(levelSteps([1, 1.0125], 0.025, options)).toEqual([40, 40]);
    expect(levelSteps([0.001, 0.024], 0.025, options)).toEqual([0, 0]);
  });
  test("never hang below trim unless told, and less than a link above it where nothing is levelled", () => {
    fc.assert(
      fc.property(drops, step, fc.boolean(), (dropsM, stepM, levelsRows) => {
        for (const errorM of errors(dropsM, stepM, levelsRows)) {
          expect(errorM).toBeGreaterThanOrEqual(-1e-9);
          expect(errorM).toBeLessThan((levelsRows ? 2 : 1) * stepM);
        }
      }),
    );
  });
  test("levelled, no choice of links makes the spread smaller (exhaustive search)", () => {
    fc.assert(
      fc.property(drops, step, (dropsM, stepM) => {
        const levelM = spreadM(errors(dropsM, stepM, true));
        expect(levelM).toBeLessThanOrEqual(spreadM(errors(dropsM, stepM, false)) + 1e-9);
        // Who has no link left can't lose one; the search may then do better by raising others.
        if (dropsM.every((dropM) => dropM >= 2 * stepM))
          expect(levelM).toBeCloseTo(everySpreadM(dropsM, stepM), 8);
      }),
      { numRuns: 300 },
    );
  });
  test("allowed below, none alone is farther from trim than half a link", () => {
    fc.assert(
      fc.property(drops, step, (dropsM, stepM) => {
        for (const errorM of errors(dropsM, stepM, false, true))
          expect(Math.abs(errorM)).toBeLessThanOrEqual(stepM / 2 + 1e-8);
      }),
    );
  });
  test("refuse a step of nothing and a drop below nothing", () => {
    const options = { levelsRows: true, mayHangBelowTrim: false };
    expect(() => levelSteps([1], 0, options)).toThrow(ArgumentError);
    expect(() => levelSteps([-1], 1, options)).toThrow(ArgumentError);
    expect(levelSteps([], 1, options)).toEqual([]);
  });
});

describe("uneven to the eye", () => {
  test("is who is outside the band that holds the most", () => {
    const inMm = (heightsMm: readonly number[]) =>
      unevenOffsetsM(
        heightsMm.map((mm) => mm / 1000),
        0.02,
      ).map((m) => Math.round(m * 1000));
    expect(inMm([0, 5, 20])).toEqual([0, 0, 0]);
    expect(inMm([0, 5, 26])).toEqual([0, 0, 21]);
    expect(inMm([30, 29, 0, 31])).toEqual([0, 0, -29, 0]);
    // A tie goes to the lower band: nearer to trim.
    expect(inMm([0, 50])).toEqual([0, 50]);
    expect(unevenOffsetsM([], 0.02)).toEqual([]);
  });
  test("is somebody exactly where highest less lowest is beyond the tolerance", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 90 }), { minLength: 1, maxLength: 8 }), (heightsMm) => {
        const offsets = unevenOffsetsM(
          heightsMm.map((mm) => mm / 1000),
          0.02,
        );
        const isEven = Math.max(...heightsMm) - Math.min(...heightsMm) <= 20;
        expect(offsets.every((offsetM) => offsetM === 0)).toBe(isEven);
      }),
    );
  });
});
