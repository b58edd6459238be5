/** Standard input, files, pipes. */
import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { scratch } from "./scratch.js";
import { BIN, EMPTY, FOYER, FULL, PROJECT, run, stillband } from "./stillband.js";

const { folder, file } = scratch();
const node = JSON.stringify(process.execPath);
const shell = (script: string): ReturnType<typeof run> => run("sh", ["-c", script]);

describe("standard input", () => {
  test("- reads it, whatever its format; only the source's name differs from the file's result", async () => {
    for (const path of [FOYER, EMPTY]) {
      const stdin = readFileSync(join(PROJECT, path));
      const piped = await stillband(["survey", "-"], { stdin });
      expect([piped.code, piped.err]).toEqual([0, ""]);
      expect(piped.out).toBe((await stillband(["survey", path])).out);
    }
  });
  test("problems in it are told of <stdin>", async () => {
    const { code, err } = await stillband(["survey", "-"], { stdin: "" });
    expect(code).toBe(65);
    expect(err).toMatch(/<stdin>.*empty/);
  });
  test("so does a pipe with a name, and a file beyond a MiB", async () => {
    const { out } = await stillband(["survey", FOYER]);
    const pipe = join(folder, "scan");
    const piped = await shell(
      `mkfifo ${pipe}; cat ${join(PROJECT, FOYER)} >${pipe} & ${node} ${BIN} survey ${pipe}`,
    );
    expect([piped.code, piped.out]).toEqual([0, out]);
    const long = file("long.txt", `${readFileSync(join(PROJECT, FOYER), "utf8")}${"\n".repeat(1 << 21)}`);
    expect((await stillband(["survey", long])).out).toBe(out);
  });
  test("takes the fills that stand before it", async () => {
    const stdin = readFileSync(join(PROJECT, FOYER));
    const { out } = await stillband(["channel", "--place", "north bar", "--crowd", "full", "-"], { stdin });
    expect(out.split("\n", 1)[0]).toMatch(/north bar.*full/);
  });
});

describe("-o FILE", () => {
  test.each([
    ["text", ["channel", EMPTY, FULL]],
    ["JSON", ["channel", "--json", EMPTY, FULL]],
    ["CSV", ["convert", EMPTY]],
  ])("%s: the file holds what the pipe would carry, standard output nothing", async (_, args) => {
    const path = join(folder, "out");
    const ended = await stillband([...args, "-o", path]);
    expect([ended.code, ended.out, ended.err]).toEqual([0, "", ""]);
    expect(readFileSync(path, "utf8")).toBe((await stillband(args)).out);
    expect(readdirSync(folder).filter((name) => name.includes("part"))).toEqual([]);
  });
  test("a run that fails leaves what was there", async () => {
    const path = file("kept.txt", "before");
    expect((await stillband(["channel", "nowhere.csv", "-o", path])).code).toBe(66);
    expect(readFileSync(path, "utf8")).toBe("before");
  });
  test("what is there and is no plain file, such as a pipe with a name, is written to, never replaced", async () => {
    const pipe = join(folder, "pipe");
    const got = join(folder, "got");
    const command = `${node} ${BIN} link -o ${pipe}`;
    const { out } = await shell(
      `mkfifo ${pipe}; timeout 2 cat ${pipe} >${got} & ${command}; wait; test -p ${pipe} && echo "a pipe still"`,
    );
    expect(out).toBe("a pipe still\n");
    expect(readFileSync(got, "utf8")).toBe((await stillband(["link"])).out);
  });
  test("nor is a device, or a plain file that stands behind the name of one", async () => {
    expect(await stillband(["link", "-o", "/dev/null"])).toEqual({ code: 0, out: "", err: "" });
    const log = file("log.txt", "before\n");
    await shell(`${node} ${BIN} link -o /dev/stdout >>${log}`);
    expect(readFileSync(log, "utf8")).toBe(`before\n${(await stillband(["link"])).out}`);
  });
  test("a link to a file stays a link, the file keeps its permissions", async () => {
    const path = file("private.txt", "before");
    chmodSync(path, 0o600);
    symlinkSync(path, join(folder, "link.txt"));
    expect((await stillband(["link", "-o", join(folder, "link.txt")])).code).toBe(0);
    expect(lstatSync(join(folder, "link.txt")).isSymbolicLink()).toBe(true);
    expect(readFileSync(path, "utf8")).toMatch(/^On /);
    expect(statSync(path).mode & 0o777).toBe(0o600);
  });
  test("-o - is standard output", async () => {
    expect((await stillband(["link", "-o", "-"])).out).toBe((await stillband(["link"])).out);
  });
});

describe("a pipe", () => {
  const long = `${node} ${BIN} channel --json --profile hop-79 ${FULL}`;
  test("whose reader leaves early: no bug, no word on standard error", async () => {
    for (const reader of ["head -1", "head -c 1", "true"])
      for (const writer of [long, `${node} ${BIN} channel ${FULL}`, `${node} ${BIN} convert ${FULL}`]) {
        const { out, err } = await shell(
          `{ { ${writer}; echo "exit $?" >&3; } | ${reader} >/dev/null; } 3>&1`,
        );
        expect([out, err], `${writer} | ${reader}`).toEqual(["exit 0\n", ""]);
      }
  });
  test("that is slow gets more than 64 KiB whole", async () => {
    const whole = await stillband(["channel", "--json", "--profile", "hop-79", FULL]);
    expect(whole.out.length).toBeGreaterThan(4 * 65_536);
    const slow = await shell(`${long} | { sleep 0.4; cat; }`);
    expect(slow.out === whole.out).toBe(true);
  });
});
