import { loadsOf } from "./assignment-loads.js";
import type { AssignmentLoads } from "./assignment-loads.js";
import type { AssignmentSearch, SearchAllowance } from "./assignment-search.js";
import { compareLoads, descending, levelsBelow } from "./load-levels.js";

/** An assignment of which the first `provedCount` loads, from the greatest down, can't be bettered in turn. */
export interface Refinement {
  readonly channels: Int32Array;
  readonly provedCount: number;
}

/** With the greatest load proved: makes the second greatest as small as it can be, then the third, … */
export function refineAssignment(
  loads: AssignmentLoads,
  search: AssignmentSearch,
  start: Int32Array,
  allowance: SearchAllowance,
): Refinement {
  let channels = start;
  let ratios = descending(loadsOf(loads, start));
  let provedCount = 1;
  for (; provedCount < loads.systemCount; provedCount++) {
    const kept = provedCount;
    const end = search.run({
      levelRatios: levelsBelow(ratios, kept),
      nodeCount: Infinity,
      allowance,
      found: (found) => {
        const better = descending(loadsOf(loads, found));
        if (compareLoads(better, ratios) < 0) [channels, ratios] = [found, better];
        return levelsBelow(ratios, kept);
      },
    });
    if (end !== "exhausted") break;
  }
  return { channels, provedCount };
}
