import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { buildSurvey } from "../../src/scan/index.js";
import { demoSweep } from "../tools/make-demo-sweep.js";
import { dialect, read } from "./dialects.js";

const BLIND = /^Wi-Fi beacons only/;

describe("sweeps in a survey", () => {
  test("a sweep of the full room looks beyond Wi-Fi; one of an empty room does not suffice", async () => {
    const full = buildSurvey([await read(dialect("sweep-wide.csv"), { crowd: "full", place: "hall" })]);
    expect(full.evidence.reasons).toContain("looked for more than Wi-Fi");
    const empty = buildSurvey([await read(dialect("sweep-wide.csv"), { crowd: "empty" })]);
    expect(empty.evidence.reasons).toContain("looked for more than Wi-Fi, but not in a full room");
    expect(full).toMatchObject({ observationCount: 0, places: ["hall"], fullestCrowd: "full" });
  });
  test("a sweep in relative levels looks at nothing", async () => {
    const survey = buildSurvey([await read(dialect("sweep-wide-relative.csv"), { crowd: "full" })]);
    expect(survey.evidence.reasons.some((reason) => BLIND.test(reason))).toBe(true);
    expect(survey.sweepLevels).toEqual([]);
    expect(survey.sweep).toMatchObject({ relativeCount: 1, passCount: 3 });
    for (const { medianDbm } of survey.sweep!.channels) expect(medianDbm).toBeNull();
  });
  test("sweeps of one place and crowd are one, others stand apart", async () => {
    const of = async (place: string) => read(dialect("sweep-wide.csv"), { place });
    const [a, b, c] = [await of("hall"), await of("hall"), await of("foyer")];
    const { sweepLevels, sweep } = buildSurvey([a, b, c]);
    expect(sweepLevels.map(({ place, channels }) => [place, channels[0]!.passCount])).toEqual([
      ["foyer", 3],
      ["hall", 6],
    ]);
    expect(sweep).toMatchObject({ passCount: 9, binCount: 100, startMhz: 2400, stopMhz: 2500 });
  });
  test("the demo's sweep is what its script writes, and hears what beacons can't", async () => {
    const file = new URL("../../fixtures/scans/ropewalk-full-sweep.csv", import.meta.url);
    expect(readFileSync(file, "utf8")).toBe(demoSweep());
    const { sweep } = await read(demoSweep(), { crowd: "full", place: "hall front" });
    expect(sweep).toMatchObject({ passCount: 40, binCount: 100, invalidCellCount: 0, relative: false });
    const loudest = sweep!.buckets.map(({ maxDbm }) =>
      Math.max(...maxDbm.slice(76, 81).map((dbm) => dbm ?? -Infinity)),
    );
    expect(Math.max(...loudest)).toBeGreaterThan(-60);
  });
});
