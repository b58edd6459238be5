import { ratioToDb } from "../../units/index.js";
import { loadsOf } from "./assignment-loads.js";
import type { AssignmentLoads } from "./assignment-loads.js";
import type { AssignmentSearch, SearchAllowance, SearchEnd } from "./assignment-search.js";
import { ChannelDomains } from "./channel-domains.js";
import { EQUAL_RATIO, levelsWithin } from "./load-levels.js";

/** Nodes of the first probe of a bound; each round has three times as many. */
const FIRST_NODES = 500;
const GROWTH = 3;
/** Of each round the search for something better has this many times the nodes of a probe. */
const DIRECT_SHARE = 4;
/** A bound is not made sharper than this, dB. */
const LEAST_GAP_DB = 0.01;

/** The best assignment known, and the load that no assignment is below. */
export interface Proof {
  readonly channels: Int32Array;
  readonly optimal: boolean;
  /** No assignment has a smaller greatest load than this. */
  readonly boundRatio: number;
}

/**
 * Makes the greatest load as small as it can be, and proves it. Rounds of growing effort: a search for anything
 * better, whose end is the proof; failing that, probes by bisection of how much better is out of the question.
 */
export function proveAssignment(
  loads: AssignmentLoads,
  search: AssignmentSearch,
  start: Int32Array,
  allowance: SearchAllowance,
): Proof {
  let channels = start;
  let most = greatestLoad(loads, start);
  let bound = rootBound(loads);
  const goes = (): boolean => allowance.leftCount > 0 && !allowance.shouldStop();
  const probe = (mostRatio: number, nodeCount: number): SearchEnd =>
    search.run({
      levelRatios: levelsWithin(loads.systemCount, mostRatio),
      nodeCount,
      allowance,
      found: (found) => {
        channels = found;
        most = greatestLoad(loads, found);
        return levelsWithin(loads.systemCount, justBelow(most));
      },
    });
  for (let nodes = FIRST_NODES; ; nodes *= GROWTH) {
    if (probe(justBelow(most), DIRECT_SHARE * nodes) === "exhausted")
      return { channels, optimal: true, boundRatio: most };
    let out = most;
    while (goes() && ratioToDb(out / bound) > LEAST_GAP_DB) {
      const middle = Math.sqrt(Math.min(out, most) * bound);
      const before = most;
      const end = probe(middle, nodes);
      if (most < before) out = most;
      // What was found within the level was searched on below: an end then proves the last one found.
      if (end === "exhausted" && most < before) return { channels, optimal: true, boundRatio: most };
      if (end === "exhausted") bound = middle;
      else if (most === before) out = middle;
    }
    if (!goes()) return { channels, optimal: false, boundRatio: Math.min(bound, most) };
  }
}

function justBelow(loadRatio: number): number {
  return loadRatio * (1 - 2 * EQUAL_RATIO);
}

export function greatestLoad(loads: AssignmentLoads, channels: Int32Array): number {
  return Math.max(...loadsOf(loads, channels));
}

/** Each system on its best channel with all others where they harm it least. */
function rootBound(loads: AssignmentLoads): number {
  const domains = new ChannelDomains(loads);
  domains.refresh();
  return Math.max(...Array.from(loads.starts, (_, r) => domains.leastOf(r)));
}
