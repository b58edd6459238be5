import fc from "fast-check";
import { expect, test } from "vitest";
import { guardCell, unguardCell } from "../../src/scan/spreadsheet-guard.js";

const names = fc.oneof(
  fc.string(),
  fc.string({ unit: "binary" }),
  fc
    .array(
      fc.constantFrom(
        "'",
        "=",
        "\\",
        "\\u001b",
        "\\u005c",
        "u001b",
        "\u001b",
        "\u009b",
        "\u202e",
        "\t",
        "\\u202e",
        "é",
      ),
    )
    .map((parts) => parts.join("")),
  fc.array(fc.constantFrom("'", "=", "+", "-", "@", "\t", "\r", "\n", "a")).map((parts) => parts.join("")),
);

test("every name comes back, and none begins as a spreadsheet would run it", () => {
  fc.assert(
    fc.property(names, (name) => {
      expect(unguardCell(guardCell(name))).toBe(name);
      expect(guardCell(name)).not.toMatch(/^[=+\-@\t\r\n]/);
    }),
  );
});

test("different names stay different, and harmless ones stay as they are", () => {
  fc.assert(
    fc.property(names, names, (a, b) => {
      expect(guardCell(a) === guardCell(b)).toBe(a === b);
    }),
  );
  for (const name of ["'n Licht", "'", "", "a=b", "Foyer", "C:\\u001b", "a\\b", "Caf\u00e9 \u{1f3ad}"])
    expect(guardCell(name)).toBe(name);
});

test("what a terminal obeys is written out: C0 but tab and line ends, DEL, C1, turned writing", () => {
  fc.assert(
    fc.property(names, (name) => {
      expect(guardCell(name)).not.toMatch(
        /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/,
      );
    }),
  );
});

test.each([
  ["\u001b[31mred", "'\\u001b[31mred"],
  ["\u009b2J", "'\\u009b2J"],
  ["net\u202egnp.exe", "'net\\u202egnp.exe"],
  ["\u0007 C:\\u001b", "'\\u0007 C:\\u005cu001b"],
  ["=\\u001b", "'=\\u005cu001b"],
  ["'\\u001b", "''\\u005cu001b"],
])("%j is written %s and read back", (name, cell) => {
  expect([guardCell(name), unguardCell(cell)]).toEqual([cell, name]);
});
