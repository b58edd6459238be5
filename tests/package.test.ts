/** What can be told of the package without packing it; tests/tools/check-package.js packs and installs it. */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parsed, PROJECT, sourceFiles, SRC } from "./tools/core-program.js";
import { importsOf } from "./tools/source-rules.js";

interface Door {
  readonly types: string;
  readonly default: string;
}

const read = (path: string): string => readFileSync(join(PROJECT, path), "utf8");
const manifest = JSON.parse(read("package.json")) as {
  readonly type: string;
  readonly sideEffects: boolean;
  readonly bin: Record<string, string>;
  readonly files: readonly string[];
  readonly exports: Record<string, Door | string>;
  readonly dependencies: Record<string, string>;
  readonly scripts: Record<string, string>;
};
const doors = Object.entries(manifest.exports).filter(
  (entry): entry is [string, Door] => typeof entry[1] === "object",
);
const dist = join(PROJECT, "dist");
const built = existsSync(dist)
  ? readdirSync(dist, { recursive: true, encoding: "utf8" }).filter((name) =>
      statSync(join(dist, name)).isFile(),
    )
  : [];

describe("package.json", () => {
  test("states an ES module without side effects, of dist and bin alone", () => {
    expect([manifest.type, manifest.sideEffects, manifest.files]).toEqual([
      "module",
      false,
      ["dist", "!dist/cli/index.cache", "bin"],
    ]);
  });
  test("gives each door its types first and then its code, for import and require alike", () => {
    expect(doors.length).toBeGreaterThan(1);
    for (const [name, door] of doors) {
      expect(Object.keys(door), name).toEqual(["types", "default"]);
      expect(door.types, name).toBe(door.default.replace(/\.js$/, ".d.ts"));
    }
  });
  test("has its API reference made from every door", () => {
    const { entryPoints } = JSON.parse(read("tests/typedoc.json")) as { entryPoints: readonly string[] };
    const sources = doors.map(([, door]) => door.default.replace("./dist", "../src").replace(/js$/, "ts"));
    expect(entryPoints).toEqual(sources.filter((path) => path !== "../src/index.ts"));
    expect(read(".gitignore")).toMatch(/^docs\/$/m);
  });
  test("runs nothing on the machine that installs it", () => {
    const hooks = ["preinstall", "install", "postinstall", "prepare"];
    expect(Object.keys(manifest.scripts).filter((name) => hooks.includes(name))).toEqual([]);
  });
  test("depends on exactly what the sources import", () => {
    const packages = sourceFiles()
      .flatMap((file) => importsOf(file, parsed(file, readFileSync(join(SRC, file), "utf8"))))
      .filter(({ relative, target }) => !relative && !target.startsWith("node:"))
      .map(({ target }) =>
        target
          .split("/")
          .slice(0, target.startsWith("@") ? 2 : 1)
          .join("/"),
      );
    expect([...new Set(packages)].sort()).toEqual(Object.keys(manifest.dependencies).sort());
  });
});

describe("dist, as `npm run build` leaves it,", () => {
  test("is there", () => {
    expect(built.length, "run `npm run build` first").toBeGreaterThan(10);
  });
  test("has the file behind every door", () => {
    const missing = doors
      .flatMap(([, door]) => [door.types, door.default])
      .filter((path) => !existsSync(join(PROJECT, path)));
    expect(missing).toEqual([]);
  });
  test("keeps the command in one file and chunks, without declarations", () => {
    const command = built.filter((name) => name.startsWith("cli/"));
    expect(command).toContain("cli/index.js");
    expect(
      command.filter(
        (name) => !/^cli\/(?:[\w-]+\.js|(?:whole|page)\.cjs|NOTICES\.txt|index\.cache)$/.test(name),
      ),
    ).toEqual([]);
  });
  test("asks nothing of Node in the library or its declarations", () => {
    const faults = built
      .filter((name) => /\.(?:js|d\.ts)$/.test(name) && !name.startsWith("cli/"))
      .filter((name) => /["']node:|\bNodeJS\.|<reference |from "csv-parse"/.test(read(join("dist", name))));
    expect(faults).toEqual([]);
  });
});

describe("the public names", () => {
  test("are those listed; a name more or less is news", async () => {
    const lines: string[] = [];
    for (const [name, door] of doors) {
      const file = join(SRC, door.default.replace(/^\.\/dist\//, "").replace(/\.js$/, ".ts"));
      const names = Object.keys((await import(/* @vite-ignore */ file)) as object).sort();
      expect(names.length, name).toBeGreaterThan(0);
      lines.push(...names.map((exported) => `${name} ${exported}`));
    }
    await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot("../fixtures/golden/exported-names.txt");
  });
});

test("the shim is short, tolerates a closed pipe and never cuts its own output", () => {
  const shim = read(manifest.bin["stillband"]!);
  expect(shim.startsWith("#!/usr/bin/env node\n")).toBe(true);
  expect(shim.split("\n").length).toBeLessThanOrEqual(30); // the code cache takes half of it
  expect(shim).toContain("EPIPE");
  expect(shim).not.toContain("process.exit(");
  expect(statSync(join(PROJECT, manifest.bin["stillband"]!)).mode & 0o111).not.toBe(0);
});
