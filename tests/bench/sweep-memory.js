import { runNode } from "./process-time.js";
import { withSweepLog } from "./sweep-log.js";

const SEED = 2_451;
const SMALL_BYTES = 100e6;
const MOST_MB = 150;
const MOST_GROWTH = 1.2;
/** STILLBAND_BENCH_BIG=1 reads a log of 1 GB; else one of 300 MB stands in for it. */
const BIG_BYTES = process.env.STILLBAND_BENCH_BIG === "1" ? 1e9 : 300e6;

const peakMb = (byteCount) =>
  withSweepLog(
    byteCount,
    SEED,
    (path) => JSON.parse(runNode(["tests/bench/sweep-survey-timed.js", path, "own"]).stdout).peakMb,
  );

/** Peak memory of a whole process that reads a long sweep log, beside that on a short one. */
export function run() {
  const [smallMb, bigMb] = [peakMb(SMALL_BYTES), peakMb(BIG_BYTES)];
  const ratio = bigMb / smallMb;
  return {
    name: `peak memory, ${BIG_BYTES / 1e6} MB sweep log ÷ 100 MB`,
    own: `${bigMb.toFixed(0)} MB`,
    reference: `${smallMb.toFixed(0)} MB`,
    ratio,
    goal: `≤ ${MOST_GROWTH}, ${MOST_MB} MB`,
    met: ratio <= MOST_GROWTH && bigMb <= MOST_MB,
    note: `seed ${SEED}, resident set of the process at its greatest; STILLBAND_BENCH_BIG=1 for a log of 1 GB`,
  };
}
