import { ArgumentError, requirePositive } from "../issues/index.js";
import type { Antenna } from "../propagation/index.js";
import { marginSearch } from "./margin-search.js";
import { placementSetting } from "./placement-setting.js";
import type { PlacementSetting } from "./placement-setting.js";
import { isInsideOutline, outlineBounds } from "./plan-polygon.js";
import type { ReceiverBudgetOptions } from "./receiver-budgets.js";
import type { PlanPoint } from "./venue-room.js";
import type { VenueSystem } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";
import { watchedSearch } from "./watched-search.js";

/** What a field of margins is drawn over. */
export interface MarginFieldOptions extends ReceiverBudgetOptions {
  /** The room whose floor is drawn. */
  readonly room: string;
  readonly stepM: number;
  /** Of the transmitter's antenna above the floor, m. */
  readonly heightM: number;
  /** Null: the profile's gain all round. */
  readonly antenna: Antenna | null;
  /** What `placementSetting` gave for the same site, system and options; worked out unless given. */
  readonly setting?: PlacementSetting | undefined;
}

/** The smallest working margin over a system's receivers, by where its transmitter stands in a room. */
export interface MarginField {
  /** Lower left corner of the field; cell (column, row) has its middle half a step further. */
  readonly from: PlanPoint;
  readonly stepM: number;
  readonly columnCount: number;
  readonly rowCount: number;
  /** `leastMarginDb[row · columnCount + column]`; null outside the room, −Infinity in a true null. */
  readonly leastMarginDb: readonly (number | null)[];
}

const MOST_CELLS = 250_000;

/**
 * The margin over a room's floor, for pictures: as `placeTransmitters` judges each place, walls looked up to
 * some thousandths of a decibel. Keep-outs are not looked at.
 * @throws {ArgumentError} for an unknown room, a step or height not > 0, more than 250,000 cells, and as
 *   `placementSetting`
 * @throws the signal's reason when it is aborted
 * @see {@link venueSite}
 */
export function marginField(site: VenueSite, system: VenueSystem, options: MarginFieldOptions): MarginField {
  const { stepM, heightM, antenna } = options;
  requirePositive("stepM", stepM);
  requirePositive("heightM", heightM);
  const { rooms, storeys } = site.venue;
  const room = rooms.find(({ name }) => name === options.room);
  if (room === undefined)
    throw new ArgumentError("room", rooms.map(({ name }) => name).join(", "), options.room);
  const floorM = storeys.find(({ name }) => name === room.storey)?.floorM ?? 0;
  const { least, most } = outlineBounds(room.outline);
  const columnCount = Math.max(1, Math.ceil((most.x - least.x) / stepM - 1e-9));
  const rowCount = Math.max(1, Math.ceil((most.y - least.y) / stepM - 1e-9));
  if (columnCount * rowCount > MOST_CELLS)
    throw new ArgumentError("stepM", `a step that gives at most ${MOST_CELLS} cells`, stepM);
  const { setting = placementSetting(site, system, options) } = options;
  const search = watchedSearch(marginSearch(site, setting), options);
  const leastMarginDb = Array.from({ length: columnCount * rowCount }, (_, index) => {
    const x = least.x + ((index % columnCount) + 0.5) * stepM;
    const y = least.y + (Math.floor(index / columnCount) + 0.5) * stepM;
    if (!isInsideOutline(room.outline, { x, y })) return null;
    const from = { at: { x, y, z: floorM + heightM }, antenna, inSight: null };
    return setting.receivers.reduce((db, { at }, receiver) => {
      const isHere = at.x === x && at.y === y && at.z === from.at.z;
      return isHere ? db : Math.min(db, search.marginDb(receiver, from));
    }, Infinity);
  });
  return { from: least, stepM, columnCount, rowCount, leastMarginDb };
}
