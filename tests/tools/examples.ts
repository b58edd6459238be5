/**
 * Documentation that is run. In an example, each `expression; // => value` is a claim: the value is a
 * JavaScript literal, or `throws Name`, on the same line or on the comment lines below. What claims
 * nothing is run for its effect.
 */
import { inspect } from "node:util";
import { compileFunction } from "node:vm";
import ts from "typescript";

export interface Example {
  /** Where it stands, for messages. */
  readonly where: string;
  readonly code: string;
}

interface Claim {
  readonly expression: string;
  readonly expected: string;
}

/** @returns each `@example` of a source file */
export function examplesOf(file: string, source: ts.SourceFile): Example[] {
  const found: Example[] = [];
  const visit = (node: ts.Node): void => {
    for (const doc of ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc))
      for (const tag of doc.tags ?? [])
        if (tag.tagName.text === "example" && doc.parent === node)
          found.push({ where: `${file}:${lineOf(source, tag)}`, code: commentText(tag) });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The tag's own text, unescaped: the API's comment drops what follows a brace or an @. */
export function commentText(tag: ts.JSDocTag): string {
  const text = tag.getSourceFile().text.slice(tag.tagName.end, tag.end);
  return text
    .replace(/\s*\*\/\s*$/, "")
    .replace(/\n[ \t]*\*[ \t]?/g, "\n")
    .trim();
}

function lineOf(source: ts.SourceFile, node: ts.Node): number {
  return source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
}

/** @returns each ```ts block that imports from the package or is marked `ts run` */
export function readmeExamples(markdown: string): Example[] {
  return fencedBlocks(markdown)
    .filter(({ info, code }) => /^ts\b/.test(info) && (/\brun\b/.test(info) || importsPackage(code)))
    .map(({ line, code }) => ({ where: `README.md:${line}`, code }));
}

function importsPackage(code: string): boolean {
  return /\bfrom\s+["']stillband(?:\/[a-z]+)?["']/.test(code);
}

/** @returns the fenced code blocks of a Markdown text; `line` is that of the opening fence */
export function fencedBlocks(markdown: string): { info: string; line: number; code: string }[] {
  const blocks: { info: string; line: number; code: string }[] = [];
  for (const match of markdown.matchAll(/^```([^\n]*)\n([\s\S]*?)^```[ \t]*$/gm)) {
    const line = markdown.slice(0, match.index).split("\n").length;
    blocks.push({ info: match[1]!.trim(), line, code: match[2]! });
  }
  return blocks;
}

/** How an example finds what it imports. */
export type Modules = (specifier: string) => Promise<Record<string, unknown>>;

/**
 * Runs an example.
 * @param scope names that it uses without importing them
 * @returns the number of claims, all of which held
 * @throws when a claim does not hold, and whatever the example itself throws
 */
export async function runExample(
  { code }: Example,
  scope: Readonly<Record<string, unknown>>,
  modules: Modules,
): Promise<number> {
  const { body, claims } = instrumented(code);
  const module = ts.transpileModule(body, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext },
  });
  const check = async (index: number, evaluate: () => unknown): Promise<void> => {
    await verify(claims[index]!, evaluate, scope);
  };
  // `with` gives the example its names as globals would be, so that it may declare the same names itself.
  const run = compileFunction(
    `with ($scope) { return (async () => { "use strict";\n${module.outputText}\n})(); }`,
    ["$scope", "$check", "$module"],
  ) as (scope: unknown, check: unknown, modules: Modules) => Promise<void>;
  await run(scope, check, modules);
  return claims.length;
}

/** The example with each claim turned into a check and each import into a question to `$module`. */
function instrumented(code: string): { body: string; claims: Claim[] } {
  const source = ts.createSourceFile("example.ts", code, ts.ScriptTarget.ES2022, true);
  const claims: Claim[] = [];
  const body = source.statements.map((statement, index) => {
    if (ts.isImportDeclaration(statement)) return importQuestion(statement);
    const end = source.statements[index + 1]?.getStart(source) ?? code.length;
    const expected = claimedValue(code.slice(statement.end, end));
    if (expected === undefined) return statement.getText(source);
    if (!ts.isExpressionStatement(statement))
      throw new Error(`a claim stands behind no expression: ${statement.getText(source)}`);
    claims.push({ expression: loggedOr(statement.expression, source), expected });
    return `await $check(${claims.length - 1}, async () => (${claims.at(-1)!.expression}));`;
  });
  return { body: body.join("\n"), claims };
}

/** Of `console.log(x); // => 1` the claim is about x. */
function loggedOr(expression: ts.Expression, source: ts.SourceFile): string {
  const logs = ts.isCallExpression(expression) && expression.expression.getText(source) === "console.log";
  const only = logs && expression.arguments.length === 1 ? expression.arguments[0] : undefined;
  return (only ?? expression).getText(source);
}

function claimedValue(trivia: string): string | undefined {
  const lines = trivia.split("\n").flatMap((line) => /^\s*\/\/\s?(.*)$/.exec(line)?.[1] ?? []);
  const start = lines.findIndex((line) => /^(?:=>|throws\b)/.test(line.trim()));
  if (start < 0) return undefined;
  return lines
    .slice(start)
    .join("\n")
    .trim()
    .replace(/^=>\s*/, "");
}

function importQuestion(statement: ts.ImportDeclaration): string {
  const clause = statement.importClause;
  const specifier = (statement.moduleSpecifier as ts.StringLiteral).text;
  if (clause === undefined || clause.isTypeOnly) return "";
  const bindings = clause.namedBindings;
  if (bindings === undefined || !ts.isNamedImports(bindings))
    throw new Error(`only named imports are understood: ${specifier}`);
  const names = bindings.elements
    .filter((element) => !element.isTypeOnly)
    .map(({ name, propertyName }) => (propertyName ? `${propertyName.text}: ${name.text}` : name.text));
  return `const { ${names.join(", ")} } = await $module(${JSON.stringify(specifier)});`;
}

async function verify(
  { expression, expected }: Claim,
  evaluate: () => unknown,
  scope: Readonly<Record<string, unknown>>,
): Promise<void> {
  const thrown = /^throws(?:\s+(?:an?\s+)?(\w+))?\b/.exec(expected);
  let value: unknown;
  try {
    value = await evaluate();
  } catch (error) {
    const name = error instanceof Error ? error.name : String(error);
    if (thrown !== null && (thrown[1] === undefined || thrown[1] === name)) return;
    throw error;
  }
  if (thrown !== null)
    throw new Error(`${expression} was to throw ${thrown[1] ?? ""} and gave ${inspect(value)}`);
  const literal = valueOf(expected, scope);
  if (!sameValue(value, literal)) throw new Error(`${expression} gave ${inspect(value)}, not ${expected}`);
}

function valueOf(literal: string, scope: unknown): unknown {
  const read = compileFunction(`with ($scope) { return (${literal}\n); }`, ["$scope"]) as (
    scope: unknown,
  ) => unknown;
  return read(scope);
}

const RELATIVE_TOLERANCE = 1e-9;

/** @returns are two values the same, numbers to 1e-9 of their size? Typed arrays count as arrays. */
export function sameValue(actual: unknown, expected: unknown): boolean {
  if (Object.is(actual, expected)) return true;
  if (typeof actual === "number" && typeof expected === "number") return closeEnough(actual, expected);
  const [left, right] = [asList(actual), asList(expected)];
  if (left !== undefined && right !== undefined)
    return left.length === right.length && left.every((item, index) => sameValue(item, right[index]));
  if (left !== undefined || right !== undefined || !isRecord(actual) || !isRecord(expected)) return false;
  const keys = Object.keys(actual);
  return (
    keys.length === Object.keys(expected).length &&
    keys.every((key) => Object.hasOwn(expected, key) && sameValue(actual[key], expected[key]))
  );
}

function closeEnough(actual: number, expected: number): boolean {
  const size = Math.max(Math.abs(actual), Math.abs(expected));
  return Number.isFinite(size) && Math.abs(actual - expected) <= RELATIVE_TOLERANCE * size;
}

function asList(value: unknown): unknown[] | undefined {
  if (Array.isArray(value)) return value as unknown[];
  return ArrayBuffer.isView(value) ? Array.from(value as Float64Array) : undefined;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null;
}
