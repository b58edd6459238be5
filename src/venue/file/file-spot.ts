import { printable } from "../../issues/index.js";
import type { Issue, IssueCode } from "../../issues/index.js";

/** The unit of every length of a file whose key names none. */
export type FileUnits = "m" | "ft";

/** A spot in a file: what stands there is judged from here, and what is wrong is told with its path and line. */
export interface FileSpot {
  readonly units: FileUnits;
  /** Takes a mistake: the raw value (undefined where nothing stands) and what was expected instead. */
  readonly error: (raw: unknown, expected: string, code?: IssueCode) => undefined;
  /** Takes a remark that stops nothing, as a whole sentence. */
  readonly warn: (statement: string, code?: IssueCode) => void;
  /** The spot of a key in the mapping that stands here. */
  readonly key: (name: string) => FileSpot;
  /** The spot of an item in the list that stands here. */
  readonly item: (index: number) => FileSpot;
}

/** Finds the 1-based line of a path such as `rooms[1].outline[2]`, or of the nearest that holds it. */
export type LineOf = (path: string) => number | undefined;

/** What a file's spots have in common. */
export interface SpotFile {
  readonly issues: Issue[];
  readonly source: string;
  readonly units: FileUnits;
  readonly lineOf: LineOf;
}

/** Names of the file stand in what is told of it: they are shown, never obeyed. */
export const LONGEST_TOLD = 600;

/** The spot of a path in a file of plain data; `""` is the whole file. */
export function fileSpot(file: SpotFile, path = ""): FileSpot {
  const { issues, source, units, lineOf } = file;
  const place = (): Pick<Issue, "source" | "line" | "column"> => {
    const line = lineOf(path);
    return { source, ...(line !== undefined && { line }), ...(path !== "" && { column: path }) };
  };
  return {
    units,
    error: (raw, expectation, code = "bad-cell") => {
      const expected = printable(expectation, LONGEST_TOLD);
      const value = raw === undefined ? {} : { value: rawWords(raw) };
      issues.push({ code, severity: "error", ...place(), ...value, expected, action: "stopped" });
      return undefined;
    },
    warn: (statement, code = "contradiction") => {
      const expected = printable(statement, LONGEST_TOLD);
      issues.push({ code, severity: "warning", ...place(), expected, action: "stated" });
    },
    key: (name) => fileSpot(file, path === "" ? name : `${path}.${name}`),
    item: (index) => fileSpot(file, `${path}[${index}]`),
  };
}

/** What stands in a file, in few words. */
export function rawWords(raw: unknown): string {
  if (typeof raw === "string") return raw;
  if (Array.isArray(raw)) return `a list of ${raw.length}`;
  return isMapping(raw) ? "a mapping" : String(raw);
}

/** Plain data from YAML or JSON: a mapping? */
export function isMapping(raw: unknown): raw is Readonly<Record<string, unknown>> {
  return typeof raw === "object" && raw !== null && !Array.isArray(raw);
}
