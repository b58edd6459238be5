import { requireFinite, requireNonNegative } from "../issues/index.js";
import { SLACK } from "../units/index.js";

/**
 * Which luminaires of a row the eye sees out of level: the level is the band of the tolerance's height that holds
 * the most of them (the lowest such band), and whoever is outside is uneven by the way to it.
 * @param heightsM how high each hangs, m
 * @param toleranceM difference that the eye forgives, m, ≥ 0
 * @returns for each, m above (+) or below (−) that band; 0 within it
 * @throws {ArgumentError} when a height is not finite or the tolerance not ≥ 0
 * @example unevenOffsetsM([0, 0.01, 0.05], 0.02).map((offsetM) => Math.round(offsetM * 1000)); // => [0, 0, 40]
 */
export function unevenOffsetsM(heightsM: readonly number[], toleranceM: number): number[] {
  heightsM.forEach((heightM, index) => requireFinite(`heightsM[${index}]`, heightM));
  requireNonNegative("toleranceM", toleranceM);
  const sorted = [...heightsM].sort((a, b) => a - b);
  let best = { fromIndex: 0, count: 0 };
  let toIndex = 0;
  for (const [fromIndex, lowestM] of sorted.entries()) {
    while (toIndex < sorted.length && sorted[toIndex]! <= lowestM + toleranceM + SLACK) toIndex++;
    if (toIndex - fromIndex > best.count) best = { fromIndex, count: toIndex - fromIndex };
  }
  const lowestM = sorted[best.fromIndex] ?? 0;
  const highestM = sorted[best.fromIndex + best.count - 1] ?? 0;
  return heightsM.map((heightM) =>
    heightM < lowestM ? heightM - lowestM : heightM > highestM ? heightM - highestM : 0,
  );
}
