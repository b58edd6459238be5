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
  const { systemCount, channelCounts, starts, floorRatios, usable } = loads;
  if (channelCounts[a] !== channelCounts[b] || floorRatios[a] !== floorRatios[b]) return false;
  for (let c = 0; c < channelCounts[a]!; c++)
    if (usable[starts[a]! + c] !== usable[starts[b]! + c]) return false;
  if (!sameOutside(loads, a, b) || !samePair(loads, [a, b], [b, a])) return false;
  for (let o = 0; o < systemCount; o++)
    if (o !== a && o !== b && !(samePair(loads, [a, o], [b, o]) && samePair(loads, [o, a], [o, b])))
      return false;
  return true;
}

/** As many rows with the same loads from outside, in order? */
function sameOutside({ rowStarts, rowSlots, baseRatios }: AssignmentLoads, a: number, b: number): boolean {
  const [startA, startB] = [rowSlots[rowStarts[a]!]!, rowSlots[rowStarts[b]!]!];
  const count = rowSlots[rowStarts[a + 1]!]! - startA;
  if (count !== rowSlots[rowStarts[b + 1]!]! - startB) return false;
  for (let k = 0; k < count; k++) if (baseRatios[startA + k] !== baseRatios[startB + k]) return false;
  return true;
}

/** The same coupling, row by row, from one other into one system as from another other into another system? */
function samePair(
  { systemCount: n, rowStarts, gainRatios, tables }: AssignmentLoads,
  [a, from]: readonly [number, number],
  [b, otherFrom]: readonly [number, number],
): boolean {
  let isCoupled = false;
  const count = rowStarts[a + 1]! - rowStarts[a]!;
  for (let k = 0; k < count; k++) {
    const gain = gainRatios[(rowStarts[a]! + k) * n + from]!;
    if (gain !== gainRatios[(rowStarts[b]! + k) * n + otherFrom]) return false;
    isCoupled ||= gain > 0;
  }
  return !isCoupled || tables[a * n + from] === tables[b * n + otherFrom];
}
