import { ArgumentError } from "../issues/index.js";
import { bisect } from "../numeric/index.js";
import { SLACK } from "../units/index.js";
import type { Caveat } from "./caveat.js";
import { FITTED_UP_TO_M } from "./caveat.js";

/** How far a link works. */
export interface Reach {
  /** m, whole centimetres; 0: nowhere. Null: beyond the searched distances. */
  readonly reachM: number | null;
  /** Why there is no distance, in words; null where there is one. */
  readonly reason: string | null;
  readonly caveats: readonly Caveat[];
}

/**
 * The greatest distance at which the working margin is ≥ 0 (−1e-9 dB counts as 0), searched from 0.1 m to
 * 1000 m and rounded down to a centimetre at which it still is. The margin needn't fall steadily (an
 * antenna's null overhead, a pattern's lobes): it is looked at 200 times a tenfold distance (steps of
 * 1.2 %), and the outermost crossing is bisected. A stretch of good margin narrower than a step, or than a
 * centimetre, may be missed.
 * @param workingMarginDbAt working margin, dB, at a distance in m; ±Infinity allowed
 * @param lookCount looks a tenfold distance; 1 is enough for a margin that only falls
 * @throws {ArgumentError} when the function gives NaN
 * @example findReach((distanceM) => 20 - distanceM).reachM; // => 20
 * @example findReach(() => 1).reason; // => "the margin still holds at 1000 m"
 */
export function findReach(
  workingMarginDbAt: (distanceM: number) => number,
  lookCount = STEPS_PER_DECADE,
): Reach {
  const gridCount = DECADES * lookCount;
  const gridM = (index: number): number => SHORTEST_M * 10 ** (index / lookCount);
  const holdsAt = (distanceM: number): boolean => marginAt(workingMarginDbAt, distanceM) >= -SLACK;
  if (holdsAt(LONGEST_M))
    return {
      reachM: null,
      reason: `the margin still holds at ${LONGEST_M} m`,
      caveats: ["beyond-fitted-distance"],
    };
  for (let index = gridCount - 1; index >= 0; index--) {
    if (!holdsAt(gridM(index))) continue;
    const nextM = gridM(index + 1);
    const crossingM = holdsAt(nextM)
      ? nextM
      : bisect((m) => (holdsAt(m) ? 1 : -1), gridM(index), nextM, 1e-7);
    const firstCm = Math.floor(crossingM * 100 + 1e-5);
    const lastCm = Math.max(SHORTEST_M * 100, Math.min(firstCm, Math.ceil(gridM(index) * 100)));
    for (let cm = firstCm; cm >= lastCm; cm--) if (holdsAt(cm / 100)) return reached(cm / 100);
  }
  return { reachM: 0, reason: null, caveats: [] };
}

/**
 * {@link findReach} as a bare number.
 * @returns m, whole centimetres; 0 when the margin holds nowhere; null when it still holds at 1000 m
 * @throws {ArgumentError} when the function gives NaN
 * @example reachM((distanceM) => 20 - distanceM); // => 20
 */
export function reachM(workingMarginDbAt: (distanceM: number) => number): number | null {
  return findReach(workingMarginDbAt).reachM;
}

const SHORTEST_M = 0.1;
const LONGEST_M = 1000;
const STEPS_PER_DECADE = 200;
const DECADES = 4;

function marginAt(workingMarginDbAt: (distanceM: number) => number, distanceM: number): number {
  const marginDb = workingMarginDbAt(distanceM);
  if (Number.isNaN(marginDb))
    throw new ArgumentError("workingMarginDbAt", "a number", `NaN at ${distanceM} m`);
  return marginDb;
}

function reached(distanceM: number): Reach {
  const beyond: Caveat[] = distanceM > FITTED_UP_TO_M ? ["beyond-fitted-distance"] : [];
  return { reachM: distanceM, reason: null, caveats: beyond };
}
