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
  /** Which quarters around the point met are wall: 0 … 15, a bit each; `WHOLE_WALL` unless within 1e-9 m of an edge. */
  readonly quartersIndex: number;
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
    (wallIndex, openingIndex, buildIndex, alongPathM, alongWallM, cosineRatio, quartersIndex) =>
      hits.push({ wallIndex, openingIndex, buildIndex, alongPathM, alongWallM, cosineRatio, quartersIndex }),
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
  quartersIndex: number,
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
    const quartersIndex = quartersAt(table, wallIndex, alongWallM, heightM, turn > 0);
    if (quartersIndex === 0) continue;
    const openingIndex = openingAt(table, wallIndex, alongWallM, heightM);
    const buildIndex =
      openingIndex < 0 ? table.buildIndex[wallIndex]! : table.openings[wallIndex]![openingIndex]!.buildIndex;
    const cosineRatio = Math.abs(turn) / (wallM * pathM);
    visit(wallIndex, openingIndex, buildIndex, alongPathM, alongWallM, cosineRatio, quartersIndex);
  }
}

/** Sine of the angle on the plan below which two lines are parallel. */
export const PARALLEL = 1e-9;

const LEFT = 0b0101;
const RIGHT = 0b1010;
const BELOW = 0b0011;
const ABOVE = 0b1100;
/** Wall all round the point that a path meets. */
export const WHOLE_WALL = 0b1111;

/** Quarters left and right of the path, below and above the point; 0 beside the wall. */
function quartersAt(
  { lengthM, bottomM, topM }: WallTable,
  wall: number,
  alongM: number,
  heightM: number,
  endIsLeft: boolean,
): number {
  const toEndM = lengthM[wall]! - alongM;
  const toBottomM = heightM - bottomM[wall]!;
  const toTopM = topM[wall]! - heightM;
  const insideM = Math.min(alongM, toEndM, toBottomM, toTopM);
  if (insideM > SAME_PLACE_M) return WHOLE_WALL;
  if (insideM < -SAME_PLACE_M) return 0;
  const towardsStart = alongM > SAME_PLACE_M ? (endIsLeft ? RIGHT : LEFT) : 0;
  const towardsEnd = toEndM > SAME_PLACE_M ? (endIsLeft ? LEFT : RIGHT) : 0;
  const below = toBottomM > SAME_PLACE_M ? BELOW : 0;
  const above = toTopM > SAME_PLACE_M ? ABOVE : 0;
  return (towardsStart | towardsEnd) & (below | above);
}

function openingAt({ openings }: WallTable, wall: number, alongM: number, heightM: number): number {
  return openings[wall]!.findIndex(
    ({ fromM, toM, bottomM, topM }) =>
      Math.min(alongM - fromM, toM - alongM, heightM - bottomM, topM - heightM) > SAME_PLACE_M,
  );
}
