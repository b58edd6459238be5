import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { assignChannels, assignEachAlone, evaluateAssignment } from "../../src/venue/index.js";
import type { AssignmentProblem, ChannelAssignment } from "../../src/venue/index.js";
import { randomHall, randomReceivers, randomVenue, withCaps } from "../helpers/arbitrary-assignments.js";
import { bruteForceAssignment } from "../helpers/brute-force-assignment.js";

interface Instance {
  readonly id: string;
  readonly wanted_dbm: number[];
  readonly required_ci_db: number[];
  readonly base_mw: number[][];
  readonly coupling_mw: number[][];
  readonly overlap: number[];
  readonly optimum: { readonly value_db: number; readonly assignments: number[][] };
  readonly each_alone: { readonly assignment: number[]; readonly value_db: number };
}

const rising = (valuesDb: readonly number[]): number[] => [...valuesDb].sort((a, b) => a - b);

/** Values by the definition, not by what the plan says of itself. */
function expectTrue(problem: AssignmentProblem, plan: ChannelAssignment): void {
  const { valuesDb, minMarginDb } = evaluateAssignment(problem, plan.assignment);
  expect(plan.valuesDb).toEqual(valuesDb);
  expect(plan.minMarginDb).toBe(minMarginDb);
  expect(Math.min(...valuesDb)).toBe(minMarginDb);
}

describe("assignChannels against instances of which every assignment was evaluated elsewhere", () => {
  // fixtures/reference/README.md, channel_assignment.json
  const url = new URL("../../fixtures/reference/channel_assignment.json", import.meta.url);
  const { instances } = JSON.parse(readFileSync(url, "utf8")) as { instances: Instance[] };
  it("has all six", () => {
    expect(instances.map(({ id }) => id)).toEqual(["ca01", "ca02", "ca03", "ca04", "ca05", "ca06"]);
  });
  it.each(instances.map((instance) => [instance.id, instance] as const))("%s", (_id, instance) => {
    const problem = {
      wantedDbm: instance.wanted_dbm,
      requiredCiDb: instance.required_ci_db,
      baseMw: instance.base_mw,
      couplingMw: instance.coupling_mw,
      overlap: instance.overlap,
    };
    const plan = assignChannels(problem);
    expectTrue(problem, plan);
    expect(Math.abs(plan.minMarginDb - instance.optimum.value_db)).toBeLessThan(1e-6);
    expect([plan.optimal, plan.boundDb]).toEqual([true, plan.minMarginDb]);
    expect(instance.optimum.assignments).toContainEqual(plan.assignment);
    const alone = assignEachAlone(problem);
    expect(alone).toEqual(instance.each_alone.assignment);
    const aloneDb = evaluateAssignment(problem, alone).minMarginDb;
    expect(Math.abs(aloneDb - instance.each_alone.value_db)).toBeLessThan(1e-6);
  });
});

describe("assignChannels against brute force, every value from the smallest up and the smallest of equals", () => {
  const sizes: [systemCount: number, channelCount: number, seedCount: number][] = [
    [1, 5, 3],
    [2, 13, 6],
    [3, 9, 10],
    [4, 13, 8],
    [5, 6, 10],
    [6, 5, 10],
    [6, 13, 2],
  ];
  const cases = sizes.flatMap(([systems, channels, seeds]) =>
    Array.from({ length: seeds }, (_, seed) => [systems, channels, seed + 1] as const),
  );
  const compare = (problem: AssignmentProblem): void => {
    const plan = assignChannels(problem);
    const brute = bruteForceAssignment(problem);
    expectTrue(problem, plan);
    rising(plan.valuesDb).forEach((value, k) =>
      expect(Math.abs(value - brute.valuesDb[k]!)).toBeLessThan(1e-8),
    );
    expect(plan.assignment).toEqual(brute.assignment);
    expect([plan.optimal, plan.provedCount, plan.smallestOfEquals]).toEqual([
      true,
      plan.valuesDb.length,
      true,
    ]);
  };
  it.each(cases)("a venue of %i systems, %i channels, seed %i", (systems, channels, seed) => {
    compare(randomVenue(seed, systems, channels));
  });
  it.each(cases.filter(([systems, channels]) => systems * channels < 60))(
    "with caps, %i systems, %i channels, seed %i",
    (systems, channels, seed) => {
      compare(withCaps(randomVenue(seed, systems, channels), seed));
    },
  );
  it.each(cases)(
    "several receivers a system, %i systems, %i channels, seed %i",
    (systems, channels, seed) => {
      compare(randomReceivers(seed, systems, channels));
    },
  );
  it.each(cases.filter(([systems, channels]) => systems * channels < 60))(
    "several receivers with caps of their own, %i systems, %i channels, seed %i",
    (systems, channels, seed) => {
      compare(withCaps(randomReceivers(seed, systems, channels), seed));
    },
  );
  it.each([1, 2, 3])("several receivers a system in 5 interchangeable pairs of rooms, seed %i", (seed) => {
    const { systemOf, couplingMw, baseMw, ...one } = randomReceivers(seed, 2, 6);
    const twice = <T>(rows: readonly T[]): T[] => [...rows, ...rows];
    compare({
      ...one,
      wantedDbm: twice(one.wantedDbm),
      requiredCiDb: twice(one.requiredCiDb),
      baseMw: twice(baseMw),
      systemOf: [...systemOf!, ...systemOf!.map((r) => r + 2)],
      couplingMw: [
        ...couplingMw.map((row) => [...row, 3e-8, 3e-8]),
        ...couplingMw.map((row) => [3e-8, 3e-8, ...row]),
      ],
    });
  });
  it.each([1, 2, 3, 4])("a hall of 5 systems, 6 channels, seed %i", (seed) => {
    compare(randomHall(seed, 5, 6));
  });
  it("six systems that can change places, flat band: the order of index", () => {
    const problem: AssignmentProblem = {
      wantedDbm: Array<number>(6).fill(-60),
      requiredCiDb: Array<number>(6).fill(14),
      baseMw: Array.from({ length: 6 }, () => Array<number>(6).fill(1e-9)),
      couplingMw: Array.from({ length: 6 }, (_, r) =>
        Array.from({ length: 6 }, (_, o) => (r === o ? 0 : 1e-7)),
      ),
      overlap: [1, 0.05, 0.004, 0.0006, 0.0001, 0.00001],
    };
    compare(problem);
    expect(assignChannels(problem).assignment).toEqual([0, 1, 2, 3, 4, 5]);
  });
  it.each([1, 2, 3, 4, 5])(
    "without refinement: the smallest of all with the best smallest value, seed %i",
    (seed) => {
      const problem = withCaps(randomVenue(seed, 4, 7), seed);
      const plan = assignChannels(problem, { refine: false });
      const brute = bruteForceAssignment(problem, { least: true });
      expect(plan.assignment).toEqual(brute.assignment);
      expect(Math.abs(plan.minMarginDb - brute.valuesDb[0]!)).toBeLessThan(1e-8);
      expect([plan.optimal, plan.provedCount]).toEqual([true, 1]);
    },
  );
  it.each([1, 2, 3, 4, 5, 6])("with forbidden and fixed channels, seed %i", (seed) => {
    const allowedChannels = [[0, 2, 5], undefined, [1, 3, 4, 6], undefined, [6, 0]];
    const problem = {
      ...randomVenue(seed, 5, 7),
      allowedChannels,
      fixedChannels: [2, undefined, undefined, seed],
    };
    const whole = { ...problem, fixedChannels: [...problem.fixedChannels, undefined] };
    compare(whole);
    expect(assignChannels(whole).assignment[3]).toBe(seed);
  });
  it.each([1, 2, 3, 4, 5, 6])("with systems of two profiles, each with its own channels, seed %i", (seed) => {
    const venue = randomVenue(seed, 5, 8);
    // Even systems 8 channels 5 MHz apart, odd ones 5 channels 9 MHz apart and half as exposed.
    const centreMhz = (system: number, channel: number): number => (system % 2 === 0 ? 5 : 9) * channel;
    const problem: AssignmentProblem = {
      ...venue,
      baseMw: venue.baseMw.map((row, r) => (r % 2 === 0 ? row : row.slice(0, 5))),
      overlap: [],
      overlapOf: (r, c, o, d) =>
        (r % 2 === 0 ? 1 : 0.5) * 10 ** (-Math.abs(centreMhz(r, c) - centreMhz(o, d)) / 5),
    };
    compare(problem);
  });
});

describe("assignChannels with several receivers a system", () => {
  const problems = [21, 22, 23, 24].map((seed) => randomReceivers(seed, 6, 9));

  it("the same, with one row a system said and left unsaid", () => {
    for (const seed of [1, 2, 3]) {
      const venue = randomVenue(seed, 6, 9);
      const systemOf = venue.wantedDbm.map((_, r) => r);
      expect(assignChannels({ ...venue, systemOf })).toEqual(assignChannels(venue));
    }
  });
  it("a receiver that is better off in all respects changes nothing", () => {
    for (const problem of problems) {
      const better = (rows: readonly number[], by: number): number[] => [...rows, rows[0]! + by];
      const wider = {
        ...problem,
        wantedDbm: better(problem.wantedDbm, 1),
        requiredCiDb: better(problem.requiredCiDb, 0),
        baseMw: [...problem.baseMw, problem.baseMw[0]!],
        couplingMw: [...problem.couplingMw, problem.couplingMw[0]!.map((powerMw) => powerMw / 2)],
        systemOf: better(problem.systemOf!, 0),
      };
      expect(assignChannels(wider)).toEqual(assignChannels(problem));
    }
  });
  it("names the receiver at which each system is weakest", () => {
    for (const problem of problems) {
      const { assignment, valuesDb, weakestRows } = assignChannels(problem);
      weakestRows.forEach((row, r) => {
        expect(problem.systemOf![row]).toBe(r);
        const totalMw = assignment.reduce(
          (sum, channel, o) =>
            o === r
              ? sum
              : sum + problem.couplingMw[row]![o]! * problem.overlap[Math.abs(assignment[r]! - channel)]!,
          problem.baseMw[row]![assignment[r]!]!,
        );
        const valueDb = problem.wantedDbm[row]! - 10 * Math.log10(totalMw) - problem.requiredCiDb[row]!;
        expect(valuesDb[r]).toBeCloseTo(valueDb, 9);
      });
    }
  });
  it.each([
    ["systemOf", [0, 1]],
    ["systemOf[2]", [0, 1, -1]],
    ["systemOf[2]", [0, 1, 3]],
    ["systemOf", [0, 2, 2]],
    ["baseMw[1]", [0, 0, 1]],
  ])("refuses %s of %j", (argument, systemOf) => {
    const venue = randomVenue(1, 3, 5);
    const baseMw = venue.baseMw.map((row, k) => (k === 1 ? row.slice(1) : row));
    const couplingMw = venue.couplingMw.map((row) => row.slice(0, Math.max(...systemOf) + 1));
    expect(() => assignChannels({ ...venue, baseMw, couplingMw, systemOf })).toThrow(
      expect.objectContaining({ name: "ArgumentError", argument }) as Error,
    );
  });
});

describe("assignChannels, what must not change the optimum", () => {
  const venues = [11, 12, 13, 14, 15].map((seed) => randomVenue(seed, 8, 11));
  const least = (problem: AssignmentProblem): number =>
    assignChannels(problem, { refine: false }).minMarginDb;

  it("the order of systems", () => {
    for (const venue of venues) {
      const order = [3, 7, 0, 5, 1, 6, 2, 4];
      const moved = {
        ...venue,
        wantedDbm: order.map((r) => venue.wantedDbm[r]!),
        requiredCiDb: order.map((r) => venue.requiredCiDb[r]!),
        baseMw: order.map((r) => venue.baseMw[r]!),
        couplingMw: order.map((r) => order.map((o) => venue.couplingMw[r]![o]!)),
      };
      const [a, b] = [assignChannels(venue), assignChannels(moved)];
      rising(a.valuesDb).forEach((value, k) => expect(value).toBeCloseTo(rising(b.valuesDb)[k]!, 8));
    }
  });
  it("the direction of channel numbers", () => {
    for (const venue of venues) {
      const mirrored = { ...venue, baseMw: venue.baseMw.map((row) => [...row].reverse()) };
      const [a, b] = [assignChannels(venue), assignChannels(mirrored)];
      rising(a.valuesDb).forEach((value, k) => expect(value).toBeCloseTo(rising(b.valuesDb)[k]!, 8));
    }
  });
  it("and what may only lower it: another system, a channel less, more coupling", () => {
    for (const venue of venues) {
      const whole = least(venue);
      const without = {
        ...venue,
        wantedDbm: venue.wantedDbm.slice(0, 7),
        requiredCiDb: venue.requiredCiDb.slice(0, 7),
        baseMw: venue.baseMw.slice(0, 7),
        couplingMw: venue.couplingMw.slice(0, 7).map((row) => row.slice(0, 7)),
      };
      expect(least(without)).toBeGreaterThanOrEqual(whole - 1e-8);
      const forbidden = venue.wantedDbm.map((_, r) => (r === 2 ? [0, 1, 2, 3, 4, 6, 7] : undefined));
      expect(least({ ...venue, allowedChannels: forbidden })).toBeLessThanOrEqual(whole + 1e-8);
      const louder = venue.couplingMw.map((row) => row.map((powerMw) => 2 * powerMw));
      expect(least({ ...venue, couplingMw: louder })).toBeLessThanOrEqual(whole + 1e-8);
      expect(evaluateAssignment(venue, assignEachAlone(venue)).minMarginDb).toBeLessThanOrEqual(whole + 1e-8);
    }
  });
  it("a change of all levels by the same dB moves every value by it", () => {
    for (const venue of venues) {
      const stronger = { ...venue, wantedDbm: venue.wantedDbm.map((dbm) => dbm + 3.7) };
      expect(assignChannels(stronger).assignment).toEqual(assignChannels(venue).assignment);
      expect(least(stronger)).toBeCloseTo(least(venue) + 3.7, 8);
    }
  });
});

describe("assignChannels ended early", () => {
  const instances = [1, 2, 3].flatMap((seed) => [randomHall(seed, 7, 9), randomVenue(seed, 12, 9)]);

  it("gives a bound that holds, and a smaller one with more effort", () => {
    for (const problem of instances) {
      const optimum = assignChannels(problem, { refine: false });
      expect(optimum.optimal).toBe(true);
      let looserDb = Infinity;
      for (const nodeLimitCount of [0, 10, 100, 1000]) {
        const plan = assignChannels(problem, { nodeLimitCount });
        expectTrue(problem, plan);
        expect(plan.minMarginDb).toBeLessThanOrEqual(optimum.minMarginDb + 1e-8);
        expect(plan.boundDb).toBeGreaterThanOrEqual(optimum.minMarginDb - 1e-8);
        if (plan.optimal) expect(plan.minMarginDb).toBeCloseTo(optimum.minMarginDb, 8);
        expect(plan.boundDb).toBeLessThanOrEqual(looserDb + 1e-8);
        looserDb = plan.boundDb;
      }
    }
  });
  it("by a clock or a callback", () => {
    const problem = randomHall(1, 13, 13);
    let nowMs = 5_000;
    const ticking = (): number => (nowMs += 10);
    for (const options of [{ timeLimitS: 1, nowMs: ticking }, { shouldStop: () => true }]) {
      const plan = assignChannels(problem, options);
      expect(plan.optimal).toBe(false);
      expect(plan.boundDb).toBeGreaterThan(plan.minMarginDb);
      expectTrue(problem, plan);
    }
  });
  it("the same twice", () => {
    for (const problem of instances)
      expect(assignChannels(problem, { nodeLimitCount: 300 })).toEqual(
        assignChannels(problem, { nodeLimitCount: 300 }),
      );
  });
});

describe("assignChannels refuses", () => {
  const venue = randomVenue(1, 3, 5);
  const faults: [string, Partial<AssignmentProblem>][] = [
    ["wantedDbm", { wantedDbm: [] }],
    ["wantedDbm[1]", { wantedDbm: [-60, NaN, -60] }],
    ["requiredCiDb", { requiredCiDb: [14] }],
    ["baseMw", { baseMw: venue.baseMw.slice(1) }],
    ["baseMw[0]", { baseMw: [[], [1e-9], [1e-9]] }],
    ["baseMw[2][0]", { baseMw: [[1e-9], [1e-9], [0]] }],
    ["couplingMw[1]", { couplingMw: [venue.couplingMw[0]!, [0], venue.couplingMw[2]!] }],
    ["couplingMw[0][1]", { couplingMw: [[0, -1, 0], venue.couplingMw[1]!, venue.couplingMw[2]!] }],
    ["overlap", { overlap: [1, 0.1, 0.01, 0.001] }],
    ["overlap[4]", { overlap: [1, 0.1, 0.01, 0.001, NaN] }],
    ["capDb[0]", { capDb: [NaN, 1, 1] }],
    ["allowanceDb[2]", { allowanceDb: [0, 0, Infinity] }],
    ["allowedChannels[1]", { allowedChannels: [undefined, [], undefined] }],
    ["allowedChannels[1][0]", { allowedChannels: [undefined, [5], undefined] }],
    ["fixedChannels[0]", { fixedChannels: [0.5, undefined, undefined] }],
    [
      "fixedChannels[2]",
      { allowedChannels: [undefined, undefined, [1, 2]], fixedChannels: [undefined, undefined, 3] },
    ],
  ];
  it.each(faults)("%s", (argument, change) => {
    const problem = { ...venue, ...change };
    for (const call of [() => assignChannels(problem), () => assignEachAlone(problem)])
      expect(call).toThrow(expect.objectContaining({ name: "ArgumentError", argument }) as Error);
  });
  it("a time limit without a clock, limits that are none, an assignment that doesn't fit", () => {
    expect(() => assignChannels(venue, { timeLimitS: 1 })).toThrow(ArgumentError);
    expect(() => assignChannels(venue, { timeLimitS: 0, nowMs: () => 0 })).toThrow(ArgumentError);
    expect(() => assignChannels(venue, { nodeLimitCount: NaN })).toThrow(ArgumentError);
    expect(() => evaluateAssignment(venue, [0, 1])).toThrow(ArgumentError);
    expect(() => evaluateAssignment(venue, [0, 1, 5])).toThrow(ArgumentError);
  });
  it("no limit that is none", () => {
    expect(assignChannels(venue, { nodeLimitCount: Infinity })).toEqual(assignChannels(venue));
  });
  it("no infinite cap", () => {
    expect(assignChannels({ ...venue, capDb: [Infinity, Infinity, Infinity] })).toEqual(
      assignChannels(venue),
    );
  });
});
