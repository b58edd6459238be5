import type { PackedPlace, Packing, PackKind } from "./pack-kind.js";
import type { Segment } from "./slot-segment.js";

interface Item {
  readonly itemIndex: number;
  readonly kind: PackKind;
}

/** @returns the place of each item of a packing; within a segment they lie in their own order */
export function layOut(
  packedCounts: Packing,
  kinds: readonly PackKind[],
  segments: readonly Segment[],
  alignSlotCount: number,
): PackedPlace[] {
  const places: PackedPlace[] = [];
  const takenCounts = kinds.map(() => 0);
  for (const [index, counts] of packedCounts.entries()) {
    const segment = segments[index]!;
    const items = counts.flatMap((count, kindIndex) => {
      const kind = kinds[kindIndex]!;
      const from = takenCounts[kindIndex]!;
      takenCounts[kindIndex] = from + count;
      return kind.itemIndexes.slice(from, from + count).map((itemIndex): Item => ({ itemIndex, kind }));
    });
    let address = segment.firstSlot;
    for (const { itemIndex, kind } of inSegmentOrder(items, segment)) {
      places[itemIndex] = { universeIndex: segment.universeIndex, address };
      address += kind.blockCount * alignSlotCount;
    }
  }
  return places;
}

/** In the items' own order; where the block that is cut short is needed, one that can do with it comes last. */
function inSegmentOrder(items: readonly Item[], segment: Segment): Item[] {
  const ordered = [...items].sort((a, b) => a.itemIndex - b.itemIndex);
  const blockCount = items.reduce((sum, { kind }) => sum + kind.blockCount, 0);
  if (blockCount <= segment.blockCount) return ordered;
  const last = ordered.map(({ kind }) => kind.tailSlotCount <= segment.partialSlotCount).lastIndexOf(true);
  ordered.push(...ordered.splice(last, 1));
  return ordered;
}
