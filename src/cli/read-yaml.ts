import type { Document, LineCounter } from "yaml";
import { printable } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";
import { camelCase } from "./radio-figures.js";

/** Plain data of a text, and where its parts stand. */
export interface YamlText {
  readonly data: unknown;
  /**
   * @param path keys and places in lists, as `channels[3].centreMhz`; `snake_case` is the same key
   * @returns 1-based line of the deepest part of the path that is there; undefined where nothing is
   */
  readonly lineOf: (path: string) => number | undefined;
}

/**
 * Plain data from a text of YAML, JSON being a part of it; what a terminal obeys in its words is made
 * visible. The parser is loaded only here.
 * @param source file name for messages
 * @param next what to try where it is neither
 * @throws {CliError} exit 65 where it is neither
 */
export async function readYaml(text: string, source: string, next?: string): Promise<unknown> {
  return (await readYamlText(text, source, next)).data;
}

/** The same with the lines of its parts, for messages. */
export async function readYamlText(
  text: string,
  source: string,
  next = "stillband profiles raster-13 --template shows the form",
): Promise<YamlText> {
  const { parseDocument, LineCounter } = await import("yaml");
  const lines = new LineCounter();
  try {
    const document = parseDocument(text, { lineCounter: lines, logLevel: "error" });
    const [fault] = document.errors;
    if (fault !== undefined) throw fault;
    const data = document.toJS({ reviver: harmless, maxAliasCount: 20 }) as unknown;
    return { data, lineOf: (path) => lineOf(document, lines, path) };
  } catch (error) {
    throw notYaml(error, source, next);
  }
}

function notYaml(error: unknown, source: string, next: string): CliError {
  const [why = ""] = (error instanceof Error ? error.message : String(error)).split("\n");
  const line = (error as { readonly linePos?: readonly { readonly line: number }[] }).linePos?.[0]?.line;
  const issue = {
    code: "unreadable",
    severity: "error",
    source,
    ...(line !== undefined && { line }),
    value: why,
    expected: "YAML or JSON",
    action: "stopped",
  } as const;
  return new CliError(
    EXIT.badData,
    `${printable(source, 200)}: not YAML or JSON: ${printable(why.replace(/:$/, ""), 200)}`,
    next,
    [issue],
  );
}

function lineOf(document: Document, lines: LineCounter, path: string): number | undefined {
  let node: unknown = document.contents;
  let offset: number | undefined;
  for (const step of path.split(/\.|(?=\[)/)) {
    const place = /^\[(\d+)\]$/.exec(step);
    const found = place === null ? entryOf(node, step) : itemOf(node, Number(place[1]));
    if (found === undefined) break;
    [node, offset] = found;
  }
  return offset === undefined ? undefined : lines.linePos(offset).line;
}

type Found = readonly [node: unknown, offset: number | undefined] | undefined;

function entryOf(node: unknown, step: string): Found {
  const pair = itemsOf(node).find(
    (item) =>
      typeof item.key?.value === "string" && [item.key.value, camelCase(item.key.value)].includes(step),
  );
  return pair === undefined ? undefined : [pair.value, pair.key?.range?.[0]];
}

function itemOf(node: unknown, index: number): Found {
  const item = itemsOf(node)[index];
  return item === undefined ? undefined : [item, item.range?.[0]];
}

/** The part of the parser's nodes that is looked at. */
interface Item {
  readonly key?: { readonly value?: unknown; readonly range?: readonly number[] };
  readonly value?: unknown;
  readonly range?: readonly number[];
}

function itemsOf(node: unknown): readonly Item[] {
  const items = (node as { readonly items?: unknown } | null)?.items;
  return Array.isArray(items) ? (items as Item[]) : [];
}

function harmless(_key: unknown, value: unknown): unknown {
  return typeof value === "string" ? printable(value, Infinity) : value;
}
