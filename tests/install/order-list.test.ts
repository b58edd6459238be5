import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ArgumentError, circuitSheet, hangSheet, orderList, spoolOrder } from "../../src/index.js";
import type { HangPoint, LengthLine, OrderOptions, OrderReceiver, PieceLine } from "../../src/index.js";

const figures = { stepM: 0.03, bodyHeightM: 0.4, slopeDeg: 0 };

function order(
  points: readonly (Partial<HangPoint> & { name: string; circuit?: string; feedM?: number })[],
  receivers: readonly OrderReceiver[],
  more: Partial<OrderOptions> = {},
) {
  const hung = points.map((point) => ({
    ...{ room: "loft", ceilingHeightM: 8, trimHeightM: 6, weightKg: 9 },
    ...point,
  }));
  const luminaires = points.map(({ name, circuit = "A", feedM }) => ({
    ...{ name, room: "loft", circuit, watts: 90, feedM: feedM ?? null },
  }));
  const circuits = [
    { circuit: "A", supplyV: 120, breakerA: 20, feed: "own-box" as const },
    { circuit: "B", supplyV: 120, breakerA: 15, feed: "through-fed" as const },
  ];
  return orderList({
    ...{ systems: [{ name: "one" }, { name: "two" }], receivers },
    hang: hangSheet({ points: hung, figures }),
    circuits: circuitSheet({ luminaires, circuits }),
    ...more,
  });
}

describe("the order list", () => {
  const points = ["P1", "P2", "P3", "P4", "P5"].map((name, index) => ({
    name,
    circuit: index < 3 ? "A" : "B",
  }));
  const receivers = [
    { name: "R1", system: "one", luminaires: ["P1", "P2"] },
    { name: "R2", system: "one", luminaires: ["P3"] },
    { name: "R3", system: "two", luminaires: ["P4", "P5"] },
  ];
  const { lines, gaps } = order(points, receivers);
  const piece = (item: string) => lines.find((line): line is PieceLine => line.item === item)!;
  const lengths = (item: string) =>
    lines.filter((line): line is LengthLine => line.item === item && line.kind === "lengths");

  test("counts by hand for five luminaires, three receivers, two systems, a tenth spare", () => {
    expect(
      lines.flatMap((line) =>
        line.kind === "pieces" ? [[line.item, line.neededCount, line.spareCount]] : [],
      ),
    ).toEqual([
      ["transmitter", 2, 1],
      ["transmitter-antenna", 2, 1],
      ["receiver", 3, 1],
      ["receiver-antenna", 3, 1],
      ["isolated-splitter", 1, 1],
      ["dmx-cable", 5, 1],
      ["terminator", 5, 1], // two transmitters' lines, three receivers'
      ["power-connector", 5, 1],
      ["hook", 10, 1],
    ]);
    expect(gaps).toEqual([]);
  });
  test("cord by gauge: 12 AWG for the 20 A circuit, 14 AWG for the 15 A one, each traced", () => {
    expect(lengths("cord").map(({ conductor, needs }) => [conductor, needs.map(({ name }) => name)])).toEqual(
      [
        ["12 AWG", ["P1", "P2", "P3"]],
        ["14 AWG", ["P4", "P5"]],
      ],
    );
    // drop 8 − 6 − 0.4 = 1.6: 53 links of 30 mm = 1.59 m each
    expect(lengths("chain")[0]!.order.lengthM).toBeCloseTo(5 * 1.59, 12);
    // 1.59 + 0.159 + 0.3 + 0.3
    expect(lengths("cord")[1]!.order.lengthM).toBeCloseTo(2 * 2.349, 12);
  });
  test("of a radio part there is a spare even at a share of nothing; of others there is none", () => {
    const none = order(points, receivers, { spareRatio: 0, antennasApart: false }).lines;
    const spares = none.flatMap((line) => (line.kind === "pieces" ? [[line.item, line.spareCount]] : []));
    expect(spares.filter(([, count]) => count !== 0)).toEqual([
      ["transmitter", 1],
      ["receiver", 1],
    ]);
    // 21 % of 10 hooks: whole units, upwards
    const some = order(points, receivers, { spareRatio: 0.21 }).lines;
    expect(some.find(({ item }) => item === "hook")).toMatchObject({
      neededCount: 10,
      spareCount: 3,
      orderCount: 13,
    });
  });
  test("a stated feed is the cord; stems take no hooks; slopes take swivels; spools hold whole pieces", () => {
    const mixed = order(
      [
        { name: "P1", feedM: 9 },
        { name: "P2", suspension: "stem" },
        { name: "P3", slopeDeg: 12, feedM: 9 },
      ],
      [{ name: "R1", system: "one", luminaires: ["P1", "P2", "P3"] }],
      { cordSpoolM: 15 },
    ).lines;
    const cord = mixed.find((line): line is LengthLine => line.item === "cord")!;
    expect(cord.needs[0]).toEqual({ name: "P1", lengthM: 9 });
    // 9, 9 and about 2.4 m: 22.3 m with waste in 15 m spools
    expect(cord.order.spoolCount).toBe(2);
    expect(mixed.find(({ item }) => item === "hook")).toMatchObject({ neededCount: 4 });
    expect(mixed.find(({ item }) => item === "swivel-canopy")).toMatchObject({
      neededCount: 1,
      needs: [{ name: "P3" }],
    });
    expect(mixed.map(({ item }) => item)).toEqual(expect.arrayContaining(["stem", "chain"]));
  });
  test("says what it lacks", () => {
    const lacking = order(
      [
        { name: "P1", ceilingHeightM: null },
        { name: "P2", circuit: "C" },
      ],
      [],
    );
    expect(lacking.gaps).toEqual([
      { item: "receiver", name: "P1" },
      { item: "suspension", name: "P1" },
      { item: "safety-cable", name: "P1" },
      { item: "cord", name: "P1" },
      { item: "receiver", name: "P2" },
      { item: "conductor", name: "P2" },
    ]);
    const cords = lacking.lines.filter(({ item }) => item === "cord") as LengthLine[];
    expect(cords.map(({ conductor, needs }) => [conductor, needs.map(({ name }) => name)])).toEqual([
      [null, ["P2"]],
    ]);
  });
  test("every line's needs add up to it, name rows that exist, and whole units are ordered", () => {
    const arbitrary = fc.array(
      fc.record({
        suspension: fc.constantFrom("chain", "wire-rope", "stem"),
        ceilingHeightM: fc.constantFrom(null, 6, 8, 9.5),
        slopeDeg: fc.constantFrom(0, 20),
        circuit: fc.constantFrom("A", "B", "C"),
      }),
      { minLength: 1, maxLength: 15 },
    );
    fc.assert(
      fc.property(arbitrary, fc.double({ min: 0, max: 1, noNaN: true }), (list, spareRatio) => {
        const named = list.map((fields, index) => ({ name: `P${index}`, ...fields })) as Parameters<
          typeof order
        >[0];
        const served = named.map(({ name }) => ({ name: `R ${name}`, system: "one", luminaires: [name] }));
        const known = new Set(
          [...named, ...served, { name: "one" }, { name: "two" }].map(({ name }) => name),
        );
        for (const line of order(named, served, { spareRatio, cordSpoolM: 12 }).lines) {
          expect(line.needs.filter(({ name }) => !known.has(name))).toEqual([]);
          if (line.kind === "pieces") {
            expect(line.needs.reduce((sum, { pieceCount }) => sum + pieceCount, 0)).toBe(line.neededCount);
            expect(line.orderCount).toBe(line.neededCount + line.spareCount);
            expect(Number.isInteger(line.orderCount)).toBe(true);
            expect(line.spareCount).toBeGreaterThanOrEqual(line.neededCount * spareRatio - 1e-6);
          } else
            expect(line.needs.reduce((sum, { lengthM }) => sum + lengthM, 0)).toBeCloseTo(
              line.order.lengthM,
              9,
            );
        }
      }),
      { numRuns: 100 },
    );
  });
  test("refuses two receivers of one name and a share below nothing", () => {
    const twice = [receivers[0]!, receivers[0]!];
    expect(() => order(points, twice)).toThrow(ArgumentError);
    expect(() => order(points, receivers, { spareRatio: -0.1 })).toThrow(ArgumentError);
    expect(piece("receiver").needs).toEqual(receivers.map(({ name }) => ({ name, pieceCount: 1 })));
  });
});

describe("spools", () => {
  /** Fewest spools by trying every place for every piece. */
  function fewest(pieces: readonly number[], spool: number): number {
    let best = pieces.length;
    const walk = (index: number, left: readonly number[]): void => {
      if (left.length >= best) return;
      if (index === pieces.length) {
        best = left.length;
        return;
      }
      left.forEach((rest, at) => {
        if (rest >= pieces[index]!)
          walk(
            index + 1,
            left.map((each, other) => (other === at ? rest - pieces[index]! : each)),
          );
      });
      walk(index + 1, [...left, spool - pieces[index]!]);
    };
    walk(0, []);
    return best;
  }

  test("hold every piece whole: never fewer than the fewest, at most 11/9 of it and 6/9 more", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 8 }), (pieces) => {
        const { spoolCount } = spoolOrder(pieces, 0, 30);
        const leastCount = fewest(pieces, 30);
        expect(spoolCount).toBeGreaterThanOrEqual(leastCount);
        expect(spoolCount).toBeLessThanOrEqual((11 / 9) * leastCount + 6 / 9);
      }),
    );
  });
  test("refuse what is no length", () => {
    expect(() => spoolOrder([-1], 0, null)).toThrow(ArgumentError);
    expect(() => spoolOrder([1], 0, 0)).toThrow(ArgumentError);
    expect(() => spoolOrder([1], NaN, 1)).toThrow(ArgumentError);
    expect(spoolOrder([], 0.1, 30)).toMatchObject({ lengthM: 0, spoolCount: 0 });
  });
});
