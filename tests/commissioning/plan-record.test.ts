import { describe, expect, test } from "vitest";
import { comparePlanRecords, planRecord, readPlanRecord } from "../../src/commissioning/index.js";
import type { PlanRecord } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";

const parts: Omit<PlanRecord, "schema"> = {
  program: "0.1.0",
  madeAt: "2026-05-01T10:00:00Z",
  inputs: [
    { name: "venue.yaml", kind: "venue", digest: "sha256:aa" },
    { name: "empty.csv", kind: "scan", digest: "sha256:bb" },
  ],
  assumptions: [
    { name: "busyShareRatio", value: 0.01 },
    { name: "enclosure", value: "slotted-metal" },
  ],
  systems: [{ system: "hall", channel: 9, fallbackChannel: 3, marginDb: 21, clearAirRatio: 1 }],
  receivers: [
    {
      receiver: "P2",
      system: "hall",
      room: "hall",
      predictedDbm: -61,
      intervalDbm: [-70, -52],
      workingMarginDb: 9,
    },
    {
      receiver: "P1",
      system: "hall",
      room: "hall",
      predictedDbm: -58,
      intervalDbm: [-67, -49],
      workingMarginDb: 12,
    },
  ],
};
const plan = planRecord(parts);
const kept = (): Record<string, unknown> => JSON.parse(JSON.stringify(plan)) as Record<string, unknown>;

describe("planRecord", () => {
  test("gives the same bytes for the same plan, whatever the order of its lists", () => {
    const turned = planRecord({
      ...parts,
      inputs: [...parts.inputs].reverse(),
      receivers: [...parts.receivers].reverse(),
    });
    expect(JSON.stringify(turned)).toBe(JSON.stringify(plan));
    expect(plan.receivers.map(({ receiver }) => receiver)).toEqual(["P1", "P2"]);
    expect(plan.schema).toBe("stillband/plan@1");
  });
  test("a caller's mistakes throw", () => {
    const [first] = parts.receivers;
    expect(() => planRecord({ ...parts, receivers: [first!, first!] })).toThrow(ArgumentError);
    expect(() => planRecord({ ...parts, receivers: [{ ...first!, predictedDbm: NaN }] })).toThrow(
      ArgumentError,
    );
    expect(() => planRecord({ ...parts, systems: [{ ...parts.systems[0]!, marginDb: Infinity }] })).toThrow(
      ArgumentError,
    );
    expect(() => planRecord({ ...parts, assumptions: [{ name: "a", value: NaN }] })).toThrow(ArgumentError);
  });
});

describe("comparePlanRecords", () => {
  const none = { inputs: [], assumptions: [], channels: [], receivers: [] };

  test("finds nothing between a plan and itself, read back", () => {
    const { plan: back, issues } = readPlanRecord(kept(), { source: "plan.json" });
    expect(issues).toEqual([]);
    expect(comparePlanRecords(plan, back!)).toEqual({
      ...none,
      isLikeWithLike: true,
      isProgramChanged: false,
    });
  });
  test("names inputs that changed, came and went", () => {
    const now = planRecord({
      ...parts,
      program: "0.2.0",
      inputs: [
        { name: "venue.yaml", kind: "venue", digest: "sha256:ab" },
        { name: "full.csv", kind: "scan", digest: "sha256:cc" },
      ],
    });
    const { inputs, isLikeWithLike, isProgramChanged } = comparePlanRecords(plan, now);
    expect(inputs).toEqual([
      { input: "empty.csv", kind: "scan", change: "missing" },
      { input: "venue.yaml", kind: "venue", change: "changed" },
      { input: "full.csv", kind: "scan", change: "added" },
    ]);
    expect([isLikeWithLike, isProgramChanged]).toEqual([false, true]);
  });
  test("tells assumptions, channels and predictions that changed, by how many dB", () => {
    const now = planRecord({
      ...parts,
      assumptions: [
        { name: "busyShareRatio", value: 0.05 },
        { name: "burstMs", value: 2 },
      ],
      systems: [{ ...parts.systems[0]!, channel: 3 }],
      receivers: [{ ...parts.receivers[0]!, predictedDbm: -65, workingMarginDb: null }],
    });
    const change = comparePlanRecords(plan, now);
    expect(change.isLikeWithLike).toBe(false);
    expect(change.assumptions).toEqual([
      { name: "busyShareRatio", then: 0.01, now: 0.05 },
      { name: "enclosure", then: "slotted-metal", now: undefined },
      { name: "burstMs", then: undefined, now: 2 },
    ]);
    expect(change.channels).toEqual([{ system: "hall", thenChannel: 9, nowChannel: 3 }]);
    expect(change.receivers).toEqual([
      { receiver: "P1", predictedChangeDb: null, marginChangeDb: null },
      { receiver: "P2", predictedChangeDb: -4, marginChangeDb: null },
    ]);
  });
});

describe("readPlanRecord", () => {
  test.each<[string, Record<string, unknown>]>([
    ["schema", { schema: "stillband/plan@2" }],
    ["program", { program: 1 }],
    ["madeAt", { madeAt: 5 }],
    ["inputs", { inputs: {} }],
    ["inputs[0].kind", { inputs: [{ name: "a", kind: "song", digest: "x" }] }],
    ["assumptions[0].value", { assumptions: [{ name: "a", value: [] }] }],
    ["systems[0]", { systems: ["hall"] }],
    [
      "receivers[1].predictedDbm",
      { receivers: [parts.receivers[0], { ...parts.receivers[1], predictedDbm: "x" }] },
    ],
    ["receivers[0].intervalDbm", { receivers: [{ ...parts.receivers[0], intervalDbm: [1] }] }],
  ])("names %s", (column, change) => {
    const { plan: none, issues } = readPlanRecord({ ...kept(), ...change }, { source: "plan.json" });
    expect(none).toBeNull();
    expect(issues[0]).toMatchObject({ column, source: "plan.json", severity: "error" });
  });
  test("leaves keys aside that a later program added, and takes nothing from the prototype", () => {
    expect(readPlanRecord({ ...kept(), further: 1 }, { source: "p" }).issues).toEqual([]);
    const inherited = Object.create(kept()) as unknown;
    expect(readPlanRecord(inherited, { source: "p" }).plan).toBeNull();
  });
});
