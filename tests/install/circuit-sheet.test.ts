import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ArgumentError, CIRCUIT_FLAG_WORDS, circuitSheet } from "../../src/index.js";
import type { Circuit, CircuitLuminaire, CircuitOptions, CircuitRow } from "../../src/index.js";

const load = (
  name: string,
  watts: number | null,
  more: Partial<CircuitLuminaire> = {},
): CircuitLuminaire => ({
  ...{ name, room: "loft", circuit: "A", watts, feedM: 3, emergency: "no" },
  ...more,
});
/** Nothing left to ask. */
const known: Circuit = {
  ...{ circuit: "A", supplyV: 120, breakerA: 20, control: "none", feed: "own-box", earth: "yes" },
  ...{ sharedNeutral: "no", mostDriversCount: 10 },
};
const rowOf = (
  loads: readonly CircuitLuminaire[],
  circuit: Partial<Circuit> = {},
  more: Partial<CircuitOptions> = {},
): CircuitRow =>
  circuitSheet({
    ...{ luminaires: loads, circuits: [{ ...known, ...circuit }], region: "US", powerFactorRatio: 1 },
    ...more,
  }).rows[0]!;

describe("load against breaker", () => {
  test("by hand: 6 × 320 W on 120 V is 16 A; by 1.25 it is 20 A, within 20 A", () => {
    const loads = Array.from({ length: 6 }, (_, index) => load(`P${index}`, 320));
    const row = rowOf(loads);
    expect(row).toMatchObject({ watts: 1920, verdict: "within", flags: [] });
    expect([row.loadA!.toFixed(9), row.countedA!.toFixed(9)]).toEqual(["16.000000000", "20.000000000"]);
    const over = rowOf([...loads, load("P6", 1)]);
    expect([over.verdict, over.flags]).toEqual(["beyond", ["beyond-breaker"]]);
  });
  test("the power factor counts: 0.9 assumed, the luminaire's own where given", () => {
    const loads = [load("P1", 540), load("P2", 120, { powerFactorRatio: 0.5 })];
    const luminaires = { luminaires: loads, circuits: [known] };
    const sheet = circuitSheet({ ...luminaires, region: "CA" });
    expect(sheet.rows[0]!.loadA).toBeCloseTo(5 + 2, 12);
    expect([sheet.powerFactorAssumed, sheet.continuousFactorRatio]).toEqual([true, 1.25]);
    expect(circuitSheet({ ...luminaires, powerFactorRatio: 0.9 }).powerFactorAssumed).toBe(false);
  });
  test("no factor is stated elsewhere: 1, and asked for", () => {
    const sheet = circuitSheet({ luminaires: [load("P1", 240)], circuits: [known], region: "EU" });
    expect([sheet.continuousFactorRatio, sheet.continuousFactorStatus]).toEqual([1, "not-given"]);
    expect(sheet.rows[0]!.flags).toEqual(["ask-continuous-factor"]);
    const given = circuitSheet({
      luminaires: [load("P1", 240)],
      circuits: [known],
      continuousFactorRatio: 1.1,
    });
    expect([given.continuousFactorStatus, given.rows[0]!.flags]).toEqual(["given", []]);
  });
  test("what isn't known is not judged, except that too much is too much", () => {
    expect(rowOf([load("P1", 100), load("P2", null)])).toMatchObject({
      verdict: "not-judged",
      unknownLoads: ["P2"],
    });
    expect(rowOf([load("P1", 3000), load("P2", null)]).verdict).toBe("beyond");
    expect(rowOf([load("P1", 100)], { breakerA: null })).toMatchObject({
      ...{ verdict: "not-judged", choice: { conductor: null, gap: "breaker-not-given" } },
    });
    expect(rowOf([load("P1", 100)], { supplyV: null })).toMatchObject({ loadA: null, verdict: "not-judged" });
  });
});

describe("the conductor", () => {
  const name = (row: CircuitRow) => [row.choice.conductor?.name ?? row.choice.gap, row.choice.decidedBy];

  test("by use: 16 AWG on its own box, 14 AWG through-fed; a feed that isn't known counts as through-fed", () => {
    expect(name(rowOf([load("P1", 50)], { breakerA: 10 }))).toEqual(["16 AWG", "use"]);
    expect(name(rowOf([load("P1", 50)], { breakerA: 10, feed: "through-fed" }))).toEqual(["14 AWG", "use"]);
    expect(name(rowOf([load("P1", 50)], { breakerA: 10, feed: "unknown" }))).toEqual(["14 AWG", "use"]);
  });
  test("by the breaker, not the load: NEC Table 400.5(A)(1) gives 18 A for 14 AWG, 25 A for 12 AWG", () => {
    expect(name(rowOf([load("P1", 50)], { breakerA: 15 }))).toEqual(["14 AWG", "ampacity"]);
    expect(name(rowOf([load("P1", 50)], { breakerA: 20 }))).toEqual(["12 AWG", "ampacity"]);
    // Three loaded conductors, from memory: 15 A for 14 AWG, 20 A for 12, 25 A for 10.
    const three = { loadedCount: 3 } as const;
    expect(name(rowOf([load("P1", 50)], { breakerA: 15 }, three))).toEqual(["14 AWG", "ampacity"]);
    expect(name(rowOf([load("P1", 50)], { breakerA: 25 }, three))).toEqual(["10 AWG", "ampacity"]);
    expect(name(rowOf([load("P1", 50)], { breakerA: 30 }))).toEqual(["beyond-table", null]);
  });
  test("by voltage drop, by hand: 10 A over 20 m there and back on 120 V", () => {
    // 12 AWG: 2·20 m·6.496 Ω/km·10 A = 2.598 V = 2.17 %; 14 AWG 4.12 V = 3.43 %
    const loads = [load("P1", 1200, { feedM: 20 })];
    const row = rowOf(loads, { breakerA: 15 });
    expect(name(row)).toEqual(["12 AWG", "drop"]);
    expect(row.drops[0]!.dropV).toBeCloseTo(2.598, 3);
    expect(row.greatestDropRatio).toBeCloseTo(0.02165, 5);
    expect(name(rowOf(loads, { breakerA: 15 }, { mostDropRatio: 0.035 }))).toEqual(["14 AWG", "ampacity"]);
    // 1.5 V lost before the box: 12 AWG comes to 3.4 %, 10 AWG (4.068 Ω/km) to 1.627 + 1.5 V = 2.6 %
    expect(name(rowOf(loads, { breakerA: 15, upstreamDropV: 1.5 }))).toEqual(["10 AWG", "drop"]);
    const far = rowOf([load("P1", 1200, { feedM: 200 })], { breakerA: 15 });
    expect([name(far), far.flags]).toEqual([["beyond-table", null], ["beyond-drop"]]);
  });
  test("in mm²: the next size with at least the gauge's area", () => {
    const metric = { sizes: "mm2" } as const;
    expect(name(rowOf([load("P1", 50)], { supplyV: 230, breakerA: 10 }, metric))).toEqual(["1.5 mm²", "use"]);
    const fed = { supplyV: 230, breakerA: 16, feed: "through-fed" } as const;
    expect(name(rowOf([load("P1", 50)], fed, metric))).toEqual(["2.5 mm²", "use"]);
  });
  test("a through-fed run loses by all that comes after; unknown lengths are asked for, not taken as short", () => {
    const loads = [load("P1", 240, { feedM: 10 }), load("P2", 240, { feedM: 5 })];
    const row = rowOf(loads, { feed: "through-fed" });
    // 12 AWG, 2 A each: 2·6.496e-3·(10·4) = 0.5197 V, and 2·6.496e-3·(5·2) = 0.1299 V more
    expect(row.drops.map(({ dropV }) => Number(dropV.toFixed(3)))).toEqual([0.52, 0.65]);
    const unknown = rowOf([load("P1", 240, { feedM: null })]);
    expect([unknown.choice.isDropJudged, unknown.drops, unknown.flags]).toEqual([
      false,
      [],
      ["ask-feed-length"],
    ]);
    expect(unknown.choice.conductor!.name).toBe("12 AWG");
  });
  test("no drop is judged with a load unknown; a feed unknown is judged as through-fed, the greater drop", () => {
    const open = rowOf([load("P1", 240), load("P2", null)]);
    expect([open.choice.isDropJudged, open.greatestDropRatio, open.flags]).toEqual([
      false,
      null,
      ["ask-watts"],
    ]);
    const loads = [load("P1", 240, { feedM: 10 }), load("P2", 240, { feedM: 5 })];
    const { drops } = rowOf(loads, { feed: "unknown" });
    expect(drops).toEqual(rowOf(loads, { feed: "through-fed" }).drops);
    expect(drops[1]!.dropV).toBeGreaterThan(rowOf(loads).drops[1]!.dropV);
  });
  test("never gets thinner by a bigger breaker, a longer cord or more load", () => {
    const figure = fc.record({
      watts: fc.integer({ min: 0, max: 900 }),
      feedM: fc.integer({ min: 0, max: 60 }),
      breakerA: fc.constantFrom(10, 15, 20, 25),
    });
    const areaOf = (f: { watts: number; feedM: number; breakerA: number }): number =>
      rowOf([load("P1", f.watts, { feedM: f.feedM })], { breakerA: f.breakerA, feed: "through-fed" }).choice
        .conductor?.areaMm2 ?? Infinity;
    fc.assert(
      fc.property(figure, figure, (a, b) => {
        const more = {
          watts: Math.max(a.watts, b.watts),
          feedM: Math.max(a.feedM, b.feedM),
          breakerA: Math.max(a.breakerA, b.breakerA),
        };
        expect(areaOf(more)).toBeGreaterThanOrEqual(areaOf(a));
      }),
    );
  });
});

describe("what the electrician is told and asked", () => {
  test.each(["dimmer", "wall-switch", "sensor", "time-clock", "transfer-switch"] as const)(
    "a %s is flagged",
    (control) => {
      expect(rowOf([load("P1", 50)], { control }).flags).toEqual([control]);
      expect(CIRCUIT_FLAG_WORDS[control]).toContain(control.replace("-", " ").replace("dimmer", "DIMMER"));
    },
  );
  test("a circuit that only a luminaire names is unknown in everything", () => {
    const { rows, withoutCircuit } = circuitSheet({
      luminaires: [load("P1", 50), load("P2", 50, { circuit: null })],
      region: "US",
    });
    expect(rows.map(({ circuit, flags }) => [circuit, flags])).toEqual([
      [
        "A",
        [
          ...["control-unknown", "ask-supply", "ask-breaker", "ask-feed", "ask-inrush", "ask-earth"],
          "ask-shared-neutral",
        ],
      ],
    ]);
    expect(withoutCircuit).toEqual(["P2"]);
  });
  test("no earth, a shared neutral, more drivers than the maker allows", () => {
    const flags = rowOf([load("P1", 50), load("P2", 50)], {
      earth: "no",
      sharedNeutral: "yes",
      mostDriversCount: 1,
    }).flags;
    expect(flags).toEqual(["beyond-drivers", "no-earth", "shared-neutral"]);
  });
  test("each load is on one circuit or on none; sums are the loads'", () => {
    const arbitraryLoad = fc.record({
      circuit: fc.constantFrom(null, "A", "B", "C"),
      watts: fc.constantFrom(null, 40, 165),
    });
    fc.assert(
      fc.property(fc.array(arbitraryLoad, { maxLength: 20 }), (list) => {
        const luminaires = list.map((fields, index) => load(`P${index}`, fields.watts, fields));
        const { rows, withoutCircuit } = circuitSheet({ luminaires, circuits: [known] });
        const told = [...rows.flatMap((row) => row.luminaires), ...withoutCircuit];
        expect([...told].sort()).toEqual(luminaires.map(({ name }) => name).sort());
        for (const row of rows) {
          const own = luminaires.filter(({ circuit }) => circuit === row.circuit);
          expect(row.watts).toBe(own.reduce((sum, { watts }) => sum + (watts ?? 0), 0));
        }
      }),
    );
  });
  test("refuse what is no figure", () => {
    expect(() => rowOf([load("P1", -1)])).toThrow(ArgumentError);
    expect(() => rowOf([load("P1", 1), load("P1", 1)])).toThrow(ArgumentError);
    expect(() => rowOf([load("P1", 1)], { supplyV: 0 })).toThrow(ArgumentError);
    expect(() => rowOf([load("P1", 1)], {}, { powerFactorRatio: 0 })).toThrow(ArgumentError);
    expect(() => rowOf([load("P1", 1)], {}, { powerFactorRatio: 1.1 })).toThrow(ArgumentError);
    expect(() => rowOf([load("P1", 1)], {}, { continuousFactorRatio: 0.8 })).toThrow(ArgumentError);
    expect(() => rowOf([load("P1", 1)], { mostDriversCount: 1.5 })).toThrow(ArgumentError);
  });
});
