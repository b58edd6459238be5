import { expect, test } from "vitest";
import fc from "fast-check";
import { parseNumber } from "../../src/units/parse-number.js";

test("every finite number that JavaScript prints comes back", () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(parseNumber(String(value), false)).toBe(Number(String(value)));
      expect(parseNumber(` ${String(value).replace(".", ",")} `, true)).toBe(Number(String(value)));
    }),
  );
});

test.each([
  "NaN",
  "Infinity",
  "-Infinity",
  "1e999",
  "-1e999",
  "0x10",
  "0b1",
  "1_000",
  "",
  " ",
  ".",
  "-",
  "--6",
  "6 0",
])("%j is no number", (text) => {
  expect(parseNumber(text, false)).toBeNull();
  expect(parseNumber(text, true)).toBeNull();
});

test.each(["-60 dBm", "45%", "1,000.5", "1.000,5", "٣", "6e", "e6", "1,2,3"])("%j is no number", (text) => {
  expect(parseNumber(text, true)).toBeNull();
});

test("a comma is a decimal point only where it is allowed, a typographic minus always a minus", () => {
  expect(parseNumber("-60,5", true)).toBe(-60.5);
  expect(parseNumber("-60,5", false)).toBeNull();
  expect(parseNumber("\u221260.5", false)).toBe(-60.5);
  expect(parseNumber("+.5", false)).toBe(0.5);
  expect(parseNumber("6.", false)).toBe(6);
});
