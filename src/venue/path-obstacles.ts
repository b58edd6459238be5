import type { WallPlanningLoss } from "../propagation/index.js";
import { floorHits, floorHitsLossDb } from "./floor-hits.js";
import type { FloorHit } from "./floor-hits.js";
import type { Place } from "./venue-room.js";
import type { VenueSite } from "./venue-site.js";
import { wallHits } from "./wall-hits.js";
import { countedHits } from "./wall-joints.js";

/** A wall on a path, or the opening in it that the path goes through. */
export interface CrossedWall extends WallPlanningLoss {
  readonly wall: string;
  /** Index among the wall's openings; null: the wall itself. */
  readonly openingIndex: number | null;
  /** Angle between the path and the wall's normal in three dimensions. */
  readonly incidenceDeg: number;
  /** From the path's start, m. */
  readonly alongPathM: number;
}

/** All that stands between two places. */
export interface PathObstacles {
  /** In the order of the path. */
  readonly walls: readonly CrossedWall[];
  readonly wallLossDb: number;
  readonly floors: readonly FloorHit[];
  readonly floorLossDb: number;
}

/**
 * The walls and floors that the straight path between two places goes through, each wall at its own angle of
 * incidence (see `wallHits`, `floorHits`).
 * @throws {ArgumentError} as `wallLoss`
 * @validity multi-wall model: no echoes, nothing round edges
 */
export function pathObstacles(site: VenueSite, from: Place, to: Place): PathObstacles {
  const hits = wallHits(site.walls, from, to);
  const losses = hits.map(({ buildIndex, cosineRatio }) => site.lossOf(buildIndex, cosineRatio));
  const counted = countedHits(
    site.walls,
    hits,
    losses.map(({ lossDb }) => lossDb),
  );
  const walls = counted.map((index): CrossedWall => {
    const { wallIndex, openingIndex, cosineRatio, alongPathM } = hits[index]!;
    return {
      ...losses[index]!,
      wall: site.walls.walls[wallIndex]!.name,
      openingIndex: openingIndex < 0 ? null : openingIndex,
      incidenceDeg: (Math.acos(Math.min(1, cosineRatio)) * 180) / Math.PI,
      alongPathM,
    };
  });
  const floors = floorHits(site.venue, from, to);
  return {
    walls,
    wallLossDb: walls.reduce((sum, { lossDb }) => sum + lossDb, 0),
    floors,
    floorLossDb: floorHitsLossDb(floors, site.building),
  };
}
