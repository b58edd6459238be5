/** Every public name says what it is; what a function takes and gives, where it comes from, and a call that runs. */
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { coreProgram, SRC } from "./tools/core-program.js";
import { documentationFaults, saidBy } from "./tools/documentation.js";

const PLANTED = `
/** @returns twice */ export function bare(xM: number): number { return 2 * xM; }
export function silent(): void {}
/** Words. @param xM m @returns m @source s @validity v @example good(1); // => 1 */
export function good(xM: number): number { return xM; }
/** Words. @see {@link good} */ export function shown(): void {}
/** Words. @see {@link caller} */ export function called(): void {}
/** Words. @example called(); */ export function caller(): void {}
export interface Wordless { readonly a: string }
/** Words. */ export interface Told { readonly a: string }
/** Words. @example typed({ a: "" }); */ export function typed(told: Told): Told { return told; }
/** Words. */ export const constant = 1;
`;
const program = coreProgram({ "band/planted.ts": PLANTED });
const checker = program.getTypeChecker();

function exportsOf(file: string): { name: string; symbol: ts.Symbol; room: string }[] {
  const module = checker.getSymbolAtLocation(program.getSourceFile(join(SRC, file))!)!;
  return checker.getExportsOfModule(module).map((exported) => {
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    const path = symbol.declarations![0]!.getSourceFile().fileName.slice(SRC.length + 1);
    return { name: exported.name, symbol, room: path.split("/")[0]! };
  });
}

function faultsOf(file: string): string[] {
  const all = exportsOf(file);
  const exampleOf = (name: string): string => {
    const found = all.find((one) => one.name === name);
    return found === undefined
      ? ""
      : (saidBy(name, found.symbol, checker).tags.get("example") ?? []).join("\n");
  };
  return all.flatMap(({ name, symbol, room }) => documentationFaults(name, symbol, room, checker, exampleOf));
}

describe("every public name", () => {
  test("is documented", () => {
    expect(exportsOf("index.ts").length).toBeGreaterThan(700);
    expect(faultsOf("index.ts")).toEqual([]);
  });
  test("the rule finds what is missing, and nothing else", () => {
    expect(faultsOf("band/planted.ts").sort()).toEqual(
      [
        "bare: no @param xM",
        "bare: no @source",
        "bare: no @validity",
        "bare: no @example, nor @see of one that calls it",
        "silent: no sentence",
        "silent: no @example, nor @see of one that calls it",
        "shown: no @example, nor @see of one that calls it",
        "Wordless: no sentence",
      ].sort(),
    );
  });
});
