/** Help comes from the one table of commands; every command is held to the same manners. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { COMMANDS } from "../../src/cli/program.js";
import { tooWide } from "./columns.js";
import { inProcess, PROJECT, stillband } from "./stillband.js";

const helps = ["", ...COMMANDS.map(({ name }) => name)];
const helpOf = async (name: string): Promise<string> => {
  const { code, out } = await inProcess([...(name === "" ? [] : [name]), "--help"], { columns: 200 });
  expect(code).toBe(0);
  return out;
};

describe.each(helps)("help of %j", (name) => {
  test("opens with examples, each of which the parser knows", async () => {
    const [head, ...lines] = (await helpOf(name)).split("\n");
    expect(head).toBe("Examples:");
    const examples = lines.slice(0, lines.indexOf(""));
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) {
      const words = /stillband ([a-z]+)(.*)/.exec(example)!;
      expect(helps.slice(1), example).toContain(words[1]);
      if (name !== "") expect(words[1], example).toBe(name);
      const known = await helpOf(words[1]!);
      for (const [flag] of words[2]!.matchAll(/(?<= )-{1,2}[a-z][\w-]*/g))
        expect(known, example).toContain(flag);
    }
  });
  test("fits 80 columns, on a wide terminal too", async () => {
    expect(tooWide(await helpOf(name), 80)).toEqual([]);
  });
  test("is the same through the word help", async () => {
    const { out } = await inProcess(["help", ...(name === "" ? [] : [name])]);
    expect(out.split("\n")[0]).toBe("Examples:");
    expect(out).toContain("Usage: stillband");
  });
});

describe("README", () => {
  const readme = readFileSync(join(PROJECT, "README.md"), "utf8");
  test.each(helps.slice(1))(
    "shows the help of %s as it is (tests/tools/update-golden.js writes it)",
    async (name) => {
      const shown = readme.split(`<summary><code>stillband ${name}</code></summary>`)[1]?.split("```")[1];
      expect(shown).toBe(`text\n${await helpOf(name)}`);
    },
  );
});

test("README's table of commands has a row for every command and no other", () => {
  const readme = readFileSync(join(PROJECT, "README.md"), "utf8");
  const rows = [...readme.matchAll(/^\| `([a-z]+)(?: [^`]*)?`[^|]*\|/gm)].flatMap(([line]) =>
    [...line.matchAll(/`([a-z]+)/g)].map(([, word]) => word!),
  );
  expect([...new Set(rows)].filter((word) => helps.includes(word)).sort()).toEqual(helps.slice(1).sort());
});

describe("a mistyped word", () => {
  test.each([
    [["chanel", "hall.csv"], /Did you mean channel\?/],
    [["channel", "hall.csv", "--profil", "x"], /Did you mean --profile\?/],
    [["patch", "venue.yaml", "--lables"], /Did you mean --labels\?/],
    [["hang", "venue.yaml", "--sheets", "x"], /Did you mean --sheet\?/],
    [["completion", "zs"], /Try: stillband completion zsh/],
  ] as const)("%j: the nearest is suggested, nothing is run", async (words, suggestion) => {
    const { code, out, err } = await stillband(words);
    expect([code, out]).toEqual([64, ""]);
    expect(err).toMatch(suggestion);
    expect(err).toMatch(/\nTry: stillband/);
  });
});

describe("stillband alone", () => {
  test("on a terminal says what to do first, in 80 columns", async () => {
    const { code, out } = await inProcess([], { isTTY: true });
    expect(code).toBe(0);
    expect(tooWide(out, 80)).toEqual([]);
    expect(out).toMatch(/^stillband plans wireless DMX.*\n\nFirst, scan/);
  });
  test("names only commands that there are", async () => {
    const { out } = await inProcess([]);
    const named = [...out.matchAll(/\bstillband (?!plans|wireless)([a-z]+) /g)].map(([, word]) => word);
    expect(named.length).toBeGreaterThan(4);
    expect(named.filter((word) => word !== "to" && !helps.includes(word!))).toEqual([]);
    for (const command of ["plan", "verify", "completion"])
      expect(named.includes(command), command).toBe(helps.includes(command));
  });
});
