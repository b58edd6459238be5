import type { Segment } from "./slot-segment.js";

/** Items that take equally many slots, as a packing sees them. */
export interface PackKind {
  /** Blocks of the alignment that each takes. */
  readonly blockCount: number;
  /** Slots that each needs of its own last block. */
  readonly tailSlotCount: number;
  readonly itemIndexes: readonly number[];
}

/** For each segment, how many of each kind it holds: `[segment][kind]`. */
export type Packing = readonly (readonly number[])[];

/** Where an item lies: the universe counted from 0, and its start address there. */
export interface PackedPlace {
  readonly universeIndex: number;
  readonly address: number;
}

/** @returns the items by kind, most blocks first, `itemIndexes` as the items come */
export function packKinds(slotCounts: readonly number[], alignSlotCount: number): PackKind[] {
  const bySlots = new Map<number, number[]>();
  slotCounts.forEach((slotCount, index) => {
    const indexes = bySlots.get(slotCount);
    if (indexes === undefined) bySlots.set(slotCount, [index]);
    else indexes.push(index);
  });
  return [...bySlots]
    .sort(([a], [b]) => b - a)
    .map(([slotCount, itemIndexes]) => {
      const blockCount = Math.ceil(slotCount / alignSlotCount);
      return { blockCount, tailSlotCount: slotCount - (blockCount - 1) * alignSlotCount, itemIndexes };
    });
}

/** @returns the blocks of all items */
export function totalBlocks(kinds: readonly PackKind[]): number {
  return kinds.reduce((sum, { blockCount, itemIndexes }) => sum + blockCount * itemIndexes.length, 0);
}

/** @returns are two segments as good as each other for any items? */
export function alike(a: Segment, b: Segment): boolean {
  return a.blockCount === b.blockCount && a.partialSlotCount === b.partialSlotCount;
}
