/** Column counts against Unicode's own classes (UAX #11 East Asian Width, UAX #29 grapheme clusters). */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clipped, columnsOf, tableLines, wrapped } from "../../src/report/text-layout.js";
import { terminalColumns } from "../cli/columns.js";

describe("columns", () => {
  test.each([
    ["plain", "radio ch 6", 10],
    ["an umlaut, composed or not", "Käfig Ka\u0308fig", 11],
    ["the bars of a picture", "▁▂▃▄▅▆▇█│└─·", 12],
    ["an emoji", "🎺 brass", 8],
    ["an emoji by default text, made one by a selector", "a⌚b", 4],
    ["Han, Kana, Hangul", "漢字かなカナ한글", 16],
    ["full-width letters", "ＡＢ", 4],
    ["an astral Han letter", "𠀀", 2],
    ["punctuation of Japanese", "「」、。", 8],
  ])("%s", (_, text, columns) => {
    expect(columnsOf(text)).toBe(columns);
    expect(terminalColumns(text)).toBe(columns);
  });
});

const word = fc.constantFrom("radio", "ch", "Café", "漢字", "🎺", "ＡＢ", "a", "2422", "MHz");
const sentence = fc.array(word, { minLength: 1, maxLength: 30 }).map((words) => words.join(" "));

describe("clipped", () => {
  test("never wider than asked for, whole where it fits, an ellipsis where it doesn't", () => {
    fc.assert(
      fc.property(sentence, fc.integer({ min: 2, max: 80 }), (text, columnCount) => {
        const cut = clipped(text, columnCount);
        expect(terminalColumns(cut)).toBeLessThanOrEqual(columnCount);
        if (terminalColumns(text) <= columnCount) expect(cut).toBe(text);
        else expect(cut.endsWith("…") && text.startsWith(cut.slice(0, -1))).toBe(true);
      }),
    );
  });
});

describe("wrapped", () => {
  test("keeps every word in order and every line within the width", () => {
    fc.assert(
      fc.property(sentence, fc.integer({ min: 10, max: 80 }), (text, columnCount) => {
        const lines = wrapped(text, columnCount);
        expect(lines.join(" ")).toBe(text);
        expect(lines.filter((line) => terminalColumns(line) > columnCount)).toEqual([]);
      }),
    );
  });
  test("an indent counts as part of the width", () => {
    const lines = wrapped("one two three four five six", 10, "    ");
    expect(lines.filter((line) => line.length > 10)).toEqual([]);
    expect(lines.slice(1).every((line) => line.startsWith("    "))).toBe(true);
  });
});

describe("tables", () => {
  test("columns line up whatever the names are made of", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(word, word), { minLength: 1, maxLength: 6 }), (cells) => {
        const lines = tableLines(
          [
            { head: "name", align: "left" },
            { head: "#", align: "right" },
          ],
          cells.map(([name, number]) => [name, number]),
          80,
        );
        expect(lines).toHaveLength(cells.length + 1);
        // The last column is right-aligned: every line ends in the same column.
        expect(new Set(lines.map(terminalColumns)).size).toBe(1);
      }),
    );
  });
});
