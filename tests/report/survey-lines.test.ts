import { expect, test } from "vitest";
import type { Issue } from "../../src/issues/index.js";
import { issueLines } from "../../src/report/index.js";
import { inProcess, SCANS } from "../cli/stillband.js";

const note = (source: string): Issue => ({
  code: "assumed",
  severity: "note",
  source,
  expected: "resolution bandwidth assumed: 1000 kHz",
  action: "stated",
});
const fault = { ...note("b.csv"), severity: "error", expected: "a level" } as const;

test("what would be told in the same words is told once, errors first", () => {
  expect(issueLines([note("a.csv"), note("b.csv"), fault, note("a.csv")])).toEqual([
    "error: b.csv: a level",
    "note: a.csv: resolution bandwidth assumed: 1000 kHz",
    "note: b.csv: resolution bandwidth assumed: 1000 kHz",
  ]);
});

test.each(["survey", "channel"])("%s tells no line twice of one sweep file", async (command) => {
  const sweep = `${SCANS}/ropewalk-full-sweep.csv`;
  const { err } = await inProcess([command, `${SCANS}/ropewalk-full.csv`, "--crowd", "full", sweep]);
  const lines = err.trim().split("\n");
  expect(lines.length).toBeGreaterThan(0);
  expect(new Set(lines).size).toBe(lines.length);
  expect(lines.filter((line) => line.includes("resolution bandwidth"))).toHaveLength(1);
});
