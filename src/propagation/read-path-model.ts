import type { Issue, IssueCode } from "../issues/index.js";
import type { LogDistanceModel } from "./path-model.js";

/** The name and version of a fitted model's file. */
export const PATH_MODEL_SCHEMA = "stillband/path-model@1";

/** A fitted path model, or all that is wrong with it. */
export interface PathModelImport {
  /** Null when an issue stopped it. */
  readonly model: LogDistanceModel | null;
  readonly issues: readonly Issue[];
}

/** Takes one mistake: the key, its raw value, what was expected instead. */
type Report = (key: string, raw: unknown, expected: string, code?: IssueCode) => void;

/**
 * A fitted path model from plain data (what parsing YAML or JSON gives): `schema`, `kind: log-distance`,
 * `exponent` (0 to 10), `referenceLossDb` (0 to 200) and, where known, `referenceDistanceM` (1 if not given),
 * `sigmaDb` (0 to 30) and `distanceRangeM: [from, to]`. Keys may be written `snake_case`; others are let stand.
 * @param source file name for messages
 * @returns the model, or null with every mistake at once; an issue's `column` is the key
 * @example readPathModel({ schema: "stillband/path-model@1", kind: "log-distance", exponent: 2.4, reference_loss_db: 41 }, "hall.json").model;
 * // => { kind: "log-distance", exponent: 2.4, referenceLossDb: 41 }
 */
export function readPathModel(data: unknown, source: string): PathModelImport {
  const issues: Issue[] = [];
  const report: Report = (key, raw, expected, code = "bad-cell") => {
    const column = key === "" ? {} : { column: key };
    const value = raw === undefined ? {} : { value: rawWords(raw) };
    issues.push({ code, severity: "error", source, ...column, ...value, expected, action: "stopped" });
  };
  if (typeof data !== "object" || data === null || Array.isArray(data)) {
    report("", data, `a mapping with schema: ${PATH_MODEL_SCHEMA}`, "unreadable");
    return { model: null, issues };
  }
  const entries = camelEntries(data);
  word(entries, "schema", PATH_MODEL_SCHEMA, report);
  word(entries, "kind", "log-distance", report);
  const exponent = number(entries, "exponent", [0, 10], report);
  const referenceLossDb = number(entries, "referenceLossDb", [0, 200], report);
  const referenceDistanceM = optional(entries, "referenceDistanceM", [0.01, 1000], report);
  const sigmaDb = optional(entries, "sigmaDb", [0, 30], report);
  const distanceRangeM = range(entries, report);
  if (issues.length > 0 || exponent === undefined || referenceLossDb === undefined)
    return { model: null, issues };
  const known = { referenceDistanceM, sigmaDb, distanceRangeM };
  const given = Object.fromEntries(Object.entries(known).filter(([, value]) => value !== undefined));
  return { model: { kind: "log-distance", exponent, referenceLossDb, ...given }, issues };
}

type Entries = ReadonlyMap<string, unknown>;

function camelEntries(data: object): Entries {
  const camel = (key: string): string =>
    key.replaceAll(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
  return new Map(Object.entries(data).map(([key, raw]) => [camel(key), raw as unknown]));
}

function word(entries: Entries, key: string, expected: string, report: Report): void {
  const raw = entries.get(key);
  if (raw !== expected) report(key, raw, expected, entries.has(key) ? "bad-cell" : "missing-cell");
}

function number(
  entries: Entries,
  key: string,
  [low, high]: readonly [number, number],
  report: Report,
): number | undefined {
  const raw = entries.get(key);
  if (typeof raw === "number" && raw >= low && raw <= high) return raw;
  report(key, raw, `a number from ${low} to ${high}`, entries.has(key) ? "bad-cell" : "missing-cell");
  return undefined;
}

/** A figure that may be left out, or null where it isn't known. */
function optional(
  entries: Entries,
  key: string,
  limits: readonly [number, number],
  report: Report,
): number | undefined {
  return (entries.get(key) ?? null) === null ? undefined : number(entries, key, limits, report);
}

function range(entries: Entries, report: Report): readonly [number, number] | undefined {
  const raw = entries.get("distanceRangeM") ?? null;
  if (raw === null) return undefined;
  const [from, to, ...more] = Array.isArray(raw) ? (raw as unknown[]) : [];
  if (typeof from === "number" && typeof to === "number" && from > 0 && to >= from && to < Infinity)
    if (more.length === 0) return [from, to];
  report("distanceRangeM", raw, "[from, to] in m, 0 < from <= to");
  return undefined;
}

function rawWords(raw: unknown): string {
  if (typeof raw === "string") return raw;
  if (Array.isArray(raw)) return `[${raw.join(", ")}]`;
  return typeof raw === "object" && raw !== null ? "a mapping" : String(raw);
}
