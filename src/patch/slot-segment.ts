import { alignedSlot, SLOT } from "./slot-map.js";
import { UNIVERSE_SLOT_COUNT } from "./universe.js";

/**
 * A run of free slots, in blocks of the alignment: a luminaire takes whole blocks, but the last block of a run
 * may be cut short, and then holds the end of a luminaire that needs no more of it.
 */
export interface Segment {
  readonly universeIndex: number;
  readonly firstSlot: number;
  /** Whole blocks. */
  readonly blockCount: number;
  /** Slots of the block that is cut short; 0: none. */
  readonly partialSlotCount: number;
}

/** @returns the free runs of a universe that hold a start address, lowest first */
export function freeSegments(slots: Uint8Array, universeIndex: number, alignSlotCount: number): Segment[] {
  const segments: Segment[] = [];
  let slot = 1;
  while (slot <= UNIVERSE_SLOT_COUNT) {
    let end = slot;
    while (end <= UNIVERSE_SLOT_COUNT && slots[end] === SLOT.free) end++;
    const firstSlot = alignedSlot(slot, alignSlotCount);
    const freeSlotCount = end - firstSlot;
    if (freeSlotCount > 0)
      segments.push({
        universeIndex,
        firstSlot,
        blockCount: Math.floor(freeSlotCount / alignSlotCount),
        partialSlotCount: freeSlotCount % alignSlotCount,
      });
    slot = end + 1;
  }
  return segments;
}

/** @returns the blocks of a segment, the one that is cut short among them */
export function mostBlocks({ blockCount, partialSlotCount }: Segment): number {
  return blockCount + (partialSlotCount > 0 ? 1 : 0);
}

/**
 * @returns does it hold so many blocks?
 * @param leastTailSlotCount the fewest slots that any of its luminaires needs of its own last block
 */
export function holds(segment: Segment, blockCount: number, leastTailSlotCount: number): boolean {
  if (blockCount <= segment.blockCount) return true;
  return blockCount === segment.blockCount + 1 && leastTailSlotCount <= segment.partialSlotCount;
}
