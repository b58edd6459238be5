import { ArgumentError } from "../issues/index.js";
import { SAME_PLACE_M } from "./outline-fault.js";
import type { Opening, Storey, Wall, WallBuild } from "./venue-room.js";

/** The walls of a venue laid out for many paths; index i of every list is wall i of `walls`. */
export interface WallTable {
  readonly walls: readonly Wall[];
  readonly fromXM: Float64Array;
  readonly fromYM: Float64Array;
  readonly toXM: Float64Array;
  readonly toYM: Float64Array;
  /** Lowest and highest edge above the lowest storey's floor; Infinity where a wall has no top. */
  readonly bottomM: Float64Array;
  readonly topM: Float64Array;
  readonly lengthM: Float64Array;
  readonly openings: readonly (readonly PlacedOpening[])[];
  readonly buildIndex: Int32Array;
  /** Each kind of build once. */
  readonly builds: readonly WallBuild[];
}

/** An opening with its edges in the venue's heights; one that reaches the wall's edge reaches beyond it. */
export interface PlacedOpening {
  readonly fromM: number;
  readonly toM: number;
  readonly bottomM: number;
  readonly topM: number;
  readonly buildIndex: number;
}

/**
 * Lays out a venue's walls. A wall without a top rises to the next storey's floor, or without end.
 * @throws {ArgumentError} for a wall on an unknown storey or of no length
 */
export function wallTable(walls: readonly Wall[], storeys: readonly Storey[]): WallTable {
  const builds: WallBuild[] = [];
  const known = new Map<string, number>();
  const indexOf = (build: WallBuild): number => {
    const key = JSON.stringify(build);
    const index = known.get(key) ?? builds.push(build) - 1;
    known.set(key, index);
    return index;
  };
  const spans = walls.map((wall) => heightSpan(wall, storeys));
  const numbers = (of: (wall: Wall, index: number) => number): Float64Array => Float64Array.from(walls, of);
  return {
    walls,
    fromXM: numbers(({ from }) => from.x),
    fromYM: numbers(({ from }) => from.y),
    toXM: numbers(({ to }) => to.x),
    toYM: numbers(({ to }) => to.y),
    bottomM: numbers((_, index) => spans[index]!.bottomM),
    topM: numbers((_, index) => spans[index]!.topM),
    lengthM: numbers(lengthOf),
    openings: walls.map((wall, index) =>
      wall.openings.map((opening) => placed(opening, wall, spans[index]!, indexOf(opening.build))),
    ),
    buildIndex: Int32Array.from(walls, ({ build }) => indexOf(build)),
    builds,
  };
}

interface HeightSpan {
  readonly floorM: number;
  readonly bottomM: number;
  readonly topM: number;
}

function heightSpan(wall: Wall, storeys: readonly Storey[]): HeightSpan {
  const storey = storeys.findIndex(({ name }) => name === wall.storey);
  if (storey < 0)
    throw new ArgumentError("wall.storey", storeys.map(({ name }) => name).join(", "), wall.storey);
  const floorM = storeys[storey]!.floorM;
  const above = storeys[storey + 1]?.floorM ?? Infinity;
  return { floorM, bottomM: floorM + wall.bottomM, topM: wall.topM === null ? above : floorM + wall.topM };
}

function lengthOf({ name, from, to }: Wall): number {
  const lengthM = Math.hypot(to.x - from.x, to.y - from.y);
  if (!(lengthM > SAME_PLACE_M)) throw new ArgumentError("wall", "two ends apart from each other", name);
  return lengthM;
}

function placed(opening: Opening, wall: Wall, span: HeightSpan, buildIndex: number): PlacedOpening {
  const bottomM = span.floorM + opening.bottomM;
  const topM = span.floorM + opening.topM;
  return {
    fromM: opening.fromM <= SAME_PLACE_M ? -Infinity : opening.fromM,
    toM: opening.toM >= lengthOf(wall) - SAME_PLACE_M ? Infinity : opening.toM,
    bottomM: bottomM <= span.bottomM + SAME_PLACE_M ? -Infinity : bottomM,
    topM: topM >= span.topM - SAME_PLACE_M ? Infinity : topM,
    buildIndex,
  };
}
