import { SAME_PLACE_M } from "./outline-fault.js";
import { PARALLEL, WHOLE_WALL } from "./wall-hits.js";
import type { WallHit } from "./wall-hits.js";
import type { WallTable } from "./wall-table.js";

/**
 * The hits that count. Where walls join, a path through the joint meets them at their edges. Pieces of one line
 * that complete each other there are one wall, with the greatest loss of them; what then still ends at the joint
 * counts once, as the greatest of them, or as the whole walls where those take more. So cutting a wall in two
 * pieces of one line changes nothing, but at the very edge of an opening that loses more than its wall.
 * @param lossDb of each hit, dB
 * @returns indices into `hits`, in the order of the path
 */
export function countedHits(table: WallTable, hits: readonly WallHit[], lossDb: readonly number[]): number[] {
  const inOrder = hits.map((_, index) => index);
  inOrder.sort((a, b) => hits[a]!.alongPathM - hits[b]!.alongPathM || a - b);
  if (hits.every(({ quartersIndex }) => quartersIndex === WHOLE_WALL)) return inOrder;
  const joints: number[][] = [];
  for (const index of inOrder) {
    const joint = joints[joints.length - 1];
    const startM = joint === undefined ? -Infinity : hits[joint[0]!]!.alongPathM;
    if (hits[index]!.alongPathM - startM <= 2 * SAME_PLACE_M) joint!.push(index);
    else joints.push([index]);
  }
  return joints.flatMap((joint) => countedOnce(piecedTogether(table, joint, hits, lossDb), lossDb));
}

/** Pieces of one line that don't overlap around the joint. */
interface Leaf {
  /** The hit of the greatest loss among the pieces. */
  readonly greatest: number;
  quartersIndex: number;
}

/** The hits of a joint as leaves: each piece joins the first leaf of its line that has room for it. */
function piecedTogether(
  table: WallTable,
  joint: readonly number[],
  hits: readonly WallHit[],
  lossDb: readonly number[],
): Leaf[] {
  const leaves: Leaf[] = [];
  for (const index of [...joint].sort((a, b) => lossDb[b]! - lossDb[a]! || a - b)) {
    const { quartersIndex, wallIndex } = hits[index]!;
    const leaf = leaves.find(
      (one) =>
        (one.quartersIndex & quartersIndex) === 0 &&
        areParallel(table, hits[one.greatest]!.wallIndex, wallIndex),
    );
    if (leaf === undefined) leaves.push({ greatest: index, quartersIndex });
    else leaf.quartersIndex |= quartersIndex;
  }
  return leaves;
}

function areParallel({ fromXM, fromYM, toXM, toYM, lengthM }: WallTable, a: number, b: number): boolean {
  const [ax, ay] = [toXM[a]! - fromXM[a]!, toYM[a]! - fromYM[a]!];
  const [bx, by] = [toXM[b]! - fromXM[b]!, toYM[b]! - fromYM[b]!];
  return Math.abs(ax * by - ay * bx) <= PARALLEL * lengthM[a]! * lengthM[b]!;
}

/** @param leaves greatest loss first */
function countedOnce(leaves: readonly Leaf[], lossDb: readonly number[]): number[] {
  const whole = leaves
    .filter(({ quartersIndex }) => quartersIndex === WHOLE_WALL)
    .map(({ greatest }) => greatest)
    .sort((a, b) => a - b);
  const ending = leaves.find(({ quartersIndex }) => quartersIndex !== WHOLE_WALL)?.greatest;
  if (ending === undefined) return whole;
  const wholeDb = whole.reduce((sum, index) => sum + lossDb[index]!, 0);
  return whole.length > 0 && wholeDb >= lossDb[ending]! ? whole : [ending];
}
