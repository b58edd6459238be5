import type { Packing, PackKind } from "./pack-kind.js";
import type { Segment } from "./slot-segment.js";
import { holds } from "./slot-segment.js";

/**
 * First fit decreasing: each item, largest first, goes into the first segment that still holds it.
 * @returns the packing; null where an item is left over
 * @source D. S. Johnson, Near-optimal bin packing algorithms, thesis, MIT 1973, from memory
 */
export function packFirstFit(kinds: readonly PackKind[], segments: readonly Segment[]): Packing | null {
  const usedBlocks = segments.map(() => 0);
  const leastTail = segments.map(() => Infinity);
  const packing = segments.map(() => kinds.map(() => 0));
  for (const [kindIndex, kind] of kinds.entries()) {
    let left = kind.itemIndexes.length;
    for (let index = 0; index < segments.length && left > 0; index++) {
      const tail = Math.min(leastTail[index]!, kind.tailSlotCount);
      while (left > 0 && holds(segments[index]!, usedBlocks[index]! + kind.blockCount, tail)) {
        usedBlocks[index]! += kind.blockCount;
        leastTail[index] = tail;
        packing[index]![kindIndex]!++;
        left--;
      }
    }
    if (left > 0) return null;
  }
  return packing;
}
