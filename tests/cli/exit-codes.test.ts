/** How a run ends: the exit code and, on standard error, what, where, and the next step. */
import { chmodSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { schemaFaults } from "./schemas.js";
import { scanCsv } from "./scan-rows.js";
import { scratch } from "./scratch.js";
import { FOYER, inProcess, stillband } from "./stillband.js";
import type { Ended } from "./stillband.js";

const { folder, file } = scratch();
const GOOD = { bssid: "02:1a:00:00:00:01", ssid: "bar", channel: 6, signal: -50 };
const good = file("good.csv", scanCsv([GOOD]));
const bad = file(
  "bad.csv",
  scanCsv([GOOD, { ...GOOD, bssid: "02:1a:00:00:00:02", signal: "loud" }, { ...GOOD, crowd: "many" }]),
);
const empty = file("empty.csv", "");
const headerOnly = file("header-only.csv", scanCsv([]));
const binary = file("binary.csv", Buffer.from([0x7f, 0x45, 0x4c, 0x46, 0, 0, 1, 2, 0xff, 0xfe, 0, 0, 3]));
const fiveGhz = file("five.csv", scanCsv([{ ...GOOD, channel: 36, centre: 5180 }]));
const useless = [empty, headerOnly, binary, fiveGhz];
mkdirSync(join(folder, "sub"));

/** A bug of ours never shows, nothing is printed beside the error, and a next step ends it. */
function expectEnd({ code, out, err }: Ended, expected: number): void {
  expect(err).not.toMatch(/bug of ours|\n {4}at /);
  expect(code).toBe(expected);
  expect(out).toBe("");
  expect(err).toMatch(/^stillband: /);
  expect(err).toMatch(/\nTry: \S.*\n$/);
}

describe("0", () => {
  test.each([[[]], [["--help"]], [["--version"]], [["channel", "--help"]], [["channel", good]]])(
    "%j",
    async (args) => {
      const { code, out, err } = await stillband(args);
      expect([code, err]).toEqual([0, ""]);
      expect(out).not.toBe("");
    },
  );
});

describe("64: how it was called", () => {
  const USAGE: readonly (readonly [args: readonly string[], told: RegExp])[] = [
    [["channel"], /scan/],
    [["survey"], /scan/],
    [["convert"], /scan/],
    [["channell", good], /channel\b/],
    [["chanel", good], /channel\b/],
    [["suvey", good], /survey\b/],
    [["frobnicate"], /frobnicate/],
    [["channel", "--frob", good], /--frob/],
    [["channel", "--distanse", "20", good], /--distance/],
    [["channel", good, "--units", "km"], /--units.*m or ft.*km/],
    [["channel", good, "--set", "foo"], /--set.*FIGURE=VALUE.*foo/],
    [["channel", good, "--set", "foo=1"], /--set.*foo/],
    [["channel", good, "--set", "tx_power_dbm=loud"], /--set.*tx_power_dbm.*loud/s],
    [["channel", good, "--set", "tx_power_dbm=900"], /--set.*tx_power_dbm.*900/s],
    [["channel", good, "--enclosure", "tin"], /--enclosure.*slotted-metal.*tin/],
    [["channel", good, "--fade", "ricain"], /--fade.*rician.*ricain/],
    [["channel", good, "--fade", "rician"], /--fade/],
    [["channel", good, "--distance", "-3"], /--distance.*-3/],
    [["channel", good, "--distance", "0"], /--distance.*0/],
    [["channel", good, "--distance", "20km"], /--distance.*20km/],
    [["channel", good, "--distance", ""], /--distance/],
    [["channel", good, "--distance", "NaN"], /--distance.*NaN/],
    [["channel", good, "--distances", "5,,20"], /--distances/],
    [["channel", good, "--path-model", "magic"], /--path-model.*magic/],
    [["channel", good, "--reliability", "99"], /--reliability.*0\.99999.*99/],
    [["channel", good, "--busy-share", "1.5"], /--busy-share.*1\.5/],
    [["channel", good, "--burst-ms", "0"], /--burst-ms.*0/],
    [["channel", good, "--level-quantile", "90"], /--level-quantile.*90/],
    [["channel", good, "--assume-airtime", "0.1"], /--assume-airtime.*0\.1/],
    [["channel", good, "--assume-airtime", ",,"], /--assume-airtime/],
    [["channel", "--crowd", "packed", good], /--crowd.*empty, part.*full.*packed/],
    [["channel", "--time", "noon", good], /--time.*ISO 8601.*noon/],
    [["channel", good, "--region", "XX"], /--region.*EU.*XX/],
    [["link", "--channel", "14"], /--channel.*1 to 13.*14/],
    [["link", "--channel", "six"], /--channel.*six/],
    [["profiles", "raster-13", "raster-16"], /too many|one/i],
    [["channel", good, "-o"], /--output/],
    [["channel", good, "-o", ""], /--output.*""/],
    [["channel", good, "--distances", ""], /--distances.*""/],
    [["channel", good, "--assume-airtime", ""], /--assume-airtime.*""/],
    [["channel", good, "--level-quantile", " "], /--level-quantile/],
    [["channel", good, "--reliability", ""], /--reliability.*""/],
    [["channel", good, "--busy-share", ""], /--busy-share.*""/],
    [["channel", good, "--burst-ms", ""], /--burst-ms.*""/],
    [["channel", good, "--path-model", ""], /--path-model.*""/],
    [["channel", good, "--fade", ""], /--fade.*""/],
    [["channel", good, "--region", ""], /--region.*""/],
    [["channel", good, "--units", ""], /--units.*""/],
    [["channel", good, "--profile", ""], /--profile.*""/],
    [["channel", good, "--set", ""], /--set.*""/],
    [["channel", good, "--enclosure", ""], /--enclosure.*""/],
    [["channel", good, "--ignore", ""], /--ignore.*""/],
    [["link", "--channel", ""], /--channel.*""/],
    [["link", "--level-quantile", "3"], /--level-quantile.*3/],
    [["channel", ""], /scan file.*""/],
    [["channel", good, "--crowd", "full"], /--crowd full.*after it/],
    [["channel", good, "--place=hall", good, "--time", "2026-03-07"], /--time 2026-03-07.*after it/],
  ];
  test.each(USAGE.map(([args, told]) => ({ args, told, words: args.join(" ").replace(folder, "") })))(
    "$words",
    async ({ args, told }) => {
      const ended = await inProcess(args);
      expectEnd(ended, 64);
      expect(ended.err).toMatch(told);
    },
  );
  test("without a scan: how to name one", async () => {
    for (const command of ["channel", "survey", "convert"])
      expect((await inProcess([command])).err).toMatch(
        /name one or more scans, or - for standard input\nTry: stillband \w+ hall\.csv\n$/,
      );
  });
  test("as a process too; an unknown command is answered with the nearest, which is not run", async () => {
    const ended = await stillband(["chanel", good]);
    expectEnd(ended, 64);
    expect(ended.err).toMatch(/mean channel\?/);
  });
  test("the value to try is one that a working integrator could use, not the end of the range", async () => {
    for (const [flag, value, wrong] of [
      ["--busy-share", "7", /--busy-share 1\b/],
      ["--level-quantile", "3", /--level-quantile 1\b/],
      ["--reliability", "2", /--reliability 0\.99999/],
    ] as const)
      expect((await inProcess(["channel", good, flag, value])).err, flag).not.toMatch(wrong);
  });
});

describe("65: what was in the files", () => {
  test.each([
    ["an empty file", empty, /empty/],
    ["a header without rows", headerOnly, /row/],
    ["a binary file", binary, /binary/],
    ["only 5 GHz rows", fiveGhz, /5 or 6 GHz|5 GHz/],
  ])("%s", async (_, path, told) => {
    for (const command of ["channel", "survey", "link", "convert"]) {
      const ended = await inProcess([command, path]);
      expectEnd(ended, 65);
      expect(ended.err).toMatch(told);
      expect(ended.err).toContain(path);
    }
  });
  test("in few words, and the next step fits", async () => {
    expect((await inProcess(["channel", empty])).err).toBe(
      `stillband: ${empty}: an empty file; expected a scan table, Wi-Fi scan text or a power sweep\n` +
        "Try: sudo iw dev wlan0 scan > hall.txt, or see README, formats read\n",
    );
    expect((await inProcess(["channel", fiveGhz])).err).toMatch(/\nTry: scan the 2\.4 GHz band\n$/);
    expect((await inProcess(["channel", fiveGhz, empty])).err).not.toMatch(/scan the 2\.4 GHz band/);
  });
  test("where every row was rejected, what was wrong with each", async () => {
    const path = file(
      "all-bad.csv",
      scanCsv([
        { ...GOOD, signal: "loud" },
        { ...GOOD, crowd: "many" },
      ]),
    );
    const { err } = await inProcess(["channel", path]);
    expect(err).toMatch(/^stillband: .*all-bad\.csv: 2 rows: 2 rejected/);
    expect(err).toMatch(/all-bad\.csv:2 column "signal_dbm".*"loud"/);
    expect(err).toMatch(/all-bad\.csv:3 column "crowd".*"many"/);
  });
  test("one useless file among good ones ends it", async () => {
    expectEnd(await stillband(["channel", good, empty]), 65);
  });
  test("--strict: the report, every rejected row on standard error, and 65", async () => {
    const { code, out, err } = await stillband(["channel", "--strict", bad]);
    expect(code).toBe(65);
    expect(out).toMatch(/radio ch/);
    expect(err.match(/row skipped/g)).toHaveLength(2);
    const relaxed = await stillband(["channel", bad]);
    expect([relaxed.code, relaxed.out]).toEqual([0, out]);
    expect((await stillband(["channel", "--strict", good])).code).toBe(0);
    expect((await stillband(["channel", "--strict", "--json", "--quiet", bad])).code).toBe(65);
  });
  test("a rejected row is told by file, physical line, column, value, what was expected, what was done", async () => {
    const { err } = await stillband(["survey", bad]);
    expect(err).toMatch(/bad\.csv:3 column "signal_dbm": expected .*dBm.*"loud" \(row skipped\)/);
    expect(err).toMatch(/bad\.csv:4 column "crowd": expected empty, part, full.*"many" \(row skipped\)/);
  });
  test.each([
    ["no YAML", "a: [1", /line 1|not YAML/],
    ["a list", "- 1\n", /mapping|figures/],
    ["an unknown key", "name: mine\nbased_on: raster-13\nfrobs: 3\n", /frobs/],
    [
      "a figure out of range",
      "name: mine\nbased_on: raster-13\ntx_power_dbm: 500\n",
      /txPowerDbm|tx_power_dbm.*500/,
    ],
    ["nothing", "", /mapping|figures|empty/],
  ])("a profile file that is bad: %s", async (_, text, told) => {
    const ended = await stillband(["channel", good, "--profile", file("bad-profile.yaml", text)]);
    expectEnd(ended, 65);
    expect(ended.err).toMatch(/bad-profile\.yaml/);
    expect(ended.err).toMatch(told);
    expect(ended.err).not.toMatch(/is not a function|undefined/);
  });
  test("a good profile file is read, YAML and JSON alike", async () => {
    const yaml = file("mine.yaml", "name: mine\nbased_on: raster-13\ntx_power_dbm: 10\n");
    const json = file("mine.json", JSON.stringify({ name: "mine", based_on: "raster-13", tx_power_dbm: 10 }));
    const [a, b] = [
      await stillband(["link", "--profile", yaml]),
      await stillband(["link", "--profile", json]),
    ];
    expect([a.code, a.err, b.code, b.err]).toEqual([0, "", 0, ""]);
    expect(a.out).toBe(b.out);
    expect(a.out).toMatch(/Power 10 dBm/);
  });
});

describe("66: no such input", () => {
  test.each([
    ["a missing scan", ["channel", join(folder, "nowhere.csv")], /nowhere\.csv.*no such file/],
    ["a directory", ["channel", join(folder, "sub")], /sub.*directory/],
    ["a missing profile", ["channel", good, "--profile", "nowhere.yaml"], /nowhere\.yaml/],
    ["a mistyped profile", ["channel", good, "--profile", "raster-31"], /raster-13/],
    ["a mistyped profile by name", ["profiles", "hop97"], /hop-79/],
  ] as const)("%s", async (_, args, told) => {
    const ended = await stillband(args);
    expectEnd(ended, 66);
    expect(ended.err).toMatch(told);
  });
  test.skipIf(process.getuid?.() === 0)("no permission", async () => {
    const locked = file("locked.csv", scanCsv([GOOD]));
    chmodSync(locked, 0);
    const ended = await stillband(["channel", locked]);
    expectEnd(ended, 66);
    expect(ended.err).toMatch(/permission/);
  });
});

describe("73: cannot write", () => {
  test.each([
    ["into a missing folder", join(folder, "missing/report.txt")],
    ["onto a folder", join(folder, "sub")],
    ["through a file", join(good, "report.txt")],
  ])("%s, and nothing is left behind", async (_, path) => {
    const before = readdirSync(folder, { recursive: true });
    const ended = await stillband(["channel", good, "-o", path]);
    expectEnd(ended, 73);
    expect(ended.err).toContain(path);
    expect(readdirSync(folder, { recursive: true })).toEqual(before);
  });
  test("onto a folder: the next step isn't to make that folder", async () => {
    const { err } = await stillband(["channel", good, "-o", join(folder, "sub")]);
    expect(err).toMatch(/directory|folder/);
    expect(err).toMatch(/\nTry: name a file in it: /);
    expect(err).not.toMatch(/exists and is writable/);
  });
});

describe("--json with input of no use still prints one JSON value", () => {
  test.each(useless.map((path) => ({ path, name: path.slice(folder.length + 1) })))(
    "$name",
    async ({ path }) => {
      for (const command of ["channel", "survey", "link", "convert"]) {
        const { code, out, err } = await inProcess([command, "--json", path]);
        expect(code).toBe(65);
        expect(schemaFaults("refused", JSON.parse(out))).toEqual([]);
        expect((JSON.parse(out) as { readonly schema: string }).schema).toBe(`stillband/${command}@1`);
        expect(err).toMatch(/^stillband: /);
      }
    },
  );
  test.each([
    ["a missing file", ["channel", "--json", join(folder, "nowhere.csv")], 66],
    ["a directory", ["channel", "--json", folder], 66],
    ["an empty folder", ["survey", "--json", join(folder, "sub")], 66],
    ["a missing profile", ["profiles", "--json", "nowhere.yaml"], 66],
  ] as const)("%s", async (_, args, code) => {
    const ended = await inProcess(args);
    expect(ended.code).toBe(code);
    expect(schemaFaults("refused", JSON.parse(ended.out === "" ? "null" : ended.out))).toEqual([]);
  });
  test("--json with a profile file of no use", async () => {
    const path = file("no-profile.yaml", "frobs: 3\n");
    for (const args of [
      ["channel", "--json", good, "--profile", path],
      ["profiles", "--json", path],
    ]) {
      const { code, out } = await inProcess(args);
      expect(code).toBe(65);
      expect(schemaFaults("refused", JSON.parse(out === "" ? "null" : out))).toEqual([]);
    }
  });
  test("with -o FILE that value is what the file holds", async () => {
    const path = join(folder, "refused.json");
    const { code, out } = await inProcess(["channel", "--json", empty, "-o", path]);
    expect([code, out]).toEqual([65, ""]);
    expect(schemaFaults("refused", JSON.parse(readFileSync(path, "utf8")))).toEqual([]);
  });
  test("--quiet silences notes, never errors", async () => {
    expect((await inProcess(["channel", "--quiet", empty])).err).toMatch(/empty/);
    expect((await inProcess(["channel", "--quiet", bad])).err).toBe("");
    const breach = ["channel", "--quiet", "--region", "EU", "--set", "tx_power_dbm=20", FOYER];
    expect((await inProcess(breach)).err).toMatch(/^error: .*too much/m);
    const held = ["channel", "--region", "EU", FOYER];
    expect((await inProcess(held)).err).toMatch(/^note: .*power taken as/m);
    expect((await inProcess([...held, "--quiet"])).err).toBe("");
  });
});
