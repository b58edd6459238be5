import { runNode } from "./process-time.js";
import { median } from "./statistics.js";

const SEED = 2_462;
const ROWS = 100_000;
const ROUNDS = 5;
const PROCESSES = 3;
const LEAST_RATIO = 0.9;

/** Reading a beacon list as a scan CSV, every row judged, beside csv-parse making an object of each row. */
export function run() {
  const script = ["tests/bench/beacon-csv-timed.js", SEED, ROWS, ROUNDS].map(String);
  const timed = Array.from({ length: PROCESSES }, () => JSON.parse(runNode(script).stdout));
  const ownMs = median(timed.map((one) => one.ownMs));
  const referenceMs = median(timed.map((one) => one.referenceMs));
  const ratio = median(timed.map((one) => one.referenceMs / one.ownMs));
  const megabytes = timed[0].byteCount / 1e6;
  return {
    name: "readScan, rate ÷ csv-parse columns: true",
    own: `${(megabytes / (ownMs / 1000)).toFixed(0)} MB/s`,
    reference: `${(megabytes / (referenceMs / 1000)).toFixed(0)} MB/s`,
    ratio,
    goal: `≥ ${LEAST_RATIO}`,
    met: ratio >= LEAST_RATIO && timed.every((one) => one.ownCount === ROWS && one.referenceCount === ROWS),
    note:
      `seed ${SEED}, ${ROWS} rows, ${megabytes.toFixed(1)} MB in memory, ` +
      `${PROCESSES} processes of ${ROUNDS} rounds in turn after one to warm up`,
  };
}
