/** Cutting a table of any kind into records with their lines. */
import { expect, test } from "vitest";
import { plainTable } from "../../src/scan/plain-table.js";

test.each([
  ["a,b,c\n1,2,3\n", ","],
  ["a;b;c\n1,5;2;3\n", ";"],
  ["a\tb\tc\n1,5\t2;3\t3\n", "\t"],
  ["a|b\n1|2", "|"],
  ["sep=;\na;b,c\n1;2\n", ";"],
])("%j is cut at %j", (text, delimiter) => {
  const table = plainTable(text);
  expect(table.delimiter).toBe(delimiter);
  expect(table.rows[0]!.cells[0]).toBe("a");
});

test("lines are physical: blank lines and line ends in quotes count", () => {
  const { rows } = plainTable('a,b\r\n\r\n"x\r\ny",2\r\n3,4\r\n');
  expect(rows.map(({ line, cells }) => [line, cells])).toEqual([
    [1, ["a", "b"]],
    [3, ["x\r\ny", "2"]],
    [5, ["3", "4"]],
  ]);
});

test("a line whose quotes don't close is told, the rest is read", () => {
  const { rows, faults } = plainTable('a,b\n1,"2" x\n3,4\n');
  expect(faults).toEqual([{ fault: "broken", line: 2, text: '1,"2" x' }]);
  expect(rows.map(({ line }) => line)).toEqual([1, 3]);
});
