/** The text of whole runs. The files are golden: layout only; `node tests/tools/update-golden.js` rewrites them. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { firstBlock, GOLDEN, goldenCases, stillband } from "./stillband.js";
import type { Ended } from "./stillband.js";

const cases = goldenCases();
const texts = cases.filter(({ file }) => file.endsWith(".txt"));
const answers = texts.filter(
  ({ args }) => ["survey", "channel", "link"].includes(args[0] ?? "") && !args.includes("--help"),
);
const HINT = "differs: node tests/tools/update-golden.js, then read git diff fixtures/golden";
const runs = new Map<string, Ended>();
const printed = (file: string): string => runs.get(file)!.out;

beforeAll(async () => {
  const waiting = [...cases];
  const worker = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift())
      runs.set(next.file, await stillband(next.args));
  };
  await Promise.all([worker(), worker()]);
});

describe("a run prints its golden file", () => {
  test.each(cases)("$file", ({ file, exit = 0 }) => {
    expect(runs.get(file)!.code).toBe(exit);
    expect(printed(file), HINT).toBe(readFileSync(join(GOLDEN, file), "utf8"));
  });
});

test.each(texts)("$file: no line is wider than 80 columns", ({ file }) => {
  expect(tooWide(printed(file), 80)).toEqual([]);
});

test.each(cases)("$file: piped, it carries no escape or other control character", ({ file }) => {
  const { out, err } = runs.get(file)!;
  expect(`${out}${err}`).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/);
});

test.each(texts)("$file: no trailing blanks, one line end at the end", ({ file }) => {
  const out = printed(file);
  expect(out.split("\n").filter((line) => /\s$/.test(line))).toEqual([]);
  expect(out).toMatch(/[^\n]\n$/);
});

describe("the opening block", () => {
  test.each(answers)("$file: at most eight lines, none cut short", ({ file }) => {
    const block = firstBlock(printed(file));
    expect(block.length).toBeGreaterThan(2);
    expect(block.length).toBeLessThanOrEqual(8);
    expect(block.filter((line) => line.endsWith("…"))).toEqual([]);
  });
  test("of channel: the room, radio channel with its MHz, fallback, spare dB, reach in m and ft, trust", () => {
    const block = firstBlock(printed("channel-demo.txt")).join("\n");
    expect(block).toMatch(/radio ch \d+ \(24\d\d MHz\).*fallback radio ch \d+ \(24\d\d MHz\)/);
    expect(block).toMatch(/\d+ dB to spare/);
    expect(block).toMatch(/\d+ m \(\d+ ft\)/);
    expect(block).toMatch(/foyer/);
    expect(block).toMatch(/partial/);
    expect(block).toMatch(/lift/);
  });
  test("of channel has whole numbers only", () => {
    expect(firstBlock(printed("channel-demo.txt")).filter((line) => /\d\.\d/.test(line))).toEqual([]);
  });
});

/** Design: least bad channel, its cost in frames, then in order: network staff, antenna, hopping, don't sell. */
describe("where nothing is clear, the opening block", () => {
  test.each(["channel-nothing-clear.txt", "channel-hop-79-avoid.txt", "channel-region-eu.txt"])(
    "%s: says so",
    (file) => {
      const block = firstBlock(printed(file)).join(" ");
      expect(block).toMatch(/FAILS/);
      expect(block).toMatch(/nothing clear/i);
      expect(block).toMatch(/frames/);
    },
  );
  test.each([
    ["channel-nothing-clear.txt", [/network staff/, /nearer/, /hopping/, /wireless/]],
    ["channel-hop-79-avoid.txt", [/network staff/, /nearer/, /wireless/]],
  ] as const)("%s: gives the ways out in order", (file, ways) => {
    const block = firstBlock(printed(file)).join(" ");
    const places = ways.map((way) => block.search(way));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
  test("least bad is what it calls the channel, everywhere", () => {
    expect(firstBlock(printed("channel-nothing-clear.txt")).join(" ")).toMatch(/least bad radio ch/i);
    expect(printed("channel-nothing-clear.txt")).not.toMatch(/recommended/);
  });
});

describe("channel says what it rests on", () => {
  test.each([
    ["generic figures", /generic figures; enter your radio's own/],
    [
      "the numbers of radio channels",
      /Radio channel numbers are the profile's own; Wi-Fi rules for 12 and 13/,
    ],
    ["the path model", /ITU-R P\.1238/],
    ["the fade law and its share", /Rician, K = 6 dB.*99 %/],
    ["shadowing is not in the allowance", /shadowing/],
    ["losses not named are 0 dB", /no walls \(0 dB\); no crowd in the path \(0\s+dB\)/],
    ["airtime that was assumed", /Airtime assumed for \d+ of \d+ sources/],
    ["the limit of contention groups", /those that cannot hear each other may overlap in truth/],
    ["the skirts of the masks", /worst legal skirts/],
    ["power was not judged", /transmit power was not judged/],
    [
      "what beacon lists are blind to",
      /blind to microphones, intercoms, cameras, hearing assistance and video links/,
    ],
    ["a lost frame shows only in a changing look", /only while the look is changing/],
    ["rows accounted for", /Rows: \d+ in = \d+ used \+ \d+ rejected \+ \d+ out of band/],
    ["one universe a transmitter", /second transmitter is a second system/],
    ["no emergency lighting", /No emergency or exit lighting may depend on the radio link/],
    ["it certifies nothing", /certifies nothing/],
    ["local rules decide", /local rules decide/],
  ])("%s", (_, words) => {
    expect(printed("channel-demo.txt").replace(/\s+/g, " ")).toMatch(words);
  });
});

test("one look says: scan again with the room full", () => {
  for (const file of ["channel-one-look.txt", "survey-one-look.txt"]) {
    const block = firstBlock(printed(file)).join(" ");
    expect(block).toMatch(/one[- ]look/i);
    expect(block).toMatch(/scan again with the room full/);
  }
});

test("a room whose crowd nobody said is not called part full", () => {
  for (const file of ["channel-one-look.txt", "survey-one-look.txt"])
    expect(printed(file)).not.toMatch(/fullest room scanned: part\b(?!.*assumed)/);
});

test("help opens with examples", () => {
  for (const { file } of texts.filter(({ args }) => args.includes("--help")))
    expect(printed(file)).toMatch(/^Examples:\n {2}(?:sudo .*\| |source <\()?stillband /);
});

test("feet are what a reader in the United States finds in the link table", () => {
  expect(printed("channel-region-us.txt").match(/^ *(?:15|30|50|65|100|130|200) ft /gm)).toHaveLength(7);
});
