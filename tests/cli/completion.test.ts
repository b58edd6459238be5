/** Completion as shells do it: bash runs its script; zsh and fish judge theirs where they are installed. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { completionCommands } from "../../src/cli/completion/completion-command.js";
import { COMMANDS, SHELLS } from "../../src/cli/program.js";
import { builtInProfiles, enclosureLosses, regionRules } from "../../src/radio/index.js";
import { BIN, run, stillband } from "./stillband.js";

const scripts = new Map<string, string>();
const folder = mkdtempSync(join(tmpdir(), "stillband-completion-"));
beforeAll(async () => {
  for (const shell of SHELLS) {
    const { code, out, err } = await stillband(["completion", shell]);
    expect([code, err]).toEqual([0, ""]);
    scripts.set(shell, out);
    writeFileSync(join(folder, `script.${shell}`), out);
  }
  for (const name of ["hall.csv", "hall full.csv", "venue.yaml"]) writeFileSync(join(folder, name), "");
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What bash offers for the last of some words, as a user who presses the tabulator key would see it. */
async function offered(...words: string[]): Promise<string[]> {
  const quoted = ["stillband", ...words].map((word) => `'${word}'`).join(" ");
  const asked =
    `source script.bash; complete -p stillband >&2; COMP_WORDS=(${quoted}); COMP_CWORD=${words.length}; ` +
    '_stillband; printf "%s\\n" "${COMPREPLY[@]}"';
  const { code, out, err } = await run("bash", ["--norc", "-c", asked], { cwd: folder });
  expect([code, err]).toEqual([0, "complete -F _stillband stillband\n"]);
  return out.split("\n").filter((line) => line !== "");
}

const flagsInHelp = (help: string): string[] =>
  [...help.matchAll(/^ {2}(?:(-\w), )?(--[\w-]+)/gm)].flatMap(([, short, long]) =>
    short === undefined ? [long!] : [short, long!],
  );

describe("bash completes", () => {
  test("commands", async () => {
    expect(await offered("")).toEqual([...COMMANDS.map(({ name }) => name), "help"]);
    expect(await offered("pr")).toEqual(["profiles"]);
    expect(await offered("help", "sur")).toEqual(["survey"]);
    expect(await offered("--v")).toEqual(["--version"]);
  });
  test.each(COMMANDS.map(({ name }) => name))(
    "the options of %s: those that its help tells",
    async (name) => {
      const { out } = await stillband([name, "--help"]);
      expect(flagsInHelp(out).length).toBeGreaterThan(5);
      expect((await offered(name, "-")).sort()).toEqual(flagsInHelp(out).sort());
    },
  );
  test.each([
    [
      ["channel", "--crowd", ""],
      ["empty", "part", "full"],
    ],
    [["channel", "--crowd", "f"], ["full"]],
    [["channel", "--crowd", "=", "f"], ["full"]],
    [
      ["channel", "--crowd", "="],
      ["empty", "part", "full"],
    ],
    [
      ["channel", "x.csv", "--units", ""],
      ["m", "ft"],
    ],
    [["--debug", "link", "--enclosure", ""], Object.keys(enclosureLosses)],
    [["rooms", "--region", ""], Object.keys(regionRules)],
    [
      ["hang", "--sheet", "c"],
      ["circuits", "checks"],
    ],
    [
      ["patch", "--order", ""],
      ["hanging", "fewest"],
    ],
    [["completion", ""], [...SHELLS]],
    [
      ["channel", "--profile", "ras"],
      ["raster-13", "raster-16"],
    ],
    [["channel", "--distance", ""], []],
    [
      ["survey", "ha"],
      ["hall.csv", "hall full.csv"],
    ],
    [["plan-of-nobody", "ha"], []],
    [["rooms", "v"], ["venue.yaml"]],
    [["fit", "-o", "ven"], ["venue.yaml"]],
  ] as const)("%j with %j", async (words, expected) => {
    expect((await offered(...words)).sort()).toEqual([...expected].sort());
  });
  test("a profile: those built in, and files", async () => {
    const found = await offered("profiles", "");
    expect(found).toEqual(expect.arrayContaining([...builtInProfiles.map(({ name }) => name), "venue.yaml"]));
  });
});

/** The words that a script's lines give a command, whatever the shell's way to write them. */
describe.each(["zsh", "fish"])("the script for %s", (shell) => {
  test("is what that shell can parse, where it is installed", () => {
    const judged = spawnSync(shell, ["-n", join(folder, `script.${shell}`)], { encoding: "utf8" });
    if (judged.error === undefined) expect([judged.status, judged.stderr]).toEqual([0, ""]);
    else expect(judged.error).toMatchObject({ code: "ENOENT" });
  });
  test("holds every option of every command, with its meaning and its words", () => {
    const script = scripts.get(shell)!;
    for (const { name, summary, options } of completionCommands()) {
      const own =
        shell === "fish"
          ? script.split("\n").filter((line) => line.includes(`seen_subcommand_from ${name}'`))
          : sectionOf(script, name).split("\n");
      expect(script).toContain(shell === "fish" ? `-a ${name} -d '` : `'${name}:`);
      expect(unquoted(script)).toContain(summary);
      for (const { flags, meaning, offer } of options) {
        const last = flags.at(-1)!;
        const flag = shell === "fish" ? ` -l ${last.slice(2)} ` : last;
        const line = own.find((one) => one.includes(flag) && unquoted(one).includes(meaning));
        expect(line, `${name} ${last}`).toBeDefined();
        for (const word of offer.words ?? []) expect(line, `${name} ${last}`).toContain(word);
      }
    }
  });
});

const sectionOf = (script: string, name: string): string =>
  script.slice(script.indexOf(`        ${name})\n`)).split(";;")[0]!;
const unquoted = (text: string): string => text.replaceAll("'\\''", "'").replace(/\\([\\':[\]])/g, "$1");

describe("completion", () => {
  test("as JSON is one value with the script", async () => {
    const { code, out } = await stillband(["completion", "fish", "--json"]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({
      schema: "stillband/completion@1",
      issues: [],
      shell: "fish",
      script: scripts.get("fish"),
    });
  });
  test.each([
    [["completion", "fis"], 'completion: expected bash, zsh, fish, got "fis"', "stillband completion fish"],
    [["completion"], "completion: expected a shell: bash, zsh, fish", "stillband completion bash"],
  ])("%j tells what was expected", async (words, message, next) => {
    const { code, out, err } = await stillband(words);
    expect([code, out, err]).toEqual([64, "", `stillband: ${message}\nTry: ${next}\n`]);
  });
  test("is asked of the file that users run", () => expect(BIN).toMatch(/bin[\\/]stillband\.js$/));
});
