import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seeded } from "./statistics.js";

const HOPS = 5;
const BINS = 200;
const BLOCK_PASSES = 200;

/** Some passes over 2400–2500 MHz as wide rows, 100 kHz bins; their time stamps stand in for `{}`. */
function block(seed) {
  const random = seeded(seed);
  const rows = [];
  for (let pass = 0; pass < BLOCK_PASSES; pass++)
    for (let hop = 0; hop < HOPS; hop++) {
      const lowHz = 2_400_000_000 + hop * 20_000_000;
      const levels = Array.from({ length: BINS }, () => (-95 + 45 * random() ** 4).toFixed(2));
      rows.push(["{}", lowHz, lowHz + 20_000_000, "100000.00", 20, ...levels].join(", "));
    }
  return rows;
}

/** Gives a log of about so many bytes to some work, and deletes it. One pass a second. */
export function withSweepLog(byteCount, seed, work) {
  const folder = mkdtempSync(join(tmpdir(), "stillband-bench-"));
  const path = join(folder, "sweep.csv");
  try {
    const rows = block(seed);
    const file = openSync(path, "w");
    let written = 0;
    for (let pass = 0; written < byteCount; pass += BLOCK_PASSES) {
      const text = rows.map((row, index) => {
        const timeMs = Date.UTC(2026, 2, 7, 12) + (pass + Math.floor(index / HOPS)) * 1000;
        return row.replace("{}", new Date(timeMs).toISOString().slice(0, 19).replace("T", ", "));
      });
      written += writeSync(file, `${text.join("\n")}\n`);
    }
    closeSync(file);
    return work(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
