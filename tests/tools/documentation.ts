/** What a public name must say of itself, and where it doesn't. */
import ts from "typescript";
import { commentText } from "./examples.js";

/** Rooms whose functions compute by formulas: a figure that they give has a source and a range of validity. */
const FORMULA_ROOMS = ["band", "propagation", "scorer", "quality"];

/** What an export says. */
interface Said {
  readonly name: string;
  readonly summary: string;
  /** Texts of each kind of tag. */
  readonly tags: ReadonlyMap<string, readonly string[]>;
}

/**
 * The faults of an export's documentation; none where it says enough:
 * - every name: a sentence, or of a function what it returns;
 * - a function: each parameter that no documented type explains (a bare number, text or switch) by `@param`;
 *   its result by `@returns` where no documented type explains it; a call that is executed: an `@example` of
 *   its own, or `@see {@link other}` with one in which it is called;
 * - a function of a formula room that gives a figure: `@source` and `@validity`.
 * @param exampleOf the examples of another public name, joined
 */
export function documentationFaults(
  name: string,
  symbol: ts.Symbol,
  room: string,
  checker: ts.TypeChecker,
  exampleOf: (name: string) => string,
): string[] {
  const said = saidBy(name, symbol, checker);
  const signature = checker.getTypeOfSymbol(symbol).getCallSignatures()[0];
  if (!(symbol.flags & ts.SymbolFlags.Function) || signature === undefined)
    return said.summary === "" ? [`${name}: no sentence`] : [];
  return [
    ...(said.summary === "" && !said.tags.has("returns") ? [`${name}: no sentence`] : []),
    ...parameterFaults(said, signature, checker),
    ...resultFaults(said, signature, room, checker),
    ...exampleFaults(said, exampleOf),
  ];
}

function parameterFaults({ name, tags }: Said, signature: ts.Signature, checker: ts.TypeChecker): string[] {
  const told = (tags.get("param") ?? []).map((text) => text.split(/\s/)[0]);
  return signature.parameters
    .filter(
      (parameter) => isBare(checker.getTypeOfSymbol(parameter), checker) && !told.includes(parameter.name),
    )
    .map((parameter) => `${name}: no @param ${parameter.name}`);
}

function resultFaults(
  { name, tags }: Said,
  signature: ts.Signature,
  room: string,
  checker: ts.TypeChecker,
): string[] {
  const result = signature.getReturnType();
  if (!isBare(result, checker)) return [];
  const isFigure = FORMULA_ROOMS.includes(room) && isNumber(result);
  const needed = isFigure ? ["returns", "source", "validity"] : ["returns"];
  return needed.filter((tag) => !tags.has(tag)).map((tag) => `${name}: no @${tag}`);
}

function exampleFaults({ name, tags }: Said, exampleOf: (name: string) => string): string[] {
  if (tags.has("example")) return [];
  const shown = (tags.get("see") ?? []).flatMap(
    (text) => /\{@link (\w+)\}|^(\w+)/.exec(text)?.slice(1, 3) ?? [],
  );
  const isCalled = shown.some((other) => new RegExp(`\\b${name}\\(`).test(exampleOf(other ?? "")));
  return isCalled ? [] : [`${name}: no @example, nor @see of one that calls it`];
}

/** @returns what the comments of a name say */
export function saidBy(name: string, symbol: ts.Symbol, checker: ts.TypeChecker): Said {
  const tags = new Map<string, string[]>();
  for (const tag of (symbol.declarations ?? []).flatMap((declaration) => ts.getJSDocTags(declaration))) {
    const kind = tag.tagName.text;
    tags.set(kind, [...(tags.get(kind) ?? []), commentText(tag)]);
  }
  return { name, summary: ts.displayPartsToString(symbol.getDocumentationComment(checker)).trim(), tags };
}

/** A number, text, switch, or a list of these: nothing of it is explained by a type's own words. */
function isBare(type: ts.Type, checker: ts.TypeChecker): boolean {
  const parts = type.isUnion() ? type.types : [type];
  const isNamed = type.aliasSymbol !== undefined;
  const known = parts.filter((part) => !(part.flags & (ts.TypeFlags.Undefined | ts.TypeFlags.Null)));
  return !isNamed && known.length > 0 && known.every((part) => isPlain(part, checker));
}

const PLAIN = ts.TypeFlags.NumberLike | ts.TypeFlags.StringLike | ts.TypeFlags.BooleanLike;

function isPlain(type: ts.Type, checker: ts.TypeChecker): boolean {
  if (type.aliasSymbol !== undefined) return false;
  if (type.flags & PLAIN) return true;
  return checker.isArrayType(type) && isBare(checker.getTypeArguments(type as ts.TypeReference)[0]!, checker);
}

function isNumber(type: ts.Type): boolean {
  return (type.flags & ts.TypeFlags.NumberLike) !== 0;
}
