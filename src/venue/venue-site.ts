import { indoorModelOf } from "../propagation/index.js";
import type { Building, PathModel } from "../propagation/index.js";
import { audiencesOf } from "./audience.js";
import type { Audience, VenueCrowd } from "./audience.js";
import { buildLosses } from "./build-losses.js";
import type { BuildLosses } from "./build-losses.js";
import { lossTables } from "./loss-tables.js";
import type { LossTables } from "./loss-tables.js";
import type { Venue } from "./venue.js";
import { wallTable } from "./wall-table.js";
import type { WallTable } from "./wall-table.js";

/** How a venue is looked at. */
export interface VenueSiteOptions {
  /** Who is in; `full` unless given. */
  readonly crowd?: VenueCrowd | undefined;
  /** For floors without a figure; the venue's own kind unless given. */
  readonly building?: Building | undefined;
  /** For rooms that name none; ITU-R P.1238 for the kind of building unless given. */
  readonly pathModel?: PathModel | undefined;
  /** Wi-Fi channels that people's handsets use; those of the strong sources scanned unless given. */
  readonly handsetChannels?: readonly number[] | undefined;
}

/** A venue made ready for many paths: walls laid out, losses remembered. */
export interface VenueSite {
  readonly venue: Venue;
  readonly crowd: VenueCrowd;
  readonly building: Building;
  readonly pathModel: PathModel;
  /** Null: to be told by the sources scanned. */
  readonly handsetChannels: readonly number[] | null;
  readonly walls: WallTable;
  readonly lossOf: BuildLosses;
  /** The same, looked up: worked out when first asked for. */
  readonly tables: () => LossTables;
  readonly audiences: readonly Audience[];
}

/**
 * Makes a venue ready for paths through it, with one crowd in.
 * @throws {ArgumentError} as `wallTable`
 */
export function venueSite(venue: Venue, options: VenueSiteOptions = {}): VenueSite {
  const { crowd = "full", building = venue.building } = options;
  const { pathModel = indoorModelOf(building, 0) } = options;
  let tables: LossTables | undefined;
  const walls = wallTable(venue.walls, venue.storeys);
  const lossOf = buildLosses(walls.builds);
  return {
    venue,
    crowd,
    building,
    pathModel,
    handsetChannels: options.handsetChannels ?? null,
    walls,
    lossOf,
    tables: () => (tables ??= lossTables(walls.builds.length, lossOf)),
    audiences: audiencesOf(venue.rooms, venue.storeys, crowd),
  };
}

/** @returns the model of the room in which a path ends, else the site's own */
export function pathModelIn(site: VenueSite, room: string | null): PathModel {
  return site.venue.rooms.find(({ name }) => name === room)?.pathModel ?? site.pathModel;
}
