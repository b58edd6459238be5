import type * as YamlParser from "yaml";
import { printable } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";

/** Plain data of a YAML or JSON file, and the line on which each part of it stands. */
export interface VenueDocument {
  readonly data: unknown;
  /** @returns the 1-based line of a path such as `rooms[1].outline[2]`, or of the nearest that holds it */
  readonly lineOf: (path: string) => number | undefined;
}

/** Longest text that is read as YAML, characters. */
const MOST_CHARACTERS = 8_000_000;
const MOST_ALIASES = 100;
const NEXT = "stillband init writes a file to start from";

/**
 * Reads a text of YAML, JSON being a part of it. The parser is loaded only here.
 * @param source file name for messages
 * @throws {CliError} exit 65 where it is neither, with every mistake that the parser found
 */
export async function venueDocument(text: string, source: string): Promise<VenueDocument> {
  const expected = `at most ${MOST_CHARACTERS / 1e6} million characters`;
  if (text.length > MOST_CHARACTERS)
    throw notYaml(source, [fault(source, 1, `${text.length} characters`, expected, "limit")]);
  const yaml = await import("yaml");
  const counter = new yaml.LineCounter();
  const document = yaml.parseDocument(text, { lineCounter: counter, prettyErrors: false, logLevel: "error" });
  const lineAt = (offset: number): number => Math.max(1, counter.linePos(offset).line);
  if (document.errors.length > 0)
    throw notYaml(
      source,
      document.errors.map(({ message, pos }) =>
        fault(source, lineAt(pos[0]), message, "YAML or JSON", "unreadable"),
      ),
    );
  const lineOf = (path: string): number | undefined => {
    const offset = offsetOf(document.contents, path, yaml, (alias) => alias.resolve(document));
    return offset === undefined ? undefined : lineAt(offset);
  };
  try {
    return { data: document.toJS({ maxAliasCount: MOST_ALIASES }) as unknown, lineOf };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw notYaml(source, [fault(source, 1, why, `at most ${MOST_ALIASES} aliases`, "limit")]);
  }
}

type Yaml = typeof YamlParser;
type Resolve = (alias: InstanceType<Yaml["Alias"]>) => unknown;

/** Walks down a path as far as it leads; where a key or an item isn't there, what should hold it is meant. */
function offsetOf(root: unknown, path: string, yaml: Yaml, resolve: Resolve): number | undefined {
  let [node, rest] = [root, path];
  let offset = startOf(root);
  while (rest !== "") {
    const whole = yaml.isAlias(node) ? resolve(node) : node;
    const step = yaml.isSeq(whole)
      ? itemStep(whole, rest)
      : yaml.isMap(whole)
        ? keyStep(whole, rest, yaml)
        : null;
    if (step === null) return offset;
    offset = startOf(step.at) ?? offset;
    [node, rest] = [step.node, step.rest];
  }
  return offset;
}

interface Step {
  readonly at: unknown;
  readonly node: unknown;
  readonly rest: string;
}

function itemStep(list: InstanceType<Yaml["YAMLSeq"]>, path: string): Step | null {
  const [found, index = ""] = /^\[(\d+)\]\.?/.exec(path) ?? [];
  const node = found === undefined ? undefined : list.items[Number(index)];
  return found === undefined || node === undefined
    ? null
    : { at: node, node, rest: path.slice(found.length) };
}

/** Keys may hold dots and brackets themselves: the one that is followed by the path's end or next step. */
function keyStep(map: InstanceType<Yaml["YAMLMap"]>, path: string, yaml: Yaml): Step | null {
  for (const { key, value } of map.items) {
    const name = yaml.isScalar(key) ? String(key.value) : "";
    const rest = path.slice(name.length);
    if (path.startsWith(name) && (rest === "" || rest.startsWith("[") || rest.startsWith(".")))
      return { at: key, node: value, rest: rest.replace(/^\./, "") };
  }
  return null;
}

function startOf(node: unknown): number | undefined {
  const range = (node as { readonly range?: readonly number[] | null } | null)?.range;
  return range?.[0];
}

function fault(source: string, line: number, value: string, expected: string, code: Issue["code"]): Issue {
  return { code, severity: "error", source, line, value, expected, action: "stopped" };
}

/** Past the first faults of a text that isn't YAML come mostly their echoes; --json has all. */
const MOST_TOLD = 5;

function notYaml(source: string, issues: readonly Issue[]): CliError {
  const lines = issues.slice(0, MOST_TOLD).map(({ line, value, expected }) => {
    const where = `${printable(source, 200)}:${line}`;
    return `${where}: not ${expected}: ${printable(value ?? "", 200)}`.replace(
      "not at most",
      "expected at most",
    );
  });
  const moreCount = issues.length - lines.length;
  const more = moreCount > 0 ? [`and ${moreCount} more; --json lists all`] : [];
  return new CliError(EXIT.badData, [...lines, ...more].join("\n"), NEXT, issues);
}
