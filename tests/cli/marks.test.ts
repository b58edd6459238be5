/** Bold and faint only where a terminal wants them; the text reads the same without. */
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { scratch } from "./scratch.js";
import { DEMO, FOYER, FULL, inProcess, stillband } from "./stillband.js";

const { folder } = scratch();
const ESCAPE = /\u001b/;
const withoutMarks = (text: string): string => text.replace(/\u001b\[[0-9;]*m/g, "");
const REPORTS = [
  ["channel", ...DEMO],
  ["survey", ...DEMO],
  ["link", "--channel", "13", FULL],
  ["profiles", "raster-13"],
];

describe("a terminal", () => {
  test.each(REPORTS)("%s: carries marks, and nothing else than the piped text", async (...args) => {
    const shown = await inProcess(args, { isTTY: true, columns: 80 });
    expect(shown.code).toBe(0);
    expect(shown.out).toMatch(ESCAPE);
    expect(withoutMarks(shown.out)).toBe((await inProcess(args)).out);
    expect(shown.out).not.toMatch(/\u001b\[(?:3[0-7]|4[0-7]|9[0-7]|10[0-7]|[34]8)[;m]/); // no colours at all
  });
  test.each([60, 79, 80, 100, 120, 200])("of %i columns: fits, between 80 and 120", async (columns) => {
    for (const args of REPORTS.slice(0, 3)) {
      const { out } = await inProcess(args, { isTTY: true, columns });
      expect(tooWide(withoutMarks(out), Math.max(80, Math.min(120, columns)))).toEqual([]);
    }
  });
  test("that is wider shows more of the names", async () => {
    const [narrow, wide] = [
      await inProcess(["survey", ...DEMO], { isTTY: true, columns: 80 }),
      await inProcess(["survey", ...DEMO], { isTTY: true, columns: 120 }),
    ];
    const cut = (text: string): number => text.split("…").length - 1;
    expect(cut(wide.out)).toBeLessThan(cut(narrow.out));
    expect(tooWide(withoutMarks(wide.out), 80)).not.toEqual([]);
  });
});

test("warnings fold at 80 columns on a terminal, and stay a line each where they are piped", async () => {
  const args = ["channel", "--region", "EU", FOYER];
  const shown = await inProcess(args, { isTTY: true, columns: 120 });
  const piped = await inProcess(args);
  expect(tooWide(piped.err, 80)).not.toEqual([]);
  expect(tooWide(shown.err, 80)).toEqual([]);
  expect(shown.err.replace(/\n {2}/g, " ")).toBe(piped.err);
});

describe("no marks", () => {
  test.each([
    ["piped", {}, []],
    ["NO_COLOR", { isTTY: true, env: { NO_COLOR: "1" } }, []],
    ["TERM=dumb", { isTTY: true, env: { TERM: "dumb" } }, []],
    ["--no-color", { isTTY: true }, ["--no-color"]],
    ["-o FILE", { isTTY: true }, ["-o", join(folder, "report.txt")]],
  ] as const)("%s", async (_, terminal, more) => {
    const { code, out } = await inProcess(["channel", FOYER, ...more], terminal);
    expect(code).toBe(0);
    expect(out).not.toMatch(ESCAPE);
  });
  test("an empty NO_COLOR counts as unset, as no-color.org has it", async () => {
    expect((await inProcess(["channel", FOYER], { isTTY: true, env: { NO_COLOR: "" } })).out).toMatch(ESCAPE);
  });
  test("nor in JSON on a terminal", async () => {
    const { out } = await inProcess(["channel", "--json", FOYER], { isTTY: true });
    expect(out).not.toMatch(ESCAPE);
    expect(JSON.parse(out)).toHaveProperty("schema");
  });
  test("as a process, FORCE_COLOR in the environment does not reach a pipe", async () => {
    const { out } = await stillband(["channel", FOYER], { env: { FORCE_COLOR: "1", CLICOLOR_FORCE: "1" } });
    expect(out).not.toMatch(ESCAPE);
  });
});
