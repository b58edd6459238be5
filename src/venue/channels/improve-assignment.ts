import { seededRandom } from "../../numeric/index.js";
import { loadsOf } from "./assignment-loads.js";
import type { AssignmentLoads } from "./assignment-loads.js";
import { AssignmentSearch } from "./assignment-search.js";
import type { SearchAllowance } from "./assignment-search.js";
import { neighbourhoodOfWorst } from "./channel-neighbourhood.js";
import { ChannelWalk } from "./channel-walk.js";
import { descending, levelsBelow } from "./load-levels.js";

const SEED = 2_480;
const STEPS_PER_SYSTEM = 20;
const FIRST_FREE_COUNT = 6;
const MOST_FREE_COUNT = 18;
const FAILURES_BEFORE_MORE = 4;
const NODES_A_ROUND = 100;

/** @returns each system on its own quietest usable channel, whatever the others do; the lowest of equals */
export function quietestChannels({
  starts,
  channelCounts,
  usable,
  peakBaseRatios,
}: AssignmentLoads): Int32Array {
  return starts.map((start, r) => {
    let best = usable.indexOf(1, start) - start;
    for (let c = best + 1; c < channelCounts[r]!; c++)
      if (usable[start + c] === 1 && peakBaseRatios[start + c]! < peakBaseRatios[start + best]!) best = c;
    return best;
  });
}

/**
 * A good assignment without proof: a walk from the quietest channels, then exact searches over the neighbourhood of
 * the most loaded system, wider each time that nothing better is found.
 */
export function goodAssignment(loads: AssignmentLoads, allowance: SearchAllowance): Int32Array {
  const { systemCount } = loads;
  const walk = new ChannelWalk(loads, quietestChannels(loads));
  let channels: Int32Array = walk.walk(STEPS_PER_SYSTEM * systemCount, allowance.shouldStop).slice();
  const random = seededRandom(SEED);
  let failures = 0;
  let free = FIRST_FREE_COUNT;
  while (
    free < Math.min(systemCount, MOST_FREE_COUNT) &&
    allowance.leftCount > 0 &&
    !allowance.shouldStop()
  ) {
    const better = betterNearby(loads, channels, free, random, allowance);
    if (better === undefined && ++failures % FAILURES_BEFORE_MORE === 0) free++;
    channels = better ?? channels;
  }
  return channels;
}

function betterNearby(
  loads: AssignmentLoads,
  channels: Int32Array,
  freeCount: number,
  random: () => number,
  allowance: SearchAllowance,
): Int32Array | undefined {
  let better: Int32Array | undefined;
  const nearby = neighbourhoodOfWorst(loads, channels, freeCount, random);
  const levelsOf = (some: Int32Array): Float64Array => levelsBelow(descending(loadsOf(loads, some)), 0);
  new AssignmentSearch(nearby, { orderedPairs: [] }).run({
    levelRatios: levelsOf(channels),
    nodeCount: NODES_A_ROUND,
    allowance,
    found: (found) => levelsOf((better = found)),
  });
  return better;
}
