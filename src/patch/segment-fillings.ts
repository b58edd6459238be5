import type { PackKind } from "./pack-kind.js";
import type { Segment } from "./slot-segment.js";
import { holds, mostBlocks } from "./slot-segment.js";

/** What is left to pack when a segment is filled. */
export interface FillingTerms {
  readonly segment: Segment;
  readonly kinds: readonly PackKind[];
  /** Items left of each kind. */
  readonly leftCounts: readonly number[];
  /** Blocks that the segment may leave unused, at most. */
  readonly wasteCount: number;
  /** Must it hold one of the largest left? */
  readonly holdsLargest: boolean;
  /** Called at every step. @returns false: stop */
  readonly step: () => boolean;
}

/**
 * Every filling of a segment that no further item could join, fullest with large items first.
 * @returns how many of each kind: `[kind]`
 */
export function* segmentFillings(terms: FillingTerms): Generator<number[]> {
  const { kinds, leftCounts } = terms;
  const blocksFrom = kinds.map(() => 0); // blocks of all items of this kind and the smaller ones
  for (let kind = kinds.length - 1, sum = 0; kind >= 0; kind--)
    blocksFrom[kind] = sum += leftCounts[kind]! * kinds[kind]!.blockCount;
  const left = leftCounts.flatMap((count, kind) => (count > 0 ? [kind] : []));
  yield* fill(
    terms,
    left,
    blocksFrom,
    0,
    kinds.map(() => 0),
    0,
  );
}

function* fill(
  terms: FillingTerms,
  left: readonly number[],
  blocksFrom: readonly number[],
  depth: number,
  counts: number[],
  usedCount: number,
): Generator<number[]> {
  if (!terms.step()) return;
  const roomCount = mostBlocks(terms.segment) - usedCount;
  const kind = left[depth];
  if (kind === undefined) {
    if (roomCount <= terms.wasteCount && isFull(terms, counts, usedCount)) yield [...counts];
    return;
  }
  if (roomCount - blocksFrom[kind]! > terms.wasteCount) return;
  const { blockCount } = terms.kinds[kind]!;
  const least = depth === 0 && terms.holdsLargest ? 1 : 0;
  for (let n = Math.min(terms.leftCounts[kind]!, Math.floor(roomCount / blockCount)); n >= least; n--) {
    counts[kind] = n;
    yield* fill(terms, left, blocksFrom, depth + 1, counts, usedCount + n * blockCount);
  }
  counts[kind] = 0;
}

/** Does the segment hold these items, and none of the others too? */
function isFull(
  { segment, kinds, leftCounts }: FillingTerms,
  counts: readonly number[],
  used: number,
): boolean {
  const tails = kinds.flatMap(({ tailSlotCount }, kind) => (counts[kind]! > 0 ? [tailSlotCount] : []));
  const leastTail = Math.min(...tails, Infinity);
  if (!holds(segment, used, leastTail)) return false;
  return !kinds.some(
    ({ blockCount, tailSlotCount }, kind) =>
      counts[kind]! < leftCounts[kind]! &&
      holds(segment, used + blockCount, Math.min(leastTail, tailSlotCount)),
  );
}
