import { runNode } from "./process-time.js";
import { median } from "./statistics.js";
import { withSweepLog } from "./sweep-log.js";

const SEED = 2_450;
const LOG_BYTES = 100e6;
const ROUNDS = 3;
const LEAST_RATIO = 6;

const timed = (path, reader) =>
  JSON.parse(runNode(["tests/bench/sweep-survey-timed.js", path, reader]).stdout);

/** Reading a sweep log with its in-channel sums, beside cutting the same file into cells. */
export function run() {
  return withSweepLog(LOG_BYTES, SEED, (path) => {
    const rounds = Array.from({ length: ROUNDS }, () => [timed(path, "own"), timed(path, "csv-parse")]);
    const [ownMs, referenceMs] = [0, 1].map((index) => median(rounds.map((round) => round[index].ms)));
    const ratio = referenceMs / ownMs;
    const isRead = rounds.every(([own, reference]) => own.count * 5 === reference.count && own.count > 1000);
    return {
      name: "sweep survey with in-channel sums ÷ csv-parse with trim",
      own: rate(ownMs),
      reference: rate(referenceMs),
      ratio,
      goal: `≥ ${LEAST_RATIO}`,
      met: ratio >= LEAST_RATIO && isRead,
      note: `seed ${SEED}, ${LOG_BYTES / 1e6} MB of wide rows, 13 channels, ${ROUNDS} interleaved processes of each, medians`,
    };
  });
}

function rate(ms) {
  return `${(LOG_BYTES / 1e3 / ms).toFixed(0)} MB/s`;
}
