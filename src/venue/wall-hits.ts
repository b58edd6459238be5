import { SAME_PLACE_M } from "./outline-fault.js";
import type { WallTable } from "./wall-table.js";
import type { Place } from "./venue-room.js";

/** A wall that a path meets. */
export interface WallHit {
  readonly wallIndex: number;
  /** Of the opening met; −1: the wall itself. */
  readonly openingIndex: number;
  readonly buildIndex: number;
  /** From the path's start, m. */
  readonly alongPathM: number;
  /** From the wall's start, m. */
  readonly alongWallM: number;
  /** Cosine of the angle between the path and the wall's normal, in three dimensions. */
  readonly cosineRatio: number;
  /** Within 1e-9 m of an edge of the wall: where walls join, all of them are met at their edges. */
  readonly atEdge: boolean;
}

/**
 * The walls that the straight path between two places meets. A path along a wall (within 1e-9 of parallel on
 * the plan) grazes it and doesn't meet it; nor does one that only starts or ends on it (within 1e-9 m).
 * Edges belong to the wall; an opening's edge is wall.
 * @returns in the order of the walls, empty for a path without length
 */
export function wallHits(table: WallTable, from: Place, to: Place): WallHit[] {
  const hits: WallHit[] = [];
  eachWallHit(
    table,
    from,
    to,
    (wallIndex, openingIndex, buildIndex, alongPathM, alongWallM, cosineRatio, atEdge) =>
      hits.push({ wallIndex, openingIndex, buildIndex, alongPathM, alongWallM, cosineRatio, atEdge }),
  );
  return hits;
}

/** What is told of a wall that a path meets: the fields of a `WallHit`, in their order. */
export type WallVisit = (
  wallIndex: number,
  openingIndex: number,
  buildIndex: number,
  alongPathM: number,
  alongWallM: number,
  cosineRatio: number,
  atEdge: boolean,
) => void;

/** The same without a list of them, for whoever asks a million times. */
export function eachWallHit(table: WallTable, from: Place, to: Place, visit: WallVisit): void {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const dz = to.z - from.z;
  const planM = Math.sqrt(dx * dx + dy * dy);
  const pathM = Math.sqrt(planM * planM + dz * dz);
  const nearM = SAME_PLACE_M * planM;
  const { fromXM, fromYM, toXM, toYM, lengthM } = table;
  for (let wallIndex = 0; wallIndex < lengthM.length; wallIndex++) {
    const ax = fromXM[wallIndex]! - from.x;
    const ay = fromYM[wallIndex]! - from.y;
    const bx = toXM[wallIndex]! - from.x;
    const by = toYM[wallIndex]! - from.y;
    const sideA = dx * ay - dy * ax;
    const sideB = dx * by - dy * bx;
    if ((sideA > nearM && sideB > nearM) || (sideA < -nearM && sideB < -nearM)) continue;
    const wallM = lengthM[wallIndex]!;
    const turn = sideB - sideA; // path × wall
    if (Math.abs(turn) <= PARALLEL * planM * wallM) continue;
    const share = (ax * (by - ay) - ay * (bx - ax)) / turn;
    const alongPathM = share * pathM;
    if (alongPathM <= SAME_PLACE_M || alongPathM >= pathM - SAME_PLACE_M) continue;
    const alongWallM = (-sideA / turn) * wallM;
    const heightM = from.z + share * dz;
    const met = edgeOf(table, wallIndex, alongWallM, heightM);
    if (met === "beside") continue;
    const openingIndex = openingAt(table, wallIndex, alongWallM, heightM);
    const buildIndex =
      openingIndex < 0 ? table.buildIndex[wallIndex]! : table.openings[wallIndex]![openingIndex]!.buildIndex;
    const cosineRatio = Math.abs(turn) / (wallM * pathM);
    visit(wallIndex, openingIndex, buildIndex, alongPathM, alongWallM, cosineRatio, met === "edge");
  }
}

/** Sine of the angle on the plan below which a path runs along a wall. */
const PARALLEL = 1e-9;

function edgeOf(
  { lengthM, bottomM, topM }: WallTable,
  wall: number,
  alongM: number,
  heightM: number,
): "beside" | "edge" | "within" {
  const insideM = Math.min(alongM, lengthM[wall]! - alongM, heightM - bottomM[wall]!, topM[wall]! - heightM);
  if (insideM < -SAME_PLACE_M) return "beside";
  return insideM > SAME_PLACE_M ? "within" : "edge";
}

function openingAt({ openings }: WallTable, wall: number, alongM: number, heightM: number): number {
  return openings[wall]!.findIndex(
    ({ fromM, toM, bottomM, topM }) =>
      Math.min(alongM - fromM, toM - alongM, heightM - bottomM, topM - heightM) > SAME_PLACE_M,
  );
}

/**
 * The hits that count. Where walls join, a path through the joint meets them all at their edges: they count
 * once, as the greatest of them, or as the walls that are met within where those take more. So cutting a wall
 * in two pieces of one line changes nothing.
 * @param lossDb of each hit, dB
 * @returns indices into `hits`, in the order of the path
 */
export function countedHits(hits: readonly WallHit[], lossDb: readonly number[]): number[] {
  const inOrder = hits.map((_, index) => index);
  inOrder.sort((a, b) => hits[a]!.alongPathM - hits[b]!.alongPathM || a - b);
  if (!hits.some(({ atEdge }) => atEdge)) return inOrder;
  const joints: number[][] = [];
  for (const index of inOrder) {
    const joint = joints[joints.length - 1];
    const startM = joint === undefined ? -Infinity : hits[joint[0]!]!.alongPathM;
    if (hits[index]!.alongPathM - startM <= 2 * SAME_PLACE_M) joint!.push(index);
    else joints.push([index]);
  }
  return joints.flatMap((joint) => countedOnce(joint, hits, lossDb));
}

function countedOnce(
  joint: readonly number[],
  hits: readonly WallHit[],
  lossDb: readonly number[],
): number[] {
  const within = joint.filter((index) => !hits[index]!.atEdge);
  const edges = joint.filter((index) => hits[index]!.atEdge);
  if (edges.length === 0) return within;
  const greatest = edges.reduce((best, index) => (lossDb[index]! > lossDb[best]! ? index : best));
  const withinDb = within.reduce((sum, index) => sum + lossDb[index]!, 0);
  return within.length > 0 && withinDb >= lossDb[greatest]! ? within : [greatest];
}
