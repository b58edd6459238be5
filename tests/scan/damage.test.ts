/** Every scan file that stands in fixtures/scans, damaged in many ways from one seed. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { expect, test } from "vitest";
import { seededRandom } from "../../src/numeric/index.js";
import { readScan } from "../../src/scan/index.js";
import type { ScanImport } from "../../src/scan/index.js";
import { shuffled } from "../helpers/shuffled.js";

const FOLDER = new URL("../../fixtures/scans/", import.meta.url);
const FILES = (readdirSync(FOLDER, { recursive: true }) as string[])
  .filter((name) => /\.(?:csv|tsv|txt)$/.test(name))
  .sort();
/** Damaged copies of a file: fewer of a long one, so that all take some ten seconds. */
const MOST_RUNS_COUNT = 40;
const READ_BYTES = 400_000;
const LONGEST_MS = 2_000;

const KINDS = ["flipped bytes", "cut short", "shuffled lines", "lost lines", "several"] as const;

function damaged(bytes: Uint8Array, kind: (typeof KINDS)[number], seed: number): Uint8Array {
  const random = seededRandom(seed);
  const below = (count: number): number => Math.floor(random() * count);
  if (kind === "several")
    return damaged(damaged(damaged(bytes, "shuffled lines", seed), "flipped bytes", seed), "cut short", seed);
  if (kind === "cut short") return bytes.subarray(0, below(bytes.length + 1));
  if (kind === "flipped bytes") {
    const next = Uint8Array.from(bytes);
    for (let left = below(24); left >= 0 && next.length > 0; left--) next[below(next.length)] = below(256);
    return next;
  }
  const lines = Buffer.from(bytes).toString("latin1").split("\n");
  const order = kind === "shuffled lines" ? shuffled(lines, seed) : lines.filter(() => below(8) !== 0);
  return Buffer.from(order.join("\n"), "latin1");
}

function expectSound(result: ScanImport): void {
  const { format, readings, sweep, rowCount, rejectedCount, outOfBandCount, issues } = result;
  const usedCount = readings.length + (sweep?.usedRowCount ?? 0);
  expect(rowCount).toBe(usedCount + rejectedCount + outOfBandCount);
  expect(issues.some(({ code }) => code === "no-usable-row")).toBe(usedCount === 0);
  if (rowCount > 0) expect(format).not.toBe("unknown");
  for (const { signalDbm, channel, centreMhz } of readings) {
    const isSound = signalDbm >= -130 && signalDbm <= -5 && channel >= 1 && channel <= 14;
    expect(isSound && centreMhz >= 2400 && centreMhz <= 2500).toBe(true);
  }
}

test("there are files of every kind", () => {
  for (const word of ["iw", "nmcli-terse", "nmcli-table", "nmcli-multiline", "netsh-", "wpa-cli", "table-"])
    expect(FILES.some((name) => name.includes(word))).toBe(true);
  for (const word of ["sweep-wide", "sweep-long", "fingerprints", "ropewalk-full.csv"])
    expect(FILES.some((name) => name.includes(word))).toBe(true);
});

test.each(FILES)("%s: never a crash or a hang, every row accounted for", async (name) => {
  const file = new URL(name, FOLDER);
  const bytes = readFileSync(file);
  expectSound(await readScan(bytes, { source: name }));
  const runCount = Math.max(KINDS.length, Math.min(MOST_RUNS_COUNT, READ_BYTES / statSync(file).size));
  for (let seed = 1; seed <= runCount; seed++) {
    const kind = KINDS[seed % KINDS.length]!;
    const start = performance.now();
    const result = await readScan(damaged(bytes, kind, seed), { source: name });
    expect(performance.now() - start, `${kind}, seed ${seed}`).toBeLessThan(LONGEST_MS);
    expect(() => expectSound(result), `${kind}, seed ${seed}`).not.toThrow();
  }
});
