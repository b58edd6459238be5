import { countAtOrBelow } from "./sums.js";
import type { Sums } from "./sums.js";

/**
 * P(a + b ≤ limit) of two independent sums, in one pass: as a rises, the b that still fit fall.
 * @param cumulativeRatios shares of the first k values of `b` (see `cumulativeShares`)
 */
export function shareOfSumAtOrBelow(
  a: Sums,
  b: Sums,
  cumulativeRatios: Float64Array,
  limitMw: number,
): number {
  const aMw = a.valueMw;
  const bMw = b.valueMw;
  const aShare = a.shareRatio;
  let fitting = countAtOrBelow(bMw, limitMw - (aMw[0] ?? 0));
  let share = 0;
  for (let index = 0; index < aMw.length && fitting > 0; index++) {
    const roomMw = limitMw - aMw[index]!;
    while (fitting > 0 && bMw[fitting - 1]! > roomMw) fitting--;
    share += aShare[index]! * cumulativeRatios[fitting]!;
  }
  return share;
}

/** The greatest a + b ≤ limit; 0 where none is. */
export function greatestSumAtOrBelow(a: Sums, b: Sums, limitMw: number): number {
  let bestMw = 0;
  for (const aMw of a.valueMw) {
    const fitting = countAtOrBelow(b.valueMw, limitMw - aMw);
    if (fitting > 0) bestMw = Math.max(bestMw, aMw + b.valueMw[fitting - 1]!);
  }
  return bestMw;
}
