/** The type of every public name, by door: a changed signature or field is news. Golden: rewritten with `-u`. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { coreProgram, PROJECT, SRC } from "./tools/core-program.js";
import { declaredType } from "./tools/declared-type.js";

const { exports: manifest } = JSON.parse(readFileSync(join(PROJECT, "package.json"), "utf8")) as {
  exports: Record<string, unknown>;
};
/** Declarations and how they are printed: without their words and their code. */
const PLANTED: readonly (readonly [text: string, printed: string])[] = [
  [
    "/** Words. @returns x */ export function f(aM: number, more: { readonly b?: string } = {}): number { return aM + (more.b?.length ?? 0); }",
    "function f(aM: number, more?: { readonly b?: string; }): number",
  ],
  ["export const c = { aDb: 3 } as const;", "const c: { readonly aDb: 3; }"],
  ["export const h = (aM: number) => aM;", "const h: (aM: number) => number"],
  [
    "/** A. */ export interface I { /** B. */ readonly b: number; f(): void }",
    "interface I { readonly b: number; f(): void; }",
  ],
  ['export type T = "a" | "b";', 'type T = "a" | "b";'],
  [
    "export class K { private x = 1; constructor(readonly a: string) {} get(): number { return this.x; } }",
    "class K { new (a: string): K; readonly a: string; get: () => number; }",
  ],
];
const plantedFile = (index: number): string => `planted-${index}.ts`;
const program = coreProgram(Object.fromEntries(PLANTED.map(([text], index) => [plantedFile(index), text])));
const checker = program.getTypeChecker();

const rooms = Object.keys(manifest).flatMap((door) => /^\.\/([a-z]+)$/.exec(door)?.[1] ?? []);

function exportsOf(file: string): { name: string; symbol: ts.Symbol }[] {
  const module = checker.getSymbolAtLocation(program.getSourceFile(join(SRC, file))!)!;
  return checker
    .getExportsOfModule(module)
    .map((symbol) => ({
      name: symbol.name,
      symbol: symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol,
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

describe("the public types", () => {
  test("are those listed", async () => {
    const lines = rooms.flatMap((room) => [
      `// stillband/${room}`,
      ...exportsOf(`${room}/index.ts`).map(({ name, symbol }) => declaredType(name, symbol, checker)),
      "",
    ]);
    await expect(lines.join("\n")).toMatchFileSnapshot("../fixtures/golden/exported-types.txt");
  });
  test("of the main door are those of its rooms", () => {
    const known = new Set(rooms.flatMap((room) => exportsOf(`${room}/index.ts`).map(({ name }) => name)));
    const main = exportsOf("index.ts").map(({ name }) => name);
    expect(main.length).toBeGreaterThan(100);
    expect(main.filter((name) => !known.has(name))).toEqual([]);
  });
});

test.each(PLANTED.map((pair, index) => [...pair, index] as const))("%s: %s", (_text, printed, index) => {
  expect(
    exportsOf(plantedFile(index)).map(({ name, symbol }) => declaredType(name, symbol, checker)),
  ).toEqual([printed]);
});
