/** Single cells of foreign tables: addresses, times, names, numbers; and rows put right. */
import { describe, expect, test } from "vitest";
import { addressCell } from "../../src/scan/column-address.js";
import { networkName } from "../../src/scan/column-name.js";
import { cellNumber, sizedMhz } from "../../src/scan/column-number.js";
import { timeStyleOf } from "../../src/scan/column-time.js";
import { ungluedRows } from "../../src/scan/unglue-row.js";
import { unheardLevels } from "../../src/scan/unheard-levels.js";

describe("addresses", () => {
  test.each([
    "02:1a:00:00:00:0f",
    "02-1A-00-00-00-0F",
    "021A.0000.000F",
    "021a0000000f",
    "02:1a:00:00:00:0f:",
    "02_1a_00_00_00_0f",
  ])("%s", (text) => expect(addressCell(text)).toEqual({ kind: "address", bssid: "02:1a:00:00:00:0f" }));
  test.each(["02:1a:00:xx:xx:xx", "02:1a:00:**:**:**", "02:1a:00:00:00:", "02:1a:00:", "00:00:00:00:00:00"])(
    "%s names no single radio",
    (text) => expect(addressCell(text).kind).toBe("masked"),
  );
  test.each(["", "Foyer", "02:1a", "2412", "-60", "xx", "901_70_12_345", "12:30:05", "2026-03-14 18:00"])(
    "%s is none",
    (text) => expect(addressCell(text).kind).toBe("none"),
  );
});

describe("times", () => {
  test.each([
    [["14.03.2026 18:30"], [Date.UTC(2026, 2, 14, 18, 30)]],
    [
      ["3/14/2026 12:05 AM", "3/15/2026 12:05 PM"],
      [Date.UTC(2026, 2, 14, 0, 5), Date.UTC(2026, 2, 15, 12, 5)],
    ],
    [["1773511205.5"], [1_773_511_205_500]],
  ])("%j", (cells, times) => {
    const style = timeStyleOf(cells)!;
    expect(cells.map((cell) => style.parse(cell))).toEqual(times);
    expect(style.assumed).toBeNull();
  });
  test.each([[["18:30"]], [["3 s ago"]], [["31.02.2026"]], [["6"]], [[]]])("%j are none", (cells) => {
    expect(timeStyleOf(cells)).toBeNull();
  });
});

test.each([
  ["--", ""],
  ["(Hidden Network)", ""],
  ["\\x00\\x00\\x00", ""],
  ["masqué", ""],
  ["hidden stage", "hidden stage"],
  ["-", ""],
  [" Foyer", " Foyer"],
  ["'=1+1", "=1+1"],
])("the name %j", (cell, name) => expect(networkName(cell)).toBe(name));

test.each([
  ["-60 dBm", -60, "dbm"],
  ["70%", 70, "%"],
  ["2.412 GHz", 2.412, "ghz"],
  ["2412.0", 2412, ""],
])("the number %s", (text, value, unit) => expect(cellNumber(text, false)).toEqual({ value, unit }));
test.each(["-1.#J", "-1.#IND", "nan", "-inf", "", "1 2", "dBm"])("%j is no number", (text) =>
  expect(cellNumber(text, true)).toBeNull(),
);
test.each([2.412, 2412, 2_412_000, 2_412_000_000])("%d is 2412 MHz", (value) =>
  expect(sizedMhz(value)).toBe(2412),
);

describe("rows put right", () => {
  const always = (): boolean => true;
  const isLevel = (cells: readonly string[]): boolean => /^-\d+$/.test(cells[1]!);
  test.each([
    [["a", "-80,6"], 3, always, [["a", "-80", "6"]]],
    [["a", "-80", "6", "", ""], 3, always, [["a", "-80", "6"]]],
    [
      ["a", "-80", "b", "-81"],
      2,
      isLevel,
      [
        ["a", "-80"],
        ["b", "-81"],
      ],
    ],
    [
      ["02:1a:00:00:00:01", "-80", "602:1a:00:00:00:02", "-81", "7"],
      3,
      isLevel,
      [
        ["02:1a:00:00:00:01", "-80", "6"],
        ["02:1a:00:00:00:02", "-81", "7"],
      ],
    ],
    [["a", "x", "b", "-81"], 2, isLevel, null],
    [["a,b", "c,d"], 3, always, null],
    [["a"], 3, always, null],
  ])("%j", (cells, columnCount, fits, rows) =>
    expect(ungluedRows(cells, columnCount, ",", fits)).toEqual(rows),
  );
});

describe("levels that stand for not heard", () => {
  const levels = (
    ...pairs: readonly (readonly [number, string])[]
  ): { signalDbm: number; source: string }[] => pairs.map(([signalDbm, source]) => ({ signalDbm, source }));
  const FILL = [
    [-110, "a"],
    [-110, "b"],
    [-110, "c"],
  ] as const;
  test("stand apart, repeat, and at several sources", () => {
    expect([...unheardLevels(levels([-60, "a"], ...FILL))]).toEqual([-110]);
    expect([...unheardLevels(levels([-60, "a"], ...FILL, [-100, "a"], [-100, "b"], [-100, "c"]))]).toEqual([
      -110, -100,
    ]);
  });
  test.each([
    ["twice only", levels([-60, "a"], [-110, "a"], [-110, "b"])],
    ["one source", levels([-60, "a"], [-110, "a"], [-110, "a"], [-110, "a"])],
    ["others near", levels([-106, "a"], [-107, "b"], [-108, "c"], ...FILL)],
    ["a level below", levels([-112.5, "a"], ...FILL)],
    ["no whole number", levels([-99.5, "a"], [-99.5, "b"], [-99.5, "c"])],
    ["too high", levels([-95, "a"], [-95, "b"], [-95, "c"])],
  ])("not so: %s", (_, given) => expect([...unheardLevels(given)]).toEqual([]));
});
