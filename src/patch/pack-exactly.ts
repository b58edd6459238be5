import type { Packing, PackKind } from "./pack-kind.js";
import { alike, totalBlocks } from "./pack-kind.js";
import { segmentFillings } from "./segment-fillings.js";
import type { Segment } from "./slot-segment.js";
import { mostBlocks } from "./slot-segment.js";
import type { StepBudget } from "./step-budget.js";

/** Whether items fit: a packing, `none` where it is proved that there is none, `unknown` where the steps ran out. */
export type PackAnswer = Packing | "none" | "unknown";

/**
 * Do the items fit into the segments? Branch and bound by segment: each is filled in every way that no further
 * item could join (an item of a later segment could always be moved there), smallest segments first. A branch
 * ends when it leaves more blocks unused than there are to spare, or leads to items left that have failed
 * before; where all segments left are alike, the next one holds one of the largest items.
 * @source bin completion: R. E. Korf, AAAI 2002, from memory
 */
export function packExactly(
  kinds: readonly PackKind[],
  segments: readonly Segment[],
  budget: StepBudget,
): PackAnswer {
  const spare = segments.reduce((sum, segment) => sum + mostBlocks(segment), 0) - totalBlocks(kinds);
  if (spare < 0) return "none";
  if (segments.length > DEEPEST || budget.isSpent()) return "unknown";
  const search = new Search(kinds, segments, budget);
  const found = search.from(
    0,
    kinds.map(({ itemIndexes }) => itemIndexes.length),
    spare,
  );
  if (found) return search.packing;
  return search.gaveUp ? "unknown" : "none";
}

/** Segments that a recursion may go down. */
const DEEPEST = 1000;

class Search {
  readonly packing: number[][];
  gaveUp = false;
  private readonly failed = new Set<string>();
  /** The segments' indexes, smallest first. */
  private readonly order: readonly number[];
  constructor(
    private readonly kinds: readonly PackKind[],
    private readonly segments: readonly Segment[],
    private readonly budget: StepBudget,
  ) {
    this.packing = segments.map(() => kinds.map(() => 0));
    const size = (index: number): number => segments[index]!.blockCount;
    const partial = (index: number): number => segments[index]!.partialSlotCount;
    this.order = [...segments.keys()].sort((a, b) => size(a) - size(b) || partial(a) - partial(b) || a - b);
  }

  /** @returns do the items left fit into the segments from `depth` on, with so many blocks to spare? */
  from(depth: number, leftCounts: readonly number[], spareCount: number): boolean {
    if (leftCounts.every((count) => count === 0)) return true;
    if (depth === this.order.length) return false;
    const key = `${depth}:${leftCounts.join()}`;
    if (this.failed.has(key)) return false;
    const segment = this.segments[this.order[depth]!]!;
    const fillings = segmentFillings({
      segment,
      kinds: this.kinds,
      leftCounts,
      wasteCount: spareCount,
      holdsLargest: alike(segment, this.segments[this.order.at(-1)!]!),
      step: () => this.step(),
    });
    for (const filling of fillings) {
      const wasted = mostBlocks(segment) - this.blocksOf(filling);
      const left = leftCounts.map((count, kind) => count - filling[kind]!);
      if (!this.from(depth + 1, left, spareCount - wasted)) continue;
      this.packing[this.order[depth]!] = filling;
      return true;
    }
    if (!this.gaveUp) this.failed.add(key);
    return false;
  }

  private blocksOf(filling: readonly number[]): number {
    return filling.reduce((sum, count, kind) => sum + count * this.kinds[kind]!.blockCount, 0);
  }

  private step(): boolean {
    this.gaveUp ||= !this.budget.take();
    return !this.gaveUp;
  }
}
