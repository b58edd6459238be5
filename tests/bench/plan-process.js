import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeLargeVenue } from "./large-venue.js";
import { runNode } from "./process-time.js";
import { median } from "./statistics.js";

const RUNS = 3;
const MOST_MS = 5000;
const MOST_BYTES = 3_000_000;
const DEMO = join("fixtures", "venues", "ropewalk", "venue.yaml");

/** The whole `plan` command on 20 rooms, 300 luminaires and 20,000 scan rows; beside it the demo's venue. */
export function run() {
  const folder = mkdtempSync(join(tmpdir(), "stillband-bench-"));
  try {
    const venue = writeLargeVenue(join(folder, "large"));
    const large = timed(venue, join(folder, "large-plan"));
    const demo = timed(DEMO, join(folder, "demo-plan"));
    return {
      name: "plan, whole process, 20 rooms, 300 luminaires, 20,000 rows ÷ 5 s",
      own: `${large.medianMs.toFixed(0)} ms`,
      reference: `${MOST_MS} ms`,
      ratio: large.medianMs / MOST_MS,
      goal: "≤ 1",
      met: large.medianMs <= MOST_MS && large.bytes <= MOST_BYTES,
      note: `median of ${RUNS}, least ${large.minMs.toFixed(0)} ms; report ${large.bytes} bytes (at most ${MOST_BYTES}); the demo's venue ${demo.medianMs.toFixed(0)} ms, report ${demo.bytes} bytes`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function timed(venue, plan) {
  const times = Array.from(
    { length: RUNS },
    () => runNode(["bin/stillband.js", "plan", venue, "-o", plan, "--force", "--quiet"]).ms,
  );
  return {
    medianMs: median(times),
    minMs: Math.min(...times),
    bytes: statSync(join(plan, "report.html")).size,
  };
}
