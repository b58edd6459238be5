import { join } from "node:path";
import { BARE_NODE, inMs, interleaved } from "./process-time.js";

const ROUNDS = 20;
const MOST_RATIO = 1.6;
const SCAN = join("fixtures", "scans", "ropewalk-foyer-iw.txt");

/** The whole `channel` command on one small scan, beside Node doing nothing. */
export function run() {
  const [own, bare] = interleaved([["bin/stillband.js", "channel", SCAN], BARE_NODE], ROUNDS);
  const ratio = own.medianMs / bare.medianMs;
  return {
    name: "channel, whole process ÷ node -e 0",
    own: inMs(own),
    reference: inMs(bare),
    ratio,
    goal: `≤ ${MOST_RATIO}`,
    met: ratio <= MOST_RATIO,
    note: `${ROUNDS} interleaved runs of each on ${SCAN}; ratio of the medians, of the least ${(own.minMs / bare.minMs).toFixed(2)}`,
  };
}
