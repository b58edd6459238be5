/** A number says its unit in its name: the rule on exported parameters and fields. */
import ts from "typescript";

const UNIT =
  /(?:Dbm|DbmPerMhz|Dbi|Dbr|Db|Mhz|Khz|Hz|Mw|Kg|Ohm|Mm2|W|V|A|C|M|Mm|Ft|S|Ms|Min|Minutes|Deg|Us|Rad|Ratio|Count|Index|PerMinute|PerS|Px)$/;
/** Ordinals and shares that say so at the end of their name. */
const DIMENSIONLESS_END = /(?:Channels?|Probability|Quantile|Rank|Ratios|Counts|Indexes|Slot|Universe)$/;
const BARE_UNIT = /^(?:mhz|db|dbm|count|index|ratio|deg)$/;

/** Words that have no unit, each for its reason. */
const DIMENSIONLESS = new Set([
  // ordinals and names that happen to be digits
  "channel",
  "channels",
  "universe",
  "address",
  // a load in W is called by its unit; a wire by its gauge number
  "watts",
  "awg",
  "rank",
  "line",
  "record",
  "seed",
  // coefficients and probabilities by their name in the literature
  "exponent",
  "reliability",
  "distancePowerCoefficient",
  "probability",
  // DMX512: universes and slots are numbered; a load in W is called by its unit
  "universe",
  "address",
  "watts",
  // counts by their name in the literature
  "trials",
  "runLength",
  // plain mathematics
  "x",
  "y",
  "z",
]);

/** What the numeric room calls its arguments: pure numbers, whatever unit its callers give them. */
const MATHEMATICS = new Set([
  "a",
  "b",
  "coefficients",
  "covariance",
  "design",
  "from",
  "high",
  "im",
  "low",
  "mean",
  "noncentrality",
  "observed",
  "order",
  "re",
  "residuals",
  "sigma",
  "to",
  "tolerance",
  "unscaledCovariance",
  "value",
  "values",
]);

/** Coefficients of ITU-R P.2040 (a to d, powers of GHz) and P.1238 (slopes), by their letters there. */
const ITU_COEFFICIENTS = new Set(["a", "alpha", "b", "c", "d", "gamma"]);

/** Rooms that handle numbers of whatever unit: mathematics, a cell's number, a number to be written, channels by system, heads by crowd. */
const ANY_UNIT: Readonly<Record<string, ReadonlySet<string>>> = {
  numeric: MATHEMATICS,
  propagation: ITU_COEFFICIENTS,
  scan: new Set(["value"]),
  report: new Set(["value"]),
  venue: new Set([
    "systemOf",
    "fallback",
    "weakestRows",
    "start",
    "allowedChannels",
    "assignment",
    "fixedChannels",
    "overlap",
    "empty",
    "part",
    "full",
  ]),
  commissioning: new Set(["coefficients", "covariance", "design", "value", "then", "now"]),
};

/** @param room where the name stands: some rooms have words of their own */
export function saysItsUnit(name: string, room: string): boolean {
  if (ANY_UNIT[room]?.has(name)) return true;
  return UNIT.test(name) || DIMENSIONLESS_END.test(name) || BARE_UNIT.test(name) || DIMENSIONLESS.has(name);
}

/** @returns `file: name` for each number without a unit among a module's exported functions and types */
export function namesWithoutUnit(file: string, source: ts.SourceFile, checker: ts.TypeChecker): string[] {
  const module = checker.getSymbolAtLocation(source);
  const exported = module === undefined ? [] : checker.getExportsOfModule(module);
  const faults = new Set<string>();
  for (const symbol of exported)
    for (const declaration of symbol.declarations ?? [])
      if (declaration.getSourceFile() === source)
        for (const name of numbersOf(declaration, checker))
          if (!saysItsUnit(name, file.split("/")[0]!)) faults.add(`${file}: ${symbol.name}: ${name}`);
  return [...faults];
}

/** @returns the names of all parameters and fields of a signature or type that hold numbers */
function numbersOf(root: ts.Node, checker: ts.TypeChecker): string[] {
  const names: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isBlock(node) || hidden(node)) return;
    const named = ts.isParameter(node) || ts.isPropertySignature(node) || ts.isPropertyDeclaration(node);
    if (named && ts.isIdentifier(node.name) && isNumeric(checker.getTypeAtLocation(node), checker))
      names.push(node.name.text);
    if (ts.isVariableDeclaration(node)) return visitFunction(node, visit);
    ts.forEachChild(node, visit);
  };
  visit(root);
  return names;
}

/** Of a constant, only a function's parameters are a signature. */
function visitFunction(node: ts.VariableDeclaration, visit: (node: ts.Node) => void): void {
  if (node.type !== undefined) visit(node.type);
  const value = node.initializer;
  if (value !== undefined && (ts.isArrowFunction(value) || ts.isFunctionExpression(value)))
    value.parameters.forEach(visit);
}

function hidden(node: ts.Node): boolean {
  const modifiers = ts.canHaveModifiers(node) ? (ts.getModifiers(node) ?? []) : [];
  return modifiers.some(({ kind }) => kind === ts.SyntaxKind.PrivateKeyword);
}

/** A number, numbers or nothing, an array of them, or a sourced figure whose value is one. */
function isNumeric(type: ts.Type, checker: ts.TypeChecker): boolean {
  const parts = (type.isUnion() ? type.types : [type]).filter(
    (part) => !(part.flags & (ts.TypeFlags.Null | ts.TypeFlags.Undefined)),
  );
  return parts.length > 0 && parts.every((part) => isOneNumber(part, checker));
}

function isOneNumber(type: ts.Type, checker: ts.TypeChecker): boolean {
  if (type.flags & ts.TypeFlags.NumberLike) return true;
  const name = (type.aliasSymbol ?? type.getSymbol())?.name;
  if (name === "Float64Array") return true;
  if (checker.isArrayType(type) && !checker.isTupleType(type))
    return isNumeric(checker.getTypeArguments(type as ts.TypeReference)[0]!, checker);
  if (name !== "Figure") return false;
  const value = type.getProperty("value");
  return value !== undefined && isNumeric(checker.getTypeOfSymbol(value), checker);
}
