import { describe, expect, test } from "vitest";
import fc from "fast-check";
import { parseIsoTime } from "../../src/scan/iso-time.js";

// Expected values: ECMAScript's own Date.parse of the same instant, written as its format has it.
test.each([
  ["2026-03-14", "2026-03-14T00:00:00.000Z"],
  ["20260314", "2026-03-14T00:00:00.000Z"],
  ["2026-03-14T20:15", "2026-03-14T20:15:00.000Z"],
  ["2026-03-14 20:15:30", "2026-03-14T20:15:30.000Z"],
  ["2026-03-14t20:15:30z", "2026-03-14T20:15:30.000Z"],
  ["20260314T201530Z", "2026-03-14T20:15:30.000Z"],
  ["2026-03-14T20", "2026-03-14T20:00:00.000Z"],
  ["2026-03-14T20:15:30.1239", "2026-03-14T20:15:30.123Z"],
  ["2026-03-14T20:15:30,5+02:00", "2026-03-14T18:15:30.500Z"],
  ["2026-03-14T20:15-0530", "2026-03-15T01:45:00.000Z"],
  ["2026-03-14T20:15+01", "2026-03-14T19:15:00.000Z"],
  ["2026-03-14T24:00", "2026-03-15T00:00:00.000Z"],
  ["2024-02-29", "2024-02-29T00:00:00.000Z"],
  ["0001-01-01", "0001-01-01T00:00:00.000Z"],
  [" 2026-03-14 ", "2026-03-14T00:00:00.000Z"],
])("%s is %s", (text, same) => {
  expect(parseIsoTime(text)).toBe(Date.parse(same));
});

describe("is no time", () => {
  test.each([
    "2026-02-29",
    "2026-02-30T10:00",
    "2026-13-01",
    "2026-00-10",
    "2026-01-00",
    "2026-04-31",
    "1900-02-29",
    "2026-03-14T24:01",
    "2026-03-14T20:60",
    "2026-03-14T20:15:60",
    "2026-03-14T20:15+24:00",
    "2026-03-14T20:15+01:60",
    "14.03.2026",
    "03/14/2026",
    "2026-03",
    "2026-0314",
    "20:15",
    "now",
    "1773518400",
    "2026-03-14T",
    "2026-03-14T20:15:30Z x",
  ])("%s", (text) => {
    expect(parseIsoTime(text)).toBeNull();
  });
});

test("what Date writes comes back, for every ms of the years 0 to 9999", () => {
  fc.assert(
    fc.property(
      fc.date({ min: new Date("0000-01-01"), max: new Date("9999-12-31"), noInvalidDate: true }),
      (date) => {
        expect(parseIsoTime(date.toISOString())).toBe(date.getTime());
      },
    ),
  );
});
