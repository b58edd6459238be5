import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parsed, PROJECT, sourceFiles, SRC } from "./tools/core-program.js";
import { examplesOf, fencedBlocks, readmeExamples, runExample, sameValue } from "./tools/examples.js";
import type { Modules } from "./tools/examples.js";

const load = async (file: string): Promise<Record<string, unknown>> =>
  existsSync(join(SRC, file))
    ? ((await import(/* @vite-ignore */ join(SRC, file))) as Record<string, unknown>)
    : {};

/** `stillband` and `stillband/room` are the sources; anything else is what Node finds. */
const modules: Modules = async (specifier) => {
  const own = /^stillband(?:\/([a-z]+))?$/.exec(specifier);
  if (own === null) return (await import(/* @vite-ignore */ specifier)) as Record<string, unknown>;
  return await load(own[1] === undefined ? "index.ts" : `${own[1]}/index.ts`);
};

describe("every @example of the sources holds", () => {
  const found = sourceFiles().flatMap((file) =>
    examplesOf(file, parsed(file, readFileSync(join(SRC, file), "utf8"))).map((example) => ({
      file,
      example,
    })),
  );
  test("and there are some", () => {
    expect(found.length).toBeGreaterThan(3);
  });
  test.each(found.map(({ file, example }) => [example.where, file, example] as const))(
    "%s",
    async (_where, file, example) => {
      const door = file.includes("/") ? `${file.split("/")[0]!}/index.ts` : "index.ts";
      const scope = { ...(await load("index.ts")), ...(await load(door)), ...(await load(file)) };
      expect(await runExample(example, scope, modules), "claims (`expression; // => value`)").toBeGreaterThan(
        0,
      );
    },
  );
});

describe("README.md", () => {
  const path = join(PROJECT, "README.md");
  const markdown = existsSync(path) ? readFileSync(path, "utf8") : "";
  const commands = fencedBlocks(markdown)
    .filter(({ info }) => /^(?:sh|bash|shell)\b/.test(info))
    .map(({ code }) => code);

  test("is there", () => {
    expect(existsSync(path), "README.md is missing").toBe(true);
  });
  test.each([
    ["demo", "channel-demo.txt"],
    ["place", "place-studio.txt"],
  ])("shows the beginning of %s as it is (tests/tools/update-golden.js writes it)", (mark, file) => {
    const whole = readFileSync(join(PROJECT, "fixtures/golden", file), "utf8");
    const block = new RegExp(`<!-- ${mark} -->\\n\\n\`\`\`text\\n([\\s\\S]*?)\\n\`\`\``);
    const shown = block.exec(markdown)?.[1] ?? "";
    expect(shown.split("\n").length).toBeGreaterThan(20);
    expect(whole.startsWith(`${shown}\n`)).toBe(true);
  });
  test("opens with commands that package.json knows, and holds the test command of .ci/run", () => {
    const { scripts } = JSON.parse(readFileSync(join(PROJECT, "package.json"), "utf8")) as {
      scripts: Record<string, string>;
    };
    const named = npmScripts(commands[0] ?? "");
    expect(named.length, "npm scripts in the first sh block").toBeGreaterThan(0);
    expect(named.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
    expect(commands.join("\n")).toContain("npm ci && npm test");
  });
  test("has library examples, and they hold", async () => {
    const examples = readmeExamples(markdown);
    expect(examples.length, "ts blocks that import from stillband").toBeGreaterThan(0);
    let claimCount = 0;
    for (const example of examples) claimCount += await runExample(example, {}, modules);
    expect(claimCount, "claims (`expression; // => value`)").toBeGreaterThan(0);
  });
});

/** @returns the scripts that npm commands name */
function npmScripts(shell: string): string[] {
  return [...shell.matchAll(/\bnpm\s+(?:(?:run|run-script)\s+(?:--?\S+\s+)*([\w:-]+)|(test|start)\b)/g)].map(
    (match) => match[1] ?? match[2]!,
  );
}

describe("the runner of examples", () => {
  const example = (code: string) => ({ where: "planted", code });
  const scope = { twice: (x: number) => 2 * x, ArgumentError: RangeError };
  const run = async (code: string): Promise<number> => await runExample(example(code), scope, modules);

  test.each([
    ["twice(2); // => 4", 1],
    ["twice(2);\n// => 4", 1],
    ["const a = twice(0.1 + 0.2);\na; // => 0.6\n[a, twice(1)]; // => [0.6, 2]", 2],
    ["({ a: twice(1),\n  b: null });\n// => { a: 2,\n//      b: null }", 1],
    ["new Float64Array([1, 2]); // => [1, 2]", 1],
    ['await Promise.resolve("a // => b"); // => "a // => b"', 1],
    ["twice(-Infinity); // => -Infinity", 1],
    ["null.a; // => throws TypeError", 1],
    ["null.a; // throws a TypeError", 1],
    ["const twice = (n: number): number => 3 * n; console.log(twice(1)); // => 3", 1],
    ['import { join } from "node:path";\nimport type { X } from "x";\njoin("a", "b"); // => "a/b"', 1],
    ["twice(1); // two", 0],
  ])("accepts %j", async (code, claimCount) => {
    expect(await run(code)).toBe(claimCount);
  });
  test.each([
    "twice(2); // => 5",
    "twice(0.5); // => 1.00000001",
    "twice(NaN); // => 0",
    "[1, 2]; // => [1]",
    "({ a: 1, b: 2 }); // => { a: 1 }",
    "[]; // => {}",
    "twice(2); // => throws TypeError",
    "null.a; // => throws RangeError",
    "null.a; // => 1",
    "absent(1); // => 1",
    "twice(2); // => 4 dBm",
    "const a = 1; // => 1",
    "twice(2); // => 4\ntwice(2); // => 5",
  ])("refuses %j", async (code) => {
    await expect(run(code)).rejects.toThrow();
  });
  test("compares numbers to 1e-9 of their size", () => {
    expect([
      sameValue(1, 1 + 5e-10),
      sameValue(1, 1 + 5e-9),
      sameValue(0, 1e-12),
      sameValue(NaN, NaN),
    ]).toEqual([true, false, false, true]);
  });
  test("takes an example from its comment whole", () => {
    const text =
      "/**\n * Words.\n * @example f({ a: 1 }, `@b`); // => [\n * //   1]\n * @returns x\n */\nexport function f() {}\n" +
      "/** @example g(); // => 1 */\nexport const g = () => 1;\nexport interface I {\n  /** @example h; // => 2 */\n  h: number;\n}\n";
    expect(examplesOf("x.ts", parsed("x.ts", text))).toEqual([
      { where: "x.ts:3", code: "f({ a: 1 }, `@b`); // => [\n//   1]" },
      { where: "x.ts:8", code: "g(); // => 1" },
      { where: "x.ts:11", code: "h; // => 2" },
    ]);
  });
  test("takes from a README the blocks that import the package or say run", () => {
    const block = (info: string, code: string) => `\`\`\`${info}\n${code}\n\`\`\`\n`;
    const markdown =
      "# A\n\n" +
      block("ts", 'import { a } from "stillband";') +
      block("ts", "declare const b: 1;") +
      block("ts run", "1; // => 1") +
      block("sh", "npm run --silent demo && npm test && npm run check:package && npm ci");
    expect(readmeExamples(markdown).map(({ where }) => where)).toEqual(["README.md:3", "README.md:9"]);
    expect(npmScripts(fencedBlocks(markdown).at(-1)!.code)).toEqual(["demo", "test", "check:package"]);
  });
});
