import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { coreProgram, parsed, PROJECT, sourceFiles, SRC } from "./tools/core-program.js";
import { brokenRule, importCycles, MAY_IMPORT, ROOMS } from "./tools/import-rules.js";
import type { Import } from "./tools/import-rules.js";
import { doorFaults, importsOf, lineCount, longFunctions } from "./tools/source-rules.js";
import { namesWithoutUnit, saysItsUnit } from "./tools/unit-names.js";

const MOST_FILE_LINES = 300;
const MOST_MEDIAN_LINES = 60;
const MOST_FUNCTION_LINES = 40;

const files = sourceFiles();
const sources = new Map(
  files.map((file) => [file, parsed(file, readFileSync(join(SRC, file), "utf8"))] as const),
);
const imports = [...sources].flatMap(([file, source]) => importsOf(file, source));

describe("the sources", () => {
  test("are there, each in a known room", () => {
    expect(files.length).toBeGreaterThan(10);
    expect(imports.length).toBeGreaterThan(10);
    expect(files.filter((file) => file !== "index.ts" && !ROOMS.includes(file.split("/")[0]!))).toEqual([]);
  });
  test("import only what their layer may", () => {
    expect(imports.flatMap((found) => brokenRule(found) ?? [])).toEqual([]);
  });
  test("import each other in no circle within a room", () => {
    expect(importCycles(imports)).toEqual([]);
  });
  test("are entered by doors that only re-export names", () => {
    const doors = [...sources].filter(([file]) => /(?:^|\/)index\.ts$/.test(file));
    expect(doors.flatMap(([file, source]) => doorFaults(file, source))).toEqual([]);
  });
  test(`have at most ${MOST_FILE_LINES} lines a file, ${MOST_MEDIAN_LINES} at the median`, () => {
    const lines = [...sources].map(([file, source]) => ({ file, count: lineCount(source.text) }));
    // The root door is a list of names and nothing else.
    expect(lines.filter(({ file, count }) => file !== "index.ts" && count > MOST_FILE_LINES)).toEqual([]);
    const sorted = lines.map(({ count }) => count).sort((a, b) => a - b);
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(MOST_MEDIAN_LINES);
  });
  test(`have at most ${MOST_FUNCTION_LINES} lines a function`, () => {
    const long = [...sources].flatMap(([file, source]) => longFunctions(file, source, MOST_FUNCTION_LINES));
    expect(long).toEqual([]);
  });
});

describe("the core", () => {
  const program = coreProgram({
    "band/planted.ts":
      'import type { Buffer as B } from "node:buffer";\nexport const n: B | string = process.argv[0] ?? "";\nconsole.log(n, window);\n',
    "band/planted-units.ts":
      "export interface Planted { readonly level: number; readonly levelDbm: number; readonly gaps?: readonly number[] | null }\n" +
      "export const f = ({ width }: { width: number }, heightM: number) => width * heightM;\n" +
      "export function g(bandwidth: number): number { const inner = (a: number) => a; return inner(bandwidth); }\n" +
      "function own(a: number): number { return a; }\nexport const value = own(1);\n",
  });

  test("is compiled without any of Node's or the browser's types", () => {
    const ambient = program.getSourceFiles().filter(({ fileName }) => /@types\/node|lib\.dom/.test(fileName));
    expect(ambient.map(({ fileName }) => fileName)).toEqual([]);
  });
  test("so that a stray process, console, window or node: fails to compile", () => {
    const planted = program.getSourceFile(join(SRC, "band/planted.ts"));
    const words = program
      .getSemanticDiagnostics(planted)
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, " "));
    for (const name of ["node:buffer", "process", "console", "window"])
      expect(words.join("\n")).toContain(`'${name}'`);
  });
  test("names the unit of every number in an exported signature, issues apart", () => {
    const checker = program.getTypeChecker();
    const core = files.filter((file) => /\//.test(file) && !/^(?:cli|issues)\//.test(file));
    const faults = core.flatMap((file) => {
      const source = program.getSourceFile(join(SRC, file));
      expect(source, file).toBeDefined();
      return namesWithoutUnit(file, source!, checker);
    });
    expect(faults).toEqual([]);
  });
  test("and would be caught not doing so", () => {
    const source = program.getSourceFile(join(SRC, "band/planted-units.ts"))!;
    const faults = namesWithoutUnit("band/p.ts", source, program.getTypeChecker());
    expect(faults.sort()).toEqual([
      "band/p.ts: Planted: gaps",
      "band/p.ts: Planted: level",
      "band/p.ts: f: width",
      "band/p.ts: g: bandwidth",
    ]);
  });
});

describe("the rules", () => {
  const from = (file: string, target: string, more: Partial<Import> = {}): Import => ({
    file,
    target,
    relative: true,
    typeOnly: false,
    ...more,
  });

  test.each([
    [from("band/a.ts", "scan/index.js"), "band may not import scan"],
    [from("band/a.ts", "scan/index.js", { typeOnly: true }), "band may not import scan"],
    [from("scorer/a.ts", "propagation/index.js"), "scorer may not import propagation"],
    [from("scan/a.ts", "band/shape.js"), "past its index"],
    [from("index.ts", "band/shape.js"), "past its index"],
    [from("index.ts", "cli/index.js"), "nothing may import cli"],
    [from("band/a.ts", "index.js"), "in no room"],
    [from("band/a.ts", "../package.json"), "in no room"],
    [from("attic/a.ts", "band/index.js"), "no known room"],
    [from("report/a.ts", "scorer/index.js"), "as type only"],
    [from("report/a.ts", "page/index.js", { typeOnly: true }), "report may not import page"],
    [from("page/a.ts", "venue/index.js"), "as type only"],
    [from("page/a.ts", "report/plan-model.js"), "past its index"],
    [from("report/a.ts", "d3-scale", { relative: false }), "belongs in cli"],
    [from("scan/a.ts", "node:fs", { relative: false }), "belongs in cli"],
    [from("scan/a.ts", "commander", { relative: false }), "belongs in cli"],
    [from("band/a.ts", "csv-parse/sync", { relative: false }), "belongs in cli"],
    [from("scan/a.ts", "csv-parse", { relative: false }), "belongs in cli"],
  ])("refuse %o", (planted, words) => {
    expect(brokenRule(planted)).toContain(words);
  });
  test.each([
    from("scan/a.ts", "scan/b.js"),
    from("radio/profiles/a.ts", "radio/profile.js"),
    from("scan/a.ts", "band/index.js"),
    from("report/a.ts", "scorer/index.js", { typeOnly: true }),
    from("report/a.ts", "units/index.js"),
    from("page/svg/a.ts", "report/index.js"),
    from("page/svg/a.ts", "venue/index.js", { typeOnly: true }),
    from("page/svg/a.ts", "d3-contour", { relative: false }),
    from("cli/commands/a.ts", "venue/index.js"),
    from("cli/a.ts", "node:fs", { relative: false }),
    from("scan/a.ts", "csv-parse/sync", { relative: false }),
    from("index.ts", "band/index.js"),
  ])("allow %o", (planted) => {
    expect(brokenRule(planted)).toBeUndefined();
  });
  test("let no room reach itself through others", () => {
    const reach = (room: string, path: readonly string[]): string[] =>
      path.includes(room)
        ? [[...path, room].join(" → ")]
        : MAY_IMPORT[room]!.flatMap((other) => reach(other, [...path, room]));
    expect(Object.keys(MAY_IMPORT).flatMap((room) => reach(room, []))).toEqual([]);
  });

  test("find every kind of import", () => {
    const text =
      'import a, { type B } from "./b.js";\nimport type { C } from "../units/index.js";\nimport { type D } from "d";\n' +
      'export { e } from "./deep/e.js";\nexport type { F } from "./f.js";\nconst g = await import("node:fs");\n' +
      'let h: import("../issues/index.js").Issue;\nimport "./i.js";\n';
    expect(
      importsOf("band/x.ts", parsed("x.ts", text)).map(({ target, typeOnly }) => [target, typeOnly]),
    ).toEqual([
      ["band/b.js", false],
      ["units/index.js", true],
      ["d", true],
      ["band/deep/e.js", false],
      ["band/f.js", true],
      ["node:fs", false],
      ["issues/index.js", true],
      ["band/i.js", false],
    ]);
  });
  test("see an import cycle, and none where there is none", () => {
    const circle = [from("a/1.ts", "a/2.js"), from("a/2.ts", "a/3.js"), from("a/3.ts", "a/1.js")];
    expect(importCycles(circle)).toEqual([["a/1.ts", "a/2.ts", "a/3.ts", "a/1.ts"]]);
    expect(importCycles([...circle.slice(0, 2), from("a/1.ts", "a/3.js"), from("a/3.ts", "b/1.js")])).toEqual(
      [],
    );
    expect(importCycles([from("a/1.ts", "a/1.js")])).toEqual([["a/1.ts", "a/1.ts"]]);
  });
  test("see a door that does more than re-export", () => {
    const text =
      'export { a } from "./a.js";\nexport * from "./b.js";\nexport const c = 1;\nimport "./d.js";\n';
    expect(doorFaults("x/index.ts", parsed("index.ts", text)).map((fault) => fault.split(":")[1])).toEqual([
      "2",
      "3",
      "4",
    ]);
  });
  test("see a long function, whatever its kind", () => {
    const body = `{\n${"  f();\n".repeat(MOST_FUNCTION_LINES - 2)}}`;
    const longer = body.replace("{\n", "{\n\n");
    for (const head of ["function f() ", "const f = () => ", "class A { m() ", "class B { get g() "]) {
      const tail = head.startsWith("class") ? "}" : "";
      const count = (text: string): number =>
        longFunctions("x.ts", parsed("x.ts", head + text + tail), MOST_FUNCTION_LINES).length;
      expect([head, count(body), count(longer)]).toEqual([head, 0, 1]);
    }
  });
  test("count lines as an editor does", () => {
    expect([lineCount("a"), lineCount("a\n"), lineCount("a\nb"), lineCount("a\n\n")]).toEqual([1, 1, 2, 2]);
  });
  test("know units by the end of a name", () => {
    for (const name of ["levelDbm", "distanceM", "onRatio", "channel", "x"])
      expect(saysItsUnit(name, "band")).toBe(true);
    for (const name of ["level", "distance", "tx", "dbmLevel", "DISTANCE", "problem", "totalms"])
      expect(saysItsUnit(name, "band")).toBe(false);
    expect([saysItsUnit("mean", "numeric"), saysItsUnit("mean", "band")]).toEqual([true, false]);
  });
});

test("the package offers each model room by its own door and keeps cli to itself", () => {
  const { exports } = JSON.parse(readFileSync(join(PROJECT, "package.json"), "utf8")) as {
    exports: Record<string, unknown>;
  };
  const doors = Object.keys(exports).flatMap((door) => /^\.\/([a-z]+)$/.exec(door)?.[1] ?? []);
  const rooms = new Set(
    files.filter((file) => file.endsWith("/index.ts")).map((file) => file.split("/")[0]!),
  );
  expect(doors).not.toContain("cli");
  for (const room of rooms)
    if (!["numeric", "report", "page", "cli"].includes(room)) expect(doors).toContain(room);
});
