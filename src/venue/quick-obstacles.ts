import { floorHits, floorHitsLossDb } from "./floor-hits.js";
import type { LossTables } from "./loss-tables.js";
import type { Place } from "./venue-room.js";
import type { VenueSite } from "./venue-site.js";
import { WHOLE_WALL, wallHits } from "./wall-hits.js";
import type { WallHit } from "./wall-hits.js";
import { countedHits } from "./wall-joints.js";
import type { WallTable } from "./wall-table.js";

/**
 * The loss of the walls and floors between two places as in `pathObstacles`, walls looked up by incidence.
 * @returns dB, to the tables' error for each wall
 */
export function quickObstaclesDb(site: VenueSite, tables: LossTables, from: Place, to: Place): number {
  const { venue, building, walls } = site;
  const hits = wallHits(walls, from, to);
  const wallsDb = hits.length === 0 ? 0 : countedLossDb(walls, hits, tables);
  if (venue.storeys.length === 1) return wallsDb;
  return wallsDb + floorHitsLossDb(floorHits(venue, from, to), building);
}

function countedLossDb(walls: WallTable, hits: readonly WallHit[], tables: LossTables): number {
  let sumDb = 0;
  let atEdge = false;
  for (const hit of hits) {
    sumDb += tables.lossDb(hit.buildIndex, hit.cosineRatio);
    atEdge ||= hit.quartersIndex !== WHOLE_WALL;
  }
  if (!atEdge) return sumDb;
  const losses = hits.map(({ buildIndex, cosineRatio }) => tables.lossDb(buildIndex, cosineRatio));
  return countedHits(walls, hits, losses).reduce((sum, index) => sum + losses[index]!, 0);
}
