import type { Issue } from "../issues/index.js";
import { PLAN_SCHEMA } from "./plan-record.js";
import type { PlanAssumption, PlanInput, PlanRecord } from "./plan-record.js";
import { RecordFields } from "./record-fields.js";

/** A plan file, read. */
export interface PlanImport {
  /** Null where something is wrong with it. */
  readonly plan: PlanRecord | null;
  readonly issues: readonly Issue[];
}

/**
 * A plan file's data, checked: everything that is wrong is told, with the path of the field as its column. Keys
 * that a later program added are left aside.
 * @param data what the file's JSON holds
 * @param options source: file name for messages
 * @example readPlanRecord({ schema: "stillband/plan@9" }, { source: "plan.json" }).issues[0].column; // => "schema"
 */
export function readPlanRecord(data: unknown, options: { readonly source: string }): PlanImport {
  const issues: Issue[] = [];
  const fields = new RecordFields(data, options.source, issues);
  const draft = {
    schema: fields.field("schema", PLAN_SCHEMA, (value) => value === PLAN_SCHEMA),
    program: fields.text("program"),
    madeAt: fields.textOrNull("madeAt"),
    inputs: fields.list("inputs", (each) => ({
      name: each.text("name"),
      kind: each.field("kind", `one of ${KINDS.join(", ")}`, isKind),
      digest: each.text("digest"),
    })),
    assumptions: fields.list("assumptions", (each) => ({
      name: each.text("name"),
      value: each.field("value", "text, a number, true, false or null", isPlain),
    })),
    systems: fields.list("systems", (each) => ({
      system: each.text("system"),
      channel: each.numberOrNull("channel"),
      fallbackChannel: each.numberOrNull("fallbackChannel"),
      marginDb: each.numberOrNull("marginDb"),
      clearAirRatio: each.numberOrNull("clearAirRatio"),
    })),
    receivers: fields.list("receivers", (each) => ({
      receiver: each.text("receiver"),
      system: each.text("system"),
      room: each.text("room"),
      predictedDbm: each.number("predictedDbm"),
      intervalDbm: each.range("intervalDbm"),
      workingMarginDb: each.numberOrNull("workingMarginDb"),
    })),
  };
  // Whatever is undefined has been told.
  return { plan: issues.length === 0 ? (draft as PlanRecord) : null, issues };
}

const KINDS: readonly PlanInput["kind"][] = ["venue", "luminaires", "scan", "profile", "path-model", "other"];

function isKind(value: unknown): value is PlanInput["kind"] {
  return KINDS.some((kind) => kind === value);
}

function isPlain(value: unknown): value is PlanAssumption["value"] {
  return value === null || ["string", "boolean"].includes(typeof value) || Number.isFinite(value);
}
