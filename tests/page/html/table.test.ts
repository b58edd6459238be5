import { describe, expect, test } from "vitest";
import { columnsOf, measured, table } from "../../../src/page/html/table.js";
import { textOf } from "../page-html.js";

const columns = [...columnsOf("box", "room", "-level"), measured("drop", "m", "ft in")];
const made = (rows: readonly (readonly string[])[]): string =>
  table({ id: "boxes", caption: "Boxes", columns, rows, alikeIndex: [1, 3] }).html;
const headsOf = (html: string): string[] =>
  [...html.matchAll(/<th scope="col">(.*?)<\/th>/g)].map(([, head]) => textOf(head!));

describe("a column that says the same in every row", () => {
  const html = made([
    ["A", "hall", "-3", "1.5"],
    ["B", "hall", "-3", "1.5"],
    ["C", "hall", "-3", "1.5"],
  ]);
  test("becomes a sentence above the table, its unit behind its figure", () => {
    const [before, after] = html.split("<table");
    expect(textOf(before!)).toContain("Every row below: room hall, drop 1.5 m.");
    expect(headsOf(html)).toEqual(["box", "level"]);
    expect(textOf(after!)).not.toContain("hall");
    expect(after!.match(/<td>/g)).toHaveLength(3);
  });
  test("leaves the columns of figures where they are now", () => {
    expect(html).toContain('<table class="f2"');
  });
});

test("a column stays where one row differs, and where there are too few rows to save anything", () => {
  const differing = made([
    ["A", "hall", "-3", "1.5"],
    ["B", "foyer", "-3", "1.5"],
    ["C", "hall", "-3", "1.6"],
  ]);
  const few = made([
    ["A", "hall", "-3", "1.5"],
    ["B", "hall", "-3", "1.5"],
  ]);
  for (const html of [differing, few]) {
    expect(html).not.toContain("Every row");
    expect(headsOf(html)).toEqual(["box", "room", "level", "drop mft in"]);
    expect(html).toContain('<table class="f3 f4"');
  }
});

test("more columns than a printed page has room for are set smaller", () => {
  const wide = (count: number): string =>
    table({
      id: "w",
      caption: "Wide",
      columns: columnsOf(...Array.from({ length: count }, (_, at) => `c${at}`)),
      rows: [],
    }).html;
  expect(wide(11)).not.toContain("tight");
  expect(wide(12)).toContain('class="scroll tight"');
});
