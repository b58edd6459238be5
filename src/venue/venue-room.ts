import type { KnownWall, LayeredWall, PathModel, Vector3, WallLayer } from "../propagation/index.js";

/** A point on the plan, m. */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
}

/** A storey of a venue: where its floor lies and what passes through it loses. */
export interface Storey {
  readonly name: string;
  /** Height of its floor above the lowest storey's, m. */
  readonly floorM: number;
  /** Loss of the floor under it, dB; null: by ITU-R P.1238 for the venue's kind of building. */
  readonly floorLossDb: number | null;
}

/** Heads in a room, by crowd. */
export interface PeopleCounts {
  readonly empty: number;
  readonly part: number;
  readonly full: number;
}

/** A room of a venue: its floor plan, height and people. */
export interface Room {
  readonly name: string;
  readonly storey: string;
  /** Corners in order, at least three, not closed; edges don't cross. */
  readonly outline: readonly PlanPoint[];
  /** Floor to ceiling, m. */
  readonly heightM: number;
  readonly pathModel: PathModel | null;
  /** Names of scan places that lie in it; its own name is one. */
  readonly places: readonly string[];
  readonly people: PeopleCounts;
  /** Where the people are; null: all over the room. */
  readonly seating: readonly PlanPoint[] | null;
  /** Handsets above the floor, m; 1.2 unless given (seated; assumed). */
  readonly handsetHeightM: number;
  /** Of its luminaires that have no trim of their own, above its datum; null: none. */
  readonly trimHeightM: number | null;
  /** Of the laser line that trim is measured from, above its datum; null: none set up. */
  readonly laserLineM: number | null;
}

/** What a wall, a door or a pane is made of. */
export type WallBuild = KnownWall | WallLayer | LayeredWall;

/** A door, window or gap in a wall. */
export interface Opening {
  /** Along the wall from its start, m. */
  readonly fromM: number;
  readonly toM: number;
  /** Above the storey's floor, m. */
  readonly bottomM: number;
  readonly topM: number;
  /** What fills it; `{ lossDb: 0 }` where it stands open. */
  readonly build: WallBuild;
}

/** A straight wall on the plan, from its storey's floor up. */
export interface Wall {
  readonly name: string;
  readonly storey: string;
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  readonly bottomM: number;
  /** Null: as high as can be. */
  readonly topM: number | null;
  readonly build: WallBuild;
  readonly openings: readonly Opening[];
}

/** A place in the venue: z is above the lowest storey's floor, m. */
export type Place = Vector3;
