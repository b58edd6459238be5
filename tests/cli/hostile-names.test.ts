/** Names are broadcast by strangers: none acts on a terminal, a spreadsheet or the layout. */
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { scanCsv } from "./scan-rows.js";
import { scratch } from "./scratch.js";
import { firstBlock, inProcess, stillband } from "./stillband.js";
import type { ConvertJson } from "./json-types.js";

const { file, folder } = scratch();

const NAMES = {
  "a colour": "\u001b[31mred\u001b[0m",
  "a window title": "\u001b]0;owned\u0007",
  "a cleared screen": "\u001b[2J\u001b[H",
  "C1 controls": "\u009b2J\u0090q\u009c",
  backspaces: "safe\b\b\b\bevil",
  "bidi override": "net\u202egnp.exe",
  "bidi isolates": "\u2066\u2067x\u2069",
  "a line feed": "two\nlines",
  "a carriage return": "over\rwrite",
  "a line separator": "line\u2028para\u2029",
  "zero width": "a\u200b\u200c\ufeffb",
  "very long": "W".repeat(5000),
  "many marks": `z${"\u0301".repeat(200)}`,
  HTML: '<script>alert(1)</script><img src=x onerror="alert(1)">',
  "a formula": '=HYPERLINK("http://192.0.2.1","free")',
  "a plus": "+1-555",
  "a minus": "-2+3",
  "an at": "@SUM(A1)",
  "a tab": "\t=1",
  "an emoji family": "👨‍👩‍👧‍👦 hall",
  "wide letters": "漢字漢字漢字漢字漢字漢字",
  "an astral letter": "𠀀𠀁𝕏",
  "an Arabic ligature": "ﷺﷺﷺ",
  "a placeholder": "%s %n ${HOME} $(id) `id`",
  "markup of ours": "(and 99 weaker)",
};
const names = Object.values(NAMES);
const rows = names.map((ssid, index) => ({
  time: "2026-02-03T18:00:00Z",
  place: `hall ${ssid.slice(0, 40)}`,
  crowd: "full",
  bssid: `02:${index.toString(16).padStart(2, "0")}:00:00:00:00`,
  ssid,
  channel: 1 + ((index * 5) % 13),
  signal: -40 - index,
}));
const hostile = file("hostile.csv", scanCsv(rows));
// What a terminal obeys or shows out of order: C0 and C1 but for the line feed, bidi controls, separators, zero widths.
const UNSAFE =
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/u;

describe.each(["channel", "survey", "link"])("%s", (command) => {
  test("prints no control, bidi or separator character", async () => {
    const { code, out, err } = await stillband([command, hostile]);
    expect(code).toBe(0);
    expect(`${out}${err}`).not.toMatch(UNSAFE);
  });
  test("keeps its layout: 80 columns, as many lines as for plain names", async () => {
    const tame = rows.map((row, index) => ({ ...row, ssid: `net ${index}`, place: `hall ${index}` }));
    const { out } = await inProcess([command, hostile]);
    const plain = await inProcess([command, file("tame.csv", scanCsv(tame))]);
    expect(out.split("\n").length).toBe(plain.out.split("\n").length);
    const wide = new Set(tooWide(plain.out, 80));
    expect(tooWide(out, 80).filter((line) => !wide.has(line))).toEqual([]);
    expect(firstBlock(out).length).toBe(firstBlock(plain.out).length);
  });
});

test("a file's own name is no way in", async () => {
  const path = file("\u001b[2Jscan\u202e.csv", scanCsv([{ ...rows[0]!, signal: "loud" }, rows[1]!]));
  for (const args of [
    ["channel", path],
    ["channel", `${path}x`],
    ["channel", folder, "\u001b[31m"],
    ["\u001b[31m"],
    ["link", "--fade", "\u001b[31m"],
    ["channel", path, "--profile", "\u001b[31m"],
  ]) {
    const { out, err } = await inProcess(args);
    expect(`${out}${err}`).not.toMatch(UNSAFE);
  }
});

test("nor is a value that is told of as wrong", async () => {
  const path = file(
    "wrong.csv",
    scanCsv([rows[9]!, { ...rows[0]!, signal: "\u001b[31m\u202e" }, { ...rows[0]!, crowd: "fu\nll" }]),
  );
  const { err } = await inProcess(["channel", path]);
  expect(err.trimEnd().split("\n")).toHaveLength(2);
  expect(err).not.toMatch(UNSAFE);
  const { out } = await inProcess(["channel", path, "--ignore", "\u001b[31m"]);
  expect(out).not.toMatch(UNSAFE);
});

describe("convert", () => {
  test("defuses what a spreadsheet would run: no cell begins with = + - @ tab or CR", async () => {
    const { out } = await inProcess(["convert", hostile]);
    const [, ...cells] = parse(out);
    expect(cells).toHaveLength(names.length);
    for (const row of cells) for (const cell of [row[1]!, row[4]!]) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
  });
  test("writes no escape sequence: controls are made visible", async () => {
    const { out } = await inProcess(["convert", hostile]);
    // Line feeds, carriage returns and tabs may stand inside quotes.
    expect(out).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/);
  });
  test("an escape sequence as it is written: every control behind an apostrophe", async () => {
    const { out } = await inProcess(["convert", hostile]);
    expect(out).toContain("'\\u001b[31mred\\u001b[0m");
    expect(out).toContain("'\\u009b2J\\u0090q\\u009c");
  });
  test("what it wrote reads back to the same radios and levels", async () => {
    const first = JSON.parse((await inProcess(["convert", "--json", hostile])).out) as ConvertJson;
    const again = file("again.csv", (await inProcess(["convert", hostile])).out);
    const second = JSON.parse((await inProcess(["convert", "--json", again])).out) as ConvertJson;
    const told = ({ readings }: ConvertJson): unknown[] =>
      readings.map(({ bssid, signalDbm, crowd, timeMs, ssid }) => [bssid, signalDbm, crowd, timeMs, ssid]);
    expect(told(second)).toEqual(told(first));
  });
});

test("JSON carries the names as they are, in characters that no terminal obeys", async () => {
  const { out } = await inProcess(["convert", "--json", hostile]);
  expect((JSON.parse(out) as ConvertJson).readings.map(({ ssid }) => ssid)).toEqual(names);
  expect(out).not.toMatch(
    /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/,
  );
});
