import { ascending } from "d3-array";
import { ArgumentError, requireFinite } from "../issues/index.js";
import type { Interval } from "./fit-estimate.js";

/** The name and version of a plan file. */
export const PLAN_SCHEMA = "stillband/plan@1";

/** A file that the plan was made from, by the digest of its bytes. */
export interface PlanInput {
  /** As the venue file names it. */
  readonly name: string;
  readonly kind: "venue" | "luminaires" | "scan" | "profile" | "path-model" | "other";
  /** Algorithm and value, as `sha256:…`. */
  readonly digest: string;
}

/** A figure that the plan rests on without having measured it. */
export interface PlanAssumption {
  readonly name: string;
  readonly value: string | number | boolean | null;
}

/** What the plan says of a system. */
export interface PlannedSystem {
  readonly system: string;
  /** Null: it hops. */
  readonly channel: number | null;
  readonly fallbackChannel: number | null;
  /** Interference margin on the planned channel, dB, at the weakest receiver. */
  readonly marginDb: number | null;
  readonly clearAirRatio: number | null;
}

/** What the plan says of a receiver. */
export interface PlannedReceiver {
  readonly receiver: string;
  readonly system: string;
  readonly room: string;
  readonly predictedDbm: number;
  readonly intervalDbm: Interval;
  readonly workingMarginDb: number | null;
}

/** A plan as it is kept: what went in, what was assumed, what came out. */
export interface PlanRecord {
  readonly schema: typeof PLAN_SCHEMA;
  /** Version of the program that made it. */
  readonly program: string;
  /** ISO 8601; null where no clock was given. */
  readonly madeAt: string | null;
  readonly inputs: readonly PlanInput[];
  readonly assumptions: readonly PlanAssumption[];
  readonly systems: readonly PlannedSystem[];
  readonly receivers: readonly PlannedReceiver[];
}

/**
 * A plan file: its lists sorted by name, so that one plan always gives the same bytes.
 * @throws {ArgumentError} when two entries of a list have one name or a figure is not finite
 * @example planRecord({ program: "0.1.0", madeAt: null, inputs: [{ name: "venue.yaml", kind: "venue", digest: "sha256:00" }], assumptions: [], systems: [], receivers: [] }).schema; // => "stillband/plan@1"
 */
export function planRecord(parts: Omit<PlanRecord, "schema">): PlanRecord {
  for (const { receiver, predictedDbm, intervalDbm } of parts.receivers)
    for (const each of [predictedDbm, ...intervalDbm]) requireFinite(`figures of ${receiver}`, each);
  for (const { system, marginDb } of parts.systems)
    if (marginDb !== null) requireFinite(`marginDb of ${system}`, marginDb);
  for (const { name, value } of parts.assumptions) if (typeof value === "number") requireFinite(name, value);
  return {
    schema: PLAN_SCHEMA,
    program: parts.program,
    madeAt: parts.madeAt,
    inputs: sortedBy("inputs", parts.inputs, ({ name }) => name),
    assumptions: sortedBy("assumptions", parts.assumptions, ({ name }) => name),
    systems: sortedBy("systems", parts.systems, ({ system }) => system),
    receivers: sortedBy("receivers", parts.receivers, ({ receiver }) => receiver),
  };
}

function sortedBy<T>(list: string, entries: readonly T[], nameOf: (entry: T) => string): T[] {
  const sorted = [...entries].sort((a, b) => ascending(nameOf(a), nameOf(b)));
  for (const [index, entry] of sorted.slice(1).entries())
    if (nameOf(entry) === nameOf(sorted[index]!))
      throw new ArgumentError(list, "each name once", nameOf(entry));
  return sorted;
}
