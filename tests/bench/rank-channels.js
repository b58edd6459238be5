import { BARE_NODE, inMs, interleaved, runNode } from "./process-time.js";
import { median } from "./statistics.js";

const SEED = 2_437;
const EMITTERS = 200;
const CALLS = 50;
const PROCESSES = 5;
const MOST_RATIO = 0.3;

/** Ranking 13 radio channels against 200 sources on 13 Wi-Fi channels, beside Node doing nothing. */
export function run() {
  const [bare] = interleaved([BARE_NODE], 11);
  const script = ["tests/bench/rank-channels-timed.js", SEED, EMITTERS, CALLS].map(String);
  const timed = Array.from({ length: PROCESSES }, () => JSON.parse(runNode(script).stdout));
  const medianMs = median(timed.map((one) => one.medianMs));
  const firstMs = median(timed.map((one) => one.firstMs));
  const ratio = medianMs / bare.medianMs;
  return {
    name: "rankChannels, 200 sources ÷ node -e 0",
    own: `${medianMs.toFixed(2)} ms`,
    reference: inMs(bare),
    ratio,
    goal: `≤ ${MOST_RATIO}`,
    met: ratio <= MOST_RATIO && timed.every(({ rankedCount }) => rankedCount === 13),
    note:
      `seed ${SEED}, ${PROCESSES} processes of ${CALLS} calls after warm-up; ` +
      `the first call of a process takes ${firstMs.toFixed(1)} ms (${(firstMs / bare.medianMs).toFixed(2)})`,
  };
}
