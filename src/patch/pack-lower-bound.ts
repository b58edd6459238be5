import type { PackKind } from "./pack-kind.js";

/**
 * Bins of one size that items need at least: the bound L2, never below L1 = ⌈total ÷ size⌉. For each threshold t:
 * items larger than size − t go alone, items larger than half a bin go apart, and what is left of the smaller
 * ones down to t after filling the room beside these needs bins of its own.
 * @param kinds by blocks
 * @param binBlockCount blocks of a bin
 * @returns a number of bins that no packing goes below
 * @source S. Martello, P. Toth, Knapsack Problems (1990), section 8.3, from memory
 */
export function leastBinCount(kinds: readonly PackKind[], binBlockCount: number): number {
  const thresholds = kinds.map(({ blockCount }) => blockCount).filter((t) => 2 * t <= binBlockCount);
  return Math.max(...[0, ...thresholds].map((threshold) => boundAt(kinds, binBlockCount, threshold)));
}

function boundAt(kinds: readonly PackKind[], size: number, threshold: number): number {
  let [alone, apart, besideApart, small] = [0, 0, 0, 0];
  for (const { blockCount, itemIndexes } of kinds) {
    const count = itemIndexes.length;
    if (blockCount > size - threshold) alone += count;
    else if (2 * blockCount > size) {
      apart += count;
      besideApart += count * (size - blockCount);
    } else if (blockCount >= threshold) small += count * blockCount;
  }
  return alone + apart + Math.max(0, Math.ceil((small - besideApart) / size));
}
