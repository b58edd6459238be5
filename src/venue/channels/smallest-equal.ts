import { loadsOf } from "./assignment-loads.js";
import type { AssignmentLoads } from "./assignment-loads.js";
import type { AssignmentSearch, SearchAllowance, SearchEnd } from "./assignment-search.js";
import { descending, EQUAL_RATIO, levelsBelow, levelsWithin } from "./load-levels.js";

/** An assignment, and whether none that is as good comes before it. */
export interface SmallestEqual {
  readonly channels: Int32Array;
  readonly proved: boolean;
}

/**
 * Of all assignments as good as this one, to 1e-9 dB, the smallest in order of systems: system by system, is there
 * one with the channels settled so far and a lower one here?
 * @param keptCount how many loads, from the greatest down, are to be as good: 1, or all
 */
export function smallestEqual(
  loads: AssignmentLoads,
  search: AssignmentSearch,
  start: Int32Array,
  keptCount: number,
  allowance: SearchAllowance,
): SmallestEqual {
  const { systemCount, starts } = loads;
  const ratios = descending(loadsOf(loads, start));
  const levelRatios =
    keptCount === 1
      ? levelsWithin(systemCount, ratios[0]! * (1 + EQUAL_RATIO))
      : levelsBelow(ratios, systemCount);
  const usable = loads.usable.slice();
  let channels = start;
  for (let r = 0; r < systemCount; r++) {
    const endSlot = starts[r]! + loads.channelCounts[r]!;
    const found = (lower: Int32Array): undefined => void (channels = lower);
    let end: SearchEnd;
    do {
      usable.fill(0, starts[r]! + channels[r]!, endSlot);
      end = search.run({ levelRatios, nodeCount: Infinity, allowance, usable, found });
    } while (end === "found");
    if (end === "stopped") return { channels, proved: false };
    usable.fill(0, starts[r], endSlot);
    usable[starts[r]! + channels[r]!] = 1;
  }
  return { channels, proved: true };
}
