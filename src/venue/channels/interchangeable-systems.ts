import type { AssignmentLoads } from "./assignment-loads.js";

/** Systems of which any two could change places without anything else changing. */
export interface InterchangeGroups {
  /** Neighbours within a group, the lower index first. */
  readonly orderedPairs: readonly (readonly [earlier: number, later: number])[];
}

/** @returns pairs that the smallest of all equal assignments (in order of index) has in rising order of channel */
export function interchangeableSystems(loads: AssignmentLoads): InterchangeGroups {
  const orderedPairs: [number, number][] = [];
  for (let later = 1; later < loads.systemCount; later++)
    for (let earlier = later - 1; earlier >= 0; earlier--)
      if (sameSystem(loads, earlier, later)) {
        orderedPairs.push([earlier, later]);
        break;
      }
  return { orderedPairs };
}

function sameSystem(loads: AssignmentLoads, a: number, b: number): boolean {
  const {
    systemCount: n,
    channelCounts,
    starts,
    floorRatios,
    baseRatios,
    usable,
    gainRatios,
    tables,
  } = loads;
  if (channelCounts[a] !== channelCounts[b] || floorRatios[a] !== floorRatios[b]) return false;
  for (let c = 0; c < channelCounts[a]!; c++) {
    const [slotA, slotB] = [starts[a]! + c, starts[b]! + c];
    if (baseRatios[slotA] !== baseRatios[slotB] || usable[slotA] !== usable[slotB]) return false;
  }
  const samePair = (one: number, other: number): boolean =>
    gainRatios[one] === gainRatios[other] && (gainRatios[one] === 0 || tables[one] === tables[other]);
  if (!samePair(a * n + b, b * n + a)) return false;
  for (let o = 0; o < n; o++)
    if (o !== a && o !== b && !(samePair(a * n + o, b * n + o) && samePair(o * n + a, o * n + b)))
      return false;
  return true;
}
