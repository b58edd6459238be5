import type { PlanAssumption, PlanInput, PlanRecord } from "./plan-record.js";

/** An input that is not what it was. */
export interface InputChange {
  readonly input: string;
  readonly kind: PlanInput["kind"];
  readonly change: "changed" | "added" | "missing";
}

/** An assumption that is not what it was; undefined where a plan hasn't got it. */
export interface AssumptionChange {
  readonly name: string;
  readonly then: PlanAssumption["value"] | undefined;
  readonly now: PlanAssumption["value"] | undefined;
}

/** What the plans say differently of a receiver; null: one of them hasn't got it. */
export interface ReceiverChange {
  readonly receiver: string;
  /** Now − then, dB. */
  readonly predictedChangeDb: number | null;
  readonly marginChangeDb: number | null;
}

/** A system that has another channel now. */
export interface ChannelChange {
  readonly system: string;
  readonly thenChannel: number | null;
  readonly nowChannel: number | null;
}

/** Two plans of one venue. */
export interface PlanComparison {
  /** Same inputs and assumptions: predictions compare like with like. */
  readonly isLikeWithLike: boolean;
  /** The program's version changed, which may change numbers by itself. */
  readonly isProgramChanged: boolean;
  readonly inputs: readonly InputChange[];
  readonly assumptions: readonly AssumptionChange[];
  readonly channels: readonly ChannelChange[];
  /** Receivers whose prediction or working margin changed at all, or that came or went. */
  readonly receivers: readonly ReceiverChange[];
}

/**
 * What changed between a plan and a later one: inputs by their digests, each named; assumptions; channels;
 * predictions.
 * @example
 * const plan = (digest) => planRecord({ program: "0.1.0", madeAt: null, inputs: [{ name: "venue.yaml", kind: "venue", digest }], assumptions: [], systems: [], receivers: [] });
 * comparePlanRecords(plan("sha256:00"), plan("sha256:01")).inputs; // => [{ input: "venue.yaml", kind: "venue", change: "changed" }]
 */
export function comparePlanRecords(then: PlanRecord, now: PlanRecord): PlanComparison {
  const inputs = pairs(then.inputs, now.inputs, ({ name }) => name).flatMap(inputChange);
  const assumptions = pairs(then.assumptions, now.assumptions, ({ name }) => name).flatMap(
    ([name, a, b]): AssumptionChange[] =>
      a !== undefined && b !== undefined && Object.is(a.value, b.value)
        ? []
        : [{ name, then: a?.value, now: b?.value }],
  );
  return {
    isLikeWithLike: inputs.length === 0 && assumptions.length === 0,
    isProgramChanged: then.program !== now.program,
    inputs,
    assumptions,
    channels: pairs(then.systems, now.systems, ({ system }) => system).flatMap(([system, a, b]) => {
      const [thenChannel, nowChannel] = [a?.channel ?? null, b?.channel ?? null];
      return thenChannel === nowChannel ? [] : [{ system, thenChannel, nowChannel }];
    }),
    receivers: pairs(then.receivers, now.receivers, ({ receiver }) => receiver).flatMap(
      ([receiver, a, b]): ReceiverChange[] => {
        const predictedChangeDb = difference(a?.predictedDbm, b?.predictedDbm);
        const marginChangeDb = difference(a?.workingMarginDb, b?.workingMarginDb);
        const isSame = predictedChangeDb === 0 && a?.workingMarginDb === b?.workingMarginDb;
        return isSame ? [] : [{ receiver, predictedChangeDb, marginChangeDb }];
      },
    ),
  };
}

function inputChange([input, a, b]: Pair<PlanInput>): InputChange[] {
  const { kind } = (b ?? a)!;
  if (a === undefined) return [{ input, kind, change: "added" }];
  if (b === undefined) return [{ input, kind, change: "missing" }];
  return a.digest === b.digest ? [] : [{ input, kind, change: "changed" }];
}

type Pair<T> = readonly [name: string, then: T | undefined, now: T | undefined];

/** Entries by name: the earlier plan's in its order, then what is new. */
function pairs<T>(then: readonly T[], now: readonly T[], nameOf: (entry: T) => string): Pair<T>[] {
  const [before, after] = [then, now].map((list) => new Map(list.map((entry) => [nameOf(entry), entry])));
  const names = new Set([...before!.keys(), ...after!.keys()]);
  return [...names].map((name) => [name, before!.get(name), after!.get(name)]);
}

function difference(then: number | null | undefined, now: number | null | undefined): number | null {
  return typeof then === "number" && typeof now === "number" ? now - then : null;
}
