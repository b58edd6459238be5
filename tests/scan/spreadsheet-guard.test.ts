import fc from "fast-check";
import { expect, test } from "vitest";
import { guardCell, unguardCell } from "../../src/scan/spreadsheet-guard.js";

const names = fc.oneof(
  fc.string(),
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
  for (const name of ["'n Licht", "'", "", "a=b", "Foyer"]) expect(guardCell(name)).toBe(name);
});
