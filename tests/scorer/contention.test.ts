import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { takeTurns } from "../../src/scorer/index.js";
import type { Contender } from "../../src/scorer/index.js";
import { byLevel, contributorMw } from "../../src/scorer/contention.js";
import { arbitraryGroups } from "../helpers/arbitrary-groups.js";
import { shuffled } from "../helpers/shuffled.js";

function contender(
  emitter: string,
  inChannelDbm: number,
  airtimeRatio: number,
  airtimeAssumed: boolean,
): Contender {
  return { emitter, inChannelDbm, airtimeRatio, airtimeAssumed };
}

const onRatios = (contenders: readonly Contender[]): number[] =>
  takeTurns(contenders).map(({ onRatio }) => onRatio);

function expectRatios(actual: readonly number[], expected: readonly number[]): void {
  expect(actual.length).toBe(expected.length);
  for (const [index, ratio] of expected.entries()) expect(actual[index]).toBeCloseTo(ratio, 12);
}

// E(k) = min(1, max(U(k), A(k))), each on for E(k) − E(k−1): worked by hand from the definition.
describe("takeTurns, by hand", () => {
  it("adds assumed airtimes up to the whole of the time", () => {
    const assumed = [0.5, 0.25, 0.5, 0.1].map((airtime, k) => contender(`${k}`, -50 - k, airtime, true));
    expectRatios(onRatios(assumed), [0.5, 0.25, 0.25, 0]); // E: 0.5, 0.75, 1, 1
  });

  it("lets the greatest reported utilisation stand for the channel", () => {
    const reported = [0.2, 0.6, 0.4].map((airtime, k) => contender(`${k}`, -50 - k, airtime, false));
    expectRatios(onRatios(reported), [0.2, 0.4, 0]); // E: 0.2, 0.6, 0.6
  });

  it("takes the greater of the two where both kinds are there", () => {
    const mixed = [
      contender("a", -40, 0.1, true), // A 0.1          E 0.1
      contender("b", -50, 0.3, false), // U 0.3         E 0.3
      contender("c", -60, 0.25, true), // A 0.35        E 0.35
      contender("d", -70, 0.34, false), // U 0.34       E 0.35
      contender("e", -80, 0.9, false), // U 0.9         E 0.9
      contender("f", -90, 0.5, true), // A 0.85         E 0.9
    ];
    expectRatios(onRatios(mixed), [0.1, 0.2, 0.05, 0, 0.55, 0]);
  });

  it("leaves no time to the rest where the strongest is always on, and none to one that is never on", () => {
    const always = [contender("a", -40, 1, false), contender("b", -50, 0.5, true)];
    expectRatios(onRatios(always), [1, 0]);
    const never = [contender("a", -40, 0, false), contender("b", -50, 0.5, true)];
    expectRatios(onRatios(never), [0, 0.5]);
  });

  it("orders by level, strongest first, and equal levels by name", () => {
    const order = takeTurns([
      contender("c", -60, 0.1, true),
      contender("b", -60 + 1e-11, 0.1, true),
      contender("z", -40, 0.1, true),
      contender("a", -Infinity, 0.1, true),
    ]);
    expect(order.map(({ emitter }) => emitter)).toEqual(["z", "b", "c", "a"]);
  });

  it("has nothing to say of an empty group", () => {
    expect(takeTurns([])).toEqual([]);
  });
});

describe("takeTurns, invariants", () => {
  it("gives each a share of 0..1, together at most the whole of the time", () => {
    fc.assert(
      fc.property(arbitraryGroups(1, 12), (groups) => {
        for (const group of groups) {
          for (const { onRatio } of group) expect(onRatio).toBeGreaterThanOrEqual(0);
          expect(group.reduce((sum, { onRatio }) => sum + onRatio, 0)).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
    );
  });

  it("doesn't depend on the order of the contenders", () => {
    fc.assert(
      fc.property(arbitraryGroups(1, 12), fc.nat(), (groups, seed) => {
        for (const group of groups) expect(takeTurns(shuffled(group, seed))).toEqual(group);
      }),
    );
  });

  it("never lowers what is at or above a level when one more joins", () => {
    const joining = fc.record({
      inChannelDbm: fc.integer({ min: -120, max: -40 }),
      airtimeRatio: fc.double({ min: 0, max: 1, noNaN: true }),
      airtimeAssumed: fc.boolean(),
    });
    const atOrAbove = (group: readonly Contender[], levelDbm: number): number =>
      takeTurns(group).reduce(
        (sum, { inChannelDbm, onRatio }) => sum + (inChannelDbm >= levelDbm ? onRatio : 0),
        0,
      );
    fc.assert(
      fc.property(arbitraryGroups(1, 8), joining, (groups, more) => {
        const group = groups[0] ?? [];
        const grown = [...group, { emitter: "new", ...more }];
        for (const { inChannelDbm } of grown)
          expect(atOrAbove(grown, inChannelDbm)).toBeGreaterThanOrEqual(
            atOrAbove(group, inChannelDbm) - 1e-12,
          );
      }),
    );
  });
});

describe("byLevel and contributorMw", () => {
  it("sorts by nothing finer than 1e-9 dB", () => {
    const [a, b] = [contender("a", -60, 0, true), contender("b", -60 + 4e-10, 0, true)];
    expect(byLevel(a, b)).toBeLessThan(0);
    expect(byLevel(a, { ...b, inChannelDbm: -60 + 2e-9 })).toBeGreaterThan(0);
    expect(byLevel(b, a)).toBeGreaterThan(0);
    expect(byLevel({ ...b, inChannelDbm: -60 + 2e-9 }, a)).toBeLessThan(0);
    expect(byLevel(a, a)).toBe(0);
  });

  it("is a thousandth of a milliwatt at −30 dBm and nothing at −Infinity", () => {
    expect(contributorMw(contender("a", -30, 0, true))).toBeCloseTo(1e-3, 15);
    expect(contributorMw(contender("a", -Infinity, 0, true))).toBe(0);
  });
});
