/** Loads from the greatest down: what is compared to tell the better of two assignments. */
export function descending(loadRatios: Float64Array): Float64Array {
  return loadRatios.slice().sort((a, b) => b - a);
}

/** Loads closer than this share of themselves count as equal: 1e-9 dB. */
export const EQUAL_RATIO = 1e-10 * Math.LN10;

/**
 * @param aRatios loads in descending order
 * @param bRatios as many of another assignment
 * @returns < 0 where the first is the better assignment: the smaller of the first loads that differ by more than 1e-9 dB
 */
export function compareLoads(aRatios: Float64Array, bRatios: Float64Array): number {
  for (let k = 0; k < aRatios.length; k++)
    if (Math.abs(aRatios[k]! - bRatios[k]!) > EQUAL_RATIO * Math.max(aRatios[k]!, bRatios[k]!))
      return aRatios[k]! - bRatios[k]!;
  return 0;
}

/**
 * A demand on loads in descending order: the k-th is at most `levelRatios[k]`, which falls with k. It is the same as
 * "at most k loads are above levelRatios[k]".
 * Given that no load can be below `leastRatios`, how great may each still be?
 * @param limitRatios [system] filled with the answer
 * @returns false where the demand can't be met any more
 */
export function fillLimits(
  leastRatios: Float64Array,
  levelRatios: Float64Array,
  limitRatios: Float64Array,
): boolean {
  limitRatios.fill(Infinity);
  for (let k = 0; k < levelRatios.length && levelRatios[k]! < Infinity; k++) {
    const level = levelRatios[k]!;
    let above = 0;
    for (const least of leastRatios) if (least > level) above++;
    if (above > k) return false;
    if (above < k) continue;
    for (let r = 0; r < limitRatios.length; r++)
      if (leastRatios[r]! <= level && limitRatios[r]! > level) limitRatios[r] = level;
  }
  return true;
}

/**
 * Levels that ask for a better assignment: the first `keptCount` loads as they are, the next one truly smaller,
 * anything below. With as many kept as there are: an equal or better one.
 */
export function levelsBelow(descendingRatios: Float64Array, keptCount: number): Float64Array {
  return descendingRatios.map((load, k) => {
    if (k > keptCount) return Infinity;
    return k < keptCount ? load * (1 + EQUAL_RATIO) : load * (1 - 2 * EQUAL_RATIO);
  });
}

/** Levels that ask for a greatest load and nothing else. */
export function levelsWithin(systemCount: number, mostRatio: number): Float64Array {
  return new Float64Array(systemCount).map((_, k) => (k === 0 ? mostRatio : Infinity));
}
