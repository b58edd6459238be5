import type { Issue, IssueCode } from "../issues/index.js";

/** Takes one mistake in a profile: where, the raw value, what was expected instead. */
export type Report = (path: string, raw: unknown, expected: string, code?: IssueCode) => void;

/** Collects mistakes as issues: each stops the profile, so that no half-read radio is planned with. */
export function profileReport(issues: Issue[], source: string): Report {
  return (path, raw, expected, code = "bad-cell") => {
    const value = raw === undefined ? {} : { value: rawWords(raw) };
    const column = path === "" ? {} : { column: path };
    issues.push({ code, severity: "error", source, ...column, ...value, expected, action: "stopped" });
  };
}

/** Plain data from YAML or JSON: a mapping? */
export function isMapping(raw: unknown): raw is Readonly<Record<string, unknown>> {
  return typeof raw === "object" && raw !== null && !Array.isArray(raw);
}

function rawWords(raw: unknown): string {
  if (typeof raw === "string") return raw;
  if (Array.isArray(raw)) return "a list";
  return isMapping(raw) ? "a mapping" : String(raw);
}
