import { floorHits, floorHitsLossDb } from "./floor-hits.js";
import type { LossTables } from "./loss-tables.js";
import type { Place } from "./venue-room.js";
import type { VenueSite } from "./venue-site.js";
import { eachWallHit, WHOLE_WALL, wallHits } from "./wall-hits.js";
import type { WallHit } from "./wall-hits.js";
import { countedHits } from "./wall-joints.js";
import type { WallTable } from "./wall-table.js";

/**
 * The loss of the walls and floors between two places as in `pathObstacles`, walls looked up by incidence.
 * @returns dB, to the tables' error for each wall
 */
export function quickObstaclesDb(site: VenueSite, tables: LossTables, from: Place, to: Place): number {
  const { venue, building, walls } = site;
  let wallsDb = 0;
  let edgeCount = 0;
  eachWallHit(
    walls,
    from,
    to,
    (_wall, _opening, buildIndex, _alongPathM, _alongWallM, cosineRatio, quartersIndex) => {
      wallsDb += tables.lossDb(buildIndex, cosineRatio);
      if (quartersIndex !== WHOLE_WALL) edgeCount++;
    },
  );
  if (edgeCount > 0) wallsDb = countedLossDb(walls, wallHits(walls, from, to), tables);
  if (venue.storeys.length === 1) return wallsDb;
  return wallsDb + floorHitsLossDb(floorHits(venue, from, to), building);
}

function countedLossDb(walls: WallTable, hits: readonly WallHit[], tables: LossTables): number {
  const losses = hits.map(({ buildIndex, cosineRatio }) => tables.lossDb(buildIndex, cosineRatio));
  return countedHits(walls, hits, losses).reduce((sum, index) => sum + losses[index]!, 0);
}
