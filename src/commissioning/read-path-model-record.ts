import type { Issue } from "../issues/index.js";
import { invertPositive } from "../numeric/index.js";
import { PATH_MODEL_SCHEMA } from "../propagation/index.js";
import { EXPONENT_LIMITS } from "./fit-refusal.js";
import type { PathModelRecord, PathModelResidual } from "./path-model-record.js";
import { RecordFields } from "./record-fields.js";

/** A model file, read. */
export interface PathModelRecordImport {
  /** Null where something is wrong with it. */
  readonly model: PathModelRecord | null;
  readonly issues: readonly Issue[];
}

/**
 * A model file's data, checked: everything that is wrong is told, with the path of the field as its column.
 * @param data what the file's JSON or YAML holds
 * @param options source: file name for messages
 * @example readPathModelRecord({ schema: "stillband/path-model@9" }, { source: "model.json" }).issues[0].column; // => "schema"
 */
export function readPathModelRecord(
  data: unknown,
  options: { readonly source: string },
): PathModelRecordImport {
  const issues: Issue[] = [];
  const fields = new RecordFields(data, options.source, issues);
  const [low, high] = EXPONENT_LIMITS;
  const whole = (least: number) => (value: number) => Number.isInteger(value) && value >= least;
  const schema = fields.field("schema", PATH_MODEL_SCHEMA, (value) => value === PATH_MODEL_SCHEMA);
  const wallLossDb = fields.numberOrNull("wallLossDb");
  const size = typeof wallLossDb === "number" ? 3 : 2;
  const draft = {
    schema,
    kind: fields.field("kind", "log-distance", (value) => value === "log-distance"),
    exponent: fields.number("exponent", `a number from ${low} to ${high}`, (n) => n >= low && n <= high),
    referenceLossDb: fields.number("referenceLossDb"),
    referenceDistanceM: fields.number("referenceDistanceM", "a number above 0", (m) => m > 0),
    sigmaDb: fields.number("sigmaDb", "a number of 0 or more", (db) => db >= 0),
    wallLossDb,
    distanceRangeM: fields.range("distanceRangeM"),
    readingCount: fields.number("readingCount", "a whole number", whole(1)),
    notHeardCount: fields.number("notHeardCount", "a whole number", whole(0)),
    freedomCount: fields.number("freedomCount", "a whole number above 0", whole(1)),
    covariance: fields.field("covariance", `a covariance, ${size} by ${size}`, (value) =>
      isCovariance(value, size),
    ),
    frequencyMhz: fields.numberOrNull("frequencyMhz"),
    ...(fields.has("residuals") && { residuals: fields.list("residuals", residualOf) }),
  };
  // Whatever is undefined has been told.
  return { model: issues.length === 0 ? (draft as PathModelRecord) : null, issues };
}

function residualOf(fields: RecordFields): Partial<PathModelResidual> {
  const distanceM = fields.number("distanceM", "a number above 0", (m) => m > 0);
  const residualDb = fields.number("residualDb");
  const heard = fields.field("heard", "true or false", (value) => typeof value === "boolean");
  return {
    ...(distanceM !== undefined && { distanceM }),
    ...(residualDb !== undefined && { residualDb }),
    ...(heard !== undefined && { heard }),
  };
}

/** Symmetric, and no combination of parameters with a variance below 0 (rounding apart). */
function isCovariance(value: unknown, size: number): value is number[][] {
  if (!Array.isArray(value) || value.length !== size) return false;
  const isRow = (row: unknown): row is number[] =>
    Array.isArray(row) && row.length === size && row.every((each) => Number.isFinite(each));
  if (!value.every(isRow)) return false;
  const scale = Math.max(...value.flat().map(Math.abs));
  const isSymmetric = value.every((row, i) =>
    row.every((each, j) => Math.abs(each - value[j]![i]!) <= 1e-9 * scale),
  );
  const lifted = value.map((row, i) => row.map((each, j) => (i === j ? each + 1e-9 * scale : each)));
  return isSymmetric && (scale === 0 || invertPositive(lifted) !== null);
}
