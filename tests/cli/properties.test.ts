/** Whatever a small scan holds, the main job ends in a report or in a reason, never in a bug of ours. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { schemaFaults } from "./schemas.js";
import { scanCsv } from "./scan-rows.js";
import { inProcess } from "./stillband.js";
import type { ChannelJson } from "./json-types.js";

const hex = fc.integer({ min: 0, max: 255 }).map((byte) => byte.toString(16).padStart(2, "0"));
const blankOr = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | ""> =>
  fc.oneof({ weight: 3, arbitrary: value }, { weight: 1, arbitrary: fc.constant("" as const) });
const row = fc.record({
  time: fc.constantFrom("", "2026-03-04T14:00:00Z", "2026-03-04T14:05:00+01:00", "2026-03-07T20:00:00Z"),
  place: fc.constantFrom("", "hall", "balcony"),
  crowd: fc.constantFrom("", "empty", "part", "full", "full"),
  bssid: fc.oneof(
    { weight: 4, arbitrary: hex.map((last) => `02:10:20:30:40:${last}`) },
    { weight: 1, arbitrary: fc.constantFrom("", "06:10:20:30:40:0f", "zz") },
  ),
  ssid: blankOr(fc.string({ unit: "grapheme", maxLength: 32 })),
  channel: fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: 1, max: 14 }) },
    { weight: 1, arbitrary: fc.constantFrom("", 36, 0, "x") },
  ),
  width: fc.constantFrom("", 20, 20, 22, 40, 80),
  signal: fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: -110, max: -20 }) },
    { weight: 1, arbitrary: fc.constantFrom("", "-61.5", "loud", 3) },
  ),
  airtime: fc.constantFrom("", "", 0, 0.3, 1, 1.2),
  stations: fc.constantFrom("", 0, 17),
  standard: fc.constantFrom("", "b", "g", "n", "ax", "future"),
});
const options = fc.constantFrom<readonly string[]>(
  [],
  ["--profile", "raster-16"],
  ["--profile", "hop-79"],
  ["--profile", "hop-79-avoid", "--region", "EU"],
  ["--busy-share", "0"],
  ["--busy-share", "1"],
  ["--region", "JP", "--distance", "3ft"],
  ["--fade", "rayleigh-lognormal:6", "--path-model", "log-distance:3:40"],
  ["--enclosure", "closed-metal", "--distance", "900m"],
);

test("channel --json of 30 random small surveys: exit 0 and a valid value, or exit 65 and the issues", async () => {
  const seen = { reports: 0, refusals: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 12 }), options, async (rows, more) => {
      const { code, out, err } = await inProcess(["channel", "--json", ...more, "-"], {
        stdin: scanCsv(rows),
      });
      expect(err).not.toMatch(/bug of ours/);
      const value = JSON.parse(out) as ChannelJson;
      if (code === 65) {
        seen.refusals++;
        expect(schemaFaults("refused", value)).toEqual([]);
        return;
      }
      seen.reports++;
      expect(code).toBe(0);
      expect(schemaFaults("channel", value)).toEqual([]);
      const { observationCount, rejectedCount, outOfBandCount, ignoredCount } = value.survey;
      expect(observationCount + rejectedCount + outOfBandCount + ignoredCount).toBe(rows.length);
      expect(out).not.toMatch(/NaN|Infinity/);
      const text = await inProcess(["channel", ...more, "-"], { stdin: scanCsv(rows) });
      expect(text.code).toBe(0);
      expect(text.out).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
    }),
    { numRuns: 30, seed: 20260307 },
  );
  expect(seen.reports).toBeGreaterThan(15);
});
