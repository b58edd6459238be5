import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ArgumentError, formatIssue } from "../../src/issues/index.js";
import { readScan } from "../../src/scan/read-scan.js";
import type { ReadScanOptions } from "../../src/scan/scan-import.js";
import { accounts, dialect, facts, oneRow, read } from "./dialects.js";

describe("every dialect of one table reads alike", () => {
  test.each([
    ["semicolon-decimal-comma-bom-crlf.csv", 0],
    ["tab.csv", 0],
    ["lone-cr.csv", 0],
    ["utf-16le.csv", 0],
    ["utf-16be.csv", 0],
    ["separator-hint.csv", 1],
  ])("%s", async (name, addedLines) => {
    const [result, plain] = [await read(dialect(name)), await read(dialect("comma.csv"))];
    expect(plain).toMatchObject({ format: "scan-csv", rowCount: 4, outOfBandCount: 1, rejectedCount: 0 });
    expect(plain.readings.map(({ line }) => line)).toEqual([2, 3, 4]);
    expect(facts(result)).toEqual(facts(plain));
    expect(result).toMatchObject({
      rowCount: 4,
      outOfBandCount: 1,
      rejectedCount: 0,
      issues: [],
      hasAges: false,
    });
    expect(result.readings.map(({ line }) => line - addedLines)).toEqual([2, 3, 4]);
  });

  test("columns in another order, in capitals, few of them, blank lines between", async () => {
    const result = await read(dialect("few-columns.csv"));
    expect(result).toMatchObject({ rowCount: 3, rejectedCount: 0, issues: [] });
    expect(
      result.readings.map(({ line, ssid, channel, signalDbm }) => [line, ssid, channel, signalDbm]),
    ).toEqual([
      [4, "Lantern Guest", 1, -48.5],
      [6, "", 6, -71],
      [8, "Slipway", 7, -66.5],
    ]);
  });

  test("quoted names, with the physical line of each row", async () => {
    const result = await read(dialect("quoted-names.csv"));
    expect(result.readings.map(({ line, ssid }) => [line, ssid])).toEqual([
      [2, "Bar, upstairs"],
      [3, 'say "cue"'],
      [4, "two\nlines"],
      [8, 'Bar; "A", \r\nB'],
    ]);
    expect(result.issues).toMatchObject([{ line: 7, record: 4, column: "signal_dbm", value: "bad" }]);
  });

  test("a quote that isn't sound costs its own row", async () => {
    const result = await read(dialect("stray-quotes.csv"));
    expect(result.readings.map(({ line }) => line)).toEqual([3, 5]);
    expect(result.issues.map(({ code, line, record }) => [code, line, record])).toEqual([
      ["unreadable", 2, 1],
      ["unreadable", 4, 3],
    ]);
    expect(accounts(result)).toBe(true);
  });
});

test("ragged rows are rejected and say how many cells they have", async () => {
  const result = await read("ssid,channel,signal_dbm\na,6\nb,6,-60\nc,6,-60,\n");
  expect(result).toMatchObject({ rowCount: 3, rejectedCount: 2 });
  expect(result.issues.map(({ code, value, expected }) => [code, value, expected])).toEqual([
    ["ragged-row", "2 cells", "3 cells, as the header has"],
    ["ragged-row", "4 cells", "3 cells, as the header has"],
  ]);
});

test("columns that are not read are named in one note, the first of a pair counts", async () => {
  const result = await read("ssid,signal_dbm,channel,SIGNAL_DBM,vendor\na,-60,6,-20,x\n");
  expect(result.readings[0]).toMatchObject({ signalDbm: -60 });
  expect(result.issues).toMatchObject([
    { code: "ignored", severity: "note", line: 1, value: "SIGNAL_DBM, vendor" },
  ]);
});

test("twenty and more issues of one kind are grouped", async () => {
  const rows = (count: number): string =>
    `ssid,channel,signal_dbm,stations\n${"a,6,x,1\n".repeat(count)}b,6,-60,x\n`;
  const few = await read(rows(19));
  expect(few.issues.map(({ count }) => count)).toEqual(Array(21).fill(undefined));
  const many = await read(rows(25));
  expect(many.issues.map(({ line, column, count }) => [line, column, count])).toEqual([
    [2, "signal_dbm", undefined],
    [3, "signal_dbm", undefined],
    [4, "signal_dbm", undefined],
    [5, "signal_dbm", 22],
    [27, "stations", undefined],
    [undefined, undefined, undefined],
  ]);
  expect(formatIssue(many.issues[3]!)).toContain("and 21 more of this kind");
  expect(many).toMatchObject({ rowCount: 26, rejectedCount: 26 });
});

describe("a file with no usable row says what was looked for and what was found", () => {
  test.each([
    ["", "an empty file"],
    ["\ufeff", "an empty file"],
    [" \r\n\t\n", "only blank lines"],
    [Uint8Array.of(0x7f, 0x45, 0x4c, 0x46, 0, 0, 1, 0xff, 0xfe), "binary data"],
    ["name;colour\n1;2\n", "the headers name, colour"],
    ["ssid,channel\nFoyer,6\n", "the headers ssid, channel"],
    ["ssid,channel,signal_dbm\n\n", "a header and no rows"],
    ["ssid,channel,signal_dbm", "a header and no rows"],
    ["Dear crew,\nsee you\n", "the headers Dear crew, "],
    ["hello\u001b[2J world\n", "text that begins hello\u001b[2J world"],
    [oneRow({ channel: "36" }), "only rows outside 2400–2500 MHz, as 5 or 6 GHz (1)"],
    [oneRow({ signal_dbm: "" }), "1 rows: 1 rejected, 0 outside 2400–2500 MHz"],
  ])("%j: %s", async (input, value) => {
    const result = await read(input);
    const issue = result.issues.at(-1)!;
    expect(issue).toMatchObject({ code: "no-usable-row", severity: "error", action: "stopped", value });
    expect(issue.expected).toMatch(/scan CSV.*signal_dbm.*iw dev/);
    expect(formatIssue(issue)).not.toContain("\u001b");
    expect(accounts(result)).toBe(true);
  });

  test("and which columns are missing", async () => {
    const result = await read("time;place;width_mhz\n2026-03-14;Foyer;20\n");
    expect(result.issues.map(({ code, column, line }) => [code, column, line])).toEqual([
      ["missing-column", "signal_dbm", 1],
      ["missing-column", "channel", 1],
      ["missing-column", "bssid", 1],
      ["no-usable-row", undefined, undefined],
    ]);
    expect(result).toMatchObject({ format: "scan-csv", rowCount: 0 });
  });

  test("a text of no known format is of format unknown", async () => {
    expect((await read("hello\n")).format).toBe("unknown");
  });
});

describe("limits end in a clear error", () => {
  test("a record longer than 1 Mi characters", async () => {
    const long = `ssid,channel,signal_dbm\na,6,-60\n${"x".repeat(1_048_577)},6,-60\nb,6,-60\n`;
    const result = await read(long);
    expect(result).toMatchObject({ rowCount: 2, rejectedCount: 1 });
    expect(result.issues).toMatchObject([{ code: "limit", severity: "error", line: 3, action: "stopped" }]);
  });
  test("a line of a text longer than that", async () => {
    const result = await read(`hello\n${"x".repeat(1_048_577)}`);
    expect(result.issues.map(({ code, line }) => [code, line])).toEqual([
      ["limit", 2],
      ["no-usable-row", undefined],
    ]);
  });
  test("more than 1,000 columns", async () => {
    const columns = Array.from({ length: 998 }, (_, index) => `c${index}`).join(",");
    const header = `ssid,channel,${columns}`;
    const result = await read(`${header},signal_dbm\n`);
    expect(result.issues[0]).toMatchObject({ code: "limit", severity: "error", line: 1, value: "1001" });
    const within = await read(`${header.replace("c0", "signal_dbm")}\na,6,-60${",".repeat(997)}\n`);
    expect(within.readings.length).toBe(1);
  });
  test.each(["9".repeat(1_000_000), " ".repeat(1_000_000), ",".repeat(1_000_000), "\n".repeat(1_000_000)])(
    "and nothing takes longer than its length",
    async (long) => {
      const start = performance.now();
      for (const text of [
        `${long}x`,
        `${long}\0`,
        `sep=${long}`,
        `ssid,channel,signal_dbm\na,${long}x,${long}x\n`,
      ])
        expect(accounts(await read(text))).toBe(true);
      expect(performance.now() - start).toBeLessThan(10_000);
    },
  );
  test("the input is closed when reading stops early", async () => {
    let closed = false;
    async function* endless(): AsyncGenerator<Uint8Array> {
      try {
        for (;;) yield new Uint8Array(100_000);
      } finally {
        closed = true;
      }
    }
    expect((await read(endless())).issues).toMatchObject([{ code: "no-usable-row", value: "binary data" }]);
    expect(closed).toBe(true);
  });
});

describe("a caller's mistake throws", () => {
  test.each([
    ["options.crowd", { crowd: "busy" }],
    ["options.time", { time: "yesterday" }],
    ["options.place", { place: 7 }],
    ["options.source", { source: undefined }],
  ])("%s", async (argument, options) => {
    const mistaken = { source: "scan", ...options } as unknown as ReadScanOptions;
    await expect(readScan("", mistaken)).rejects.toThrow(ArgumentError);
    await expect(readScan("", mistaken)).rejects.toMatchObject({ argument });
  });
  test("input", async () => {
    await expect(read(7 as unknown as string)).rejects.toMatchObject({ argument: "input" });
  });
  test("and what the input throws comes through", async () => {
    async function* broken(): AsyncGenerator<string> {
      yield "ssid,channel";
      throw new Error("cable pulled");
    }
    await expect(read(broken())).rejects.toThrow("cable pulled");
  });
});

const FILES = [
  "comma.csv",
  "semicolon-decimal-comma-bom-crlf.csv",
  "lone-cr.csv",
  "utf-16le.csv",
  "quoted-names.csv",
  "stray-quotes.csv",
  "separator-hint.csv",
  "iw-scan.txt",
  "iw-scan-crlf-prompt.txt",
];

test.each(FILES)("%s reads the same in chunks of any size", async (name) => {
  const bytes = dialect(name);
  const whole = await read(bytes);
  for (const size of [1, 2, 3, 5, 7, 16, 61, 255, 1024]) {
    const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, index) =>
      bytes.subarray(index * size, (index + 1) * size),
    );
    expect(await read(chunks)).toEqual(whole);
  }
});

test("a file larger than any block reads the same in chunks of any size", async () => {
  const row = (index: number): string =>
    `"na\r\nme ""${index}""",${(index % 13) + 1},${-40 - (index % 50)}\r`;
  const text = `ssid,channel,signal_dbm\r\n${Array.from({ length: 9000 }, (_, index) => row(index)).join("")}`;
  const whole = await read(text);
  expect(whole).toMatchObject({ rowCount: 9000, rejectedCount: 0 });
  expect(whole.readings.at(-1)!.line).toBe(2 + 2 * 8999);
  for (const size of [997, 65_535, 65_536, 65_537]) {
    const chunks = Array.from({ length: Math.ceil(text.length / size) }, (_, index) =>
      text.slice(index * size, (index + 1) * size),
    );
    expect(await read(chunks)).toEqual(whole);
  }
});

test.each(FILES)("%s damaged anyhow is still accounted for, row by row", async (name) => {
  const bytes = dialect(name);
  const flip = fc.tuple(fc.nat(bytes.length - 1), fc.nat(255));
  await fc.assert(
    fc.asyncProperty(fc.array(flip, { maxLength: 12 }), fc.nat(bytes.length), async (flips, length) => {
      const damaged = Uint8Array.from(bytes);
      for (const [index, value] of flips) damaged[index] = value;
      const result = await read(damaged.subarray(0, length));
      expect(accounts(result)).toBe(true);
      for (const { signalDbm, centreMhz } of result.readings) {
        expect(signalDbm >= -130 && signalDbm <= -5).toBe(true);
        expect(centreMhz >= 2400 && centreMhz <= 2500).toBe(true);
      }
    }),
    { numRuns: 150 },
  );
});
