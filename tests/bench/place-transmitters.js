import { runNode } from "./process-time.js";
import { median } from "./statistics.js";

const SEED = 7;
const RECEIVERS = [25, 50, 100];
const POINTS = 10_000;
const CALLS = 3;
const PROCESSES = 3;
const MOST_MS = 2000;

/** Placing a transmitter over 10,000 points for 100 receivers, everything worked out anew; seconds of the first call. */
export function run() {
  const rows = RECEIVERS.map((receiverCount) => {
    const script = ["tests/bench/place-transmitters-timed.js", SEED, receiverCount, CALLS].map(String);
    const timed = Array.from({ length: PROCESSES }, () => JSON.parse(runNode(script).stdout));
    return {
      receiverCount,
      firstMs: median(timed.map(({ firstMs }) => firstMs)),
      medianMs: median(timed.map(({ medianMs }) => medianMs)),
      isWhole: timed.every(({ pointCount, rankedCount }) => pointCount === POINTS && rankedCount === 3),
    };
  });
  const largest = rows[rows.length - 1];
  const growth = rows.map(({ receiverCount, medianMs }) => `${receiverCount} in ${medianMs.toFixed(0)} ms`);
  return {
    name: "placeTransmitters, 10,000 points × 100 receivers ÷ 2 s",
    own: `${largest.firstMs.toFixed(0)} ms`,
    reference: `${MOST_MS} ms`,
    ratio: largest.firstMs / MOST_MS,
    goal: "≤ 1",
    met: largest.firstMs <= MOST_MS && rows.every(({ isWhole }) => isWhole),
    note: `seed ${SEED}, ${PROCESSES} processes, their first call; receivers and the median of ${CALLS} later calls: ${growth.join(", ")}`,
  };
}
