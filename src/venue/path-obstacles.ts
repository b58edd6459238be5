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
 * @returns what stands in the path
 * @throws {ArgumentError} as `wallLoss`
 * @validity multi-wall model: no echoes, nothing round edges
 * @example const { venue } = readVenue({ name: "Mill", units: "m",
 *   rooms: [{ name: "mill", outline: [[0, 0], [12, 0], [12, 8], [0, 8]], height: 6, people: 80 }],
 *   walls: [{ name: "screen", from: [6, 0], to: [6, 8], loss_db: 5 }],
 *   systems: [{ name: "mill", rooms: ["mill"], profile: "raster-13" }] }, { source: "venue.yaml" });
 * const site = venueSite(venue);
 * pathObstacles(site, { x: 1, y: 4, z: 3 }, { x: 11, y: 4, z: 3 }).wallLossDb; // => 5
 * floorHits(venue, { x: 1, y: 4, z: 3 }, { x: 11, y: 4, z: 3 }); // => []
 * audiencesOf(venue.rooms, venue.storeys, "full")[0].peopleCount; // => 80
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
