import { requireNonNegative, requirePositive } from "../issues/index.js";
import { SLACK } from "../units/index.js";

/** How whole steps are chosen. */
export interface LevelStepsOptions {
  /** Is the row brought level by a step more or less? */
  readonly levelsRows: boolean;
  /** May a luminaire hang below its trim? */
  readonly mayHangBelowTrim: boolean;
}

/**
 * Whole steps (links of a chain) for a row that hangs to one trim. Each alone gets ⌊drop/step⌋, so that none hangs
 * below its trim. To come out level, those with the smallest rest lose one more step, wherever that makes highest
 * less lowest smaller: with the rests in order r₁ ≤ … ≤ rₙ on a circle of one step, the row is cut at the widest
 * gap, and the spread is the step less that gap, the smallest there is. Among equals the lowest row. Where it may
 * hang below, the whole row is a step lower if its farthest comes nearer to trim so.
 * @param dropsM what each has to fill, m, ≥ 0; @param stepM m, > 0
 * @returns steps of each, whole, ≥ 0, in the order of `dropsM`
 * @throws {ArgumentError} when a drop or the step is not such a number
 * @example levelSteps([1.001, 1.024], 0.025, { levelsRows: false, mayHangBelowTrim: false }); // => [40, 40]
 * @example levelSteps([1.001, 1.024], 0.025, { levelsRows: true, mayHangBelowTrim: false }); // => [39, 40]
 */
export function levelSteps(dropsM: readonly number[], stepM: number, options: LevelStepsOptions): number[] {
  requirePositive("stepM", stepM);
  dropsM.forEach((dropM, index) => requireNonNegative(`dropsM[${index}]`, dropM));
  const stepCounts = dropsM.map((dropM) => Math.floor(dropM / stepM + SLACK));
  const restsM = dropsM.map((dropM, index) => Math.max(0, dropM - stepCounts[index]! * stepM));
  if (!options.levelsRows) {
    const isLower = (index: number): boolean =>
      options.mayHangBelowTrim && restsM[index]! > stepM / 2 + SLACK;
    return stepCounts.map((stepCount, index) => stepCount + (isLower(index) ? 1 : 0));
  }
  const shorter = shortened(restsM, stepCounts, stepM);
  const errorsM = restsM.map((restM, index) => restM + (shorter.has(index) ? stepM : 0));
  const isLower = options.mayHangBelowTrim && farthestM(errorsM, stepM) < farthestM(errorsM, 0) - SLACK;
  return stepCounts.map((stepCount, index) => stepCount - (shorter.has(index) ? 1 : 0) + (isLower ? 1 : 0));
}

/** Who loses a step for the smallest spread. */
function shortened(restsM: readonly number[], stepCounts: readonly number[], stepM: number): Set<number> {
  const order = restsM.map((_, index) => index).sort((a, b) => restsM[a]! - restsM[b]! || a - b);
  let bestCount = 0;
  let leastM = order.length === 0 ? 0 : restsM[order.at(-1)!]! - restsM[order[0]!]!;
  for (let count = 1; count < order.length && stepCounts[order[count - 1]!]! > 0; count++) {
    const spreadM = restsM[order[count - 1]!]! + stepM - restsM[order[count]!]!;
    if (spreadM < leastM - SLACK) [bestCount, leastM] = [count, spreadM];
  }
  return new Set(order.slice(0, bestCount));
}

function farthestM(errorsM: readonly number[], loweredM: number): number {
  return errorsM.reduce((mostM, errorM) => Math.max(mostM, Math.abs(errorM - loweredM)), 0);
}
