/** `--place`, `--crowd`, `--time` and `--ignore`; nothing depends on the order of rows or files. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { shuffled } from "../helpers/shuffled.js";
import { scanCsv } from "./scan-rows.js";
import { scratch } from "./scratch.js";
import { DEMO, EMPTY, FOYER, FULL, inProcess, PROJECT } from "./stillband.js";
import type { ChannelJson, ConvertJson, IssueJson, SurveyCommandJson } from "./json-types.js";

const { file } = scratch();

async function json<T>(args: readonly string[]): Promise<T> {
  const { code, out, err } = await inProcess([args[0]!, "--json", ...args.slice(1)]);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out) as T;
}

describe("--place, --crowd and --time fill blank cells of the files named after them", () => {
  const blank = { ssid: "bar", channel: 6, signal: -50 };
  const full = { ...blank, time: "2026-02-03T18:00:00Z", place: "pit", crowd: "full" };
  const one = file(
    "one.csv",
    scanCsv([
      { ...blank, bssid: "02:00:00:00:01:01" },
      { ...full, bssid: "02:00:00:00:01:02" },
    ]),
  );
  const two = file(
    "two.csv",
    scanCsv([
      { ...blank, bssid: "02:00:00:00:02:01" },
      { ...full, bssid: "02:00:00:00:02:02" },
    ]),
  );
  const three = file("three.csv", scanCsv([{ ...blank, bssid: "02:00:00:00:03:01" }]));
  const told = async (args: readonly string[]): Promise<Record<string, string>> => {
    const { readings } = await json<ConvertJson>(["convert", ...args]);
    return Object.fromEntries(
      readings.map(({ bssid, place, crowd, timeMs }) => [
        bssid!.slice(-5),
        `${place}|${crowd}|${timeMs === null ? null : new Date(timeMs).toISOString()}`,
      ]),
    );
  };
  const STATED = "pit|full|2026-02-03T18:00:00.000Z";

  test("not those named before, and never a filled cell", async () => {
    const args = [one, "--place", "loge", "--crowd", "part", "--time", "2026-02-03T17:30:00Z", two];
    expect(await told(args)).toEqual({
      "01:01": "|null|null",
      "01:02": STATED,
      "02:01": "loge|part|2026-02-03T17:30:00.000Z",
      "02:02": STATED,
    });
  });
  test('each until the next of its kind; "" ends it; --place=X is the same', async () => {
    const args = [
      "--place=loge",
      "--crowd",
      "part",
      one,
      "--place",
      "flies",
      two,
      "--place",
      "",
      "--crowd=empty",
      three,
    ];
    expect(await told(args)).toEqual({
      "01:01": "loge|part|null",
      "01:02": STATED,
      "02:01": "flies|part|null",
      "02:02": STATED,
      "03:01": "|empty|null",
    });
  });
  test("an option's value isn't taken for a file, nor a file after -- for an option", async () => {
    const { files } = await json<ConvertJson>(["convert", "--place", one, "--crowd", "full", "--", two]);
    expect(files.map(({ source }) => source)).toEqual([two]);
    const survey = await json<SurveyCommandJson>([
      "survey",
      "--level-quantile",
      "0.5",
      "--assume-airtime",
      "0,0,0",
      three,
    ]);
    expect(survey.survey.observationCount).toBe(1);
  });
  test("a file named twice counts once", async () => {
    expect((await json<SurveyCommandJson>(["survey", three, three])).survey.observationCount).toBe(1);
  });
});

describe("--ignore leaves out the crew's own radios, counted and said", () => {
  const crew = { bssid: "02:4d:00:00:00:10", ssid: "crew tablet", channel: 3, signal: -30 };
  const house = { bssid: "06:4d:00:00:00:20", ssid: "house", channel: 9, signal: -60 };
  const scan = file(
    "crew.csv",
    scanCsv([
      crew,
      { ...crew, time: "2026-02-03T18:00:00Z" },
      house,
      { ...house, bssid: "0a:4d:00:00:00:30", ssid: "tablet" },
    ]),
  );
  test.each([
    ["by name", ["--ignore", "crew tablet"], 2],
    ["by address", ["--ignore", "02:4d:00:00:00:10"], 2],
    ["by address in capitals", ["--ignore", "02:4D:00:00:00:10"], 2],
    ["twice", ["--ignore", "crew tablet", "--ignore", "06:4d:00:00:00:20"], 3],
  ] as const)("%s", async (_, options, ignoredCount) => {
    const { survey, emitters } = await json<SurveyCommandJson>(["survey", ...options, scan]);
    expect([survey.ignoredCount, survey.observationCount]).toEqual([ignoredCount, 4 - ignoredCount]);
    expect(emitters.flatMap(({ names }) => names)).not.toContain("crew tablet");
    for (const command of ["survey", "channel"]) {
      const { out } = await inProcess([command, ...options, scan]);
      expect(out.replace(/\s+/g, " ")).toContain(`+ ${ignoredCount} left out by --ignore`);
      expect(out).not.toContain("crew tablet");
    }
  });
  test("part of a name is not a name", async () => {
    expect((await json<SurveyCommandJson>(["survey", "--ignore", "tablet", scan])).survey.ignoredCount).toBe(
      1,
    );
  });
  test("a source that no scan heard is a warning", async () => {
    const { code, err } = await inProcess(["survey", "--ignore", "nobody", scan]);
    expect(code).toBe(0);
    expect(err).toMatch(/^warning: .*nobody/m);
  });
  test("the ranking is that of a scan without it", async () => {
    const without = file(
      "without.csv",
      scanCsv([house, { ...house, bssid: "0a:4d:00:00:00:30", ssid: "tablet" }]),
    );
    const a = await json<ChannelJson>(["channel", "--ignore", "crew tablet", scan]);
    const b = await json<ChannelJson>(["channel", without]);
    expect(a.ranking).toEqual(b.ranking);
  });
});

describe("nothing depends on the order", () => {
  const sortIssues = <T extends { readonly issues: readonly IssueJson[] }>(value: T): T => ({
    ...value,
    issues: value.issues.map((issue) => JSON.stringify({ ...issue, line: 0, record: 0 })).sort(),
  });
  const foyer = ["--place", "foyer", "--crowd", "part", FOYER, "--place", "", "--crowd", ""];

  test.each(["channel", "survey"])("of files: %s --json", async (command) => {
    const first = sortIssues(await json<ChannelJson>([command, ...DEMO]));
    for (const files of [
      [...foyer, FULL, EMPTY],
      [FULL, ...foyer, EMPTY],
      [EMPTY, ...foyer, FULL],
    ])
      expect(sortIssues(await json<ChannelJson>([command, ...files]))).toEqual(first);
  });

  test.each([1, 2, 3])("of rows, shuffled by seed %i", async (seed) => {
    const shuffledFile = (path: string): string => {
      const [head, ...rows] = readFileSync(join(PROJECT, path), "utf8").trimEnd().split("\n");
      return file(path.slice(path.lastIndexOf("/") + 1), `${[head, ...shuffled(rows, seed)].join("\n")}\n`);
    };
    const mixed = [shuffledFile(FULL), shuffledFile(EMPTY)];
    for (const command of ["channel", "survey"]) {
      const straight = sortIssues(await json<ChannelJson>([command, EMPTY, FULL]));
      expect(sortIssues(await json<ChannelJson>([command, ...mixed]))).toEqual(straight);
    }
  });
});
