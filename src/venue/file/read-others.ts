import type { CrowdFigures } from "../venue-crowd.js";
import type { VenueEmitter } from "../venue-emitter.js";
import type { PlanPoint, Place } from "../venue-room.js";
import type { SourceMark, VenueScan } from "../venue-scan.js";
import type { ValueOf } from "./field.js";
import type { Entry } from "./field-list.js";
import type { FileSpot } from "./file-spot.js";
import { nearHint, someOf } from "./near-hint.js";
import type { crowdField, emitterField, scanField, sourceField } from "./system-fields.js";
import { holds, isKnown, storeyOf, toldTwice } from "./venue-scope.js";
import type { VenueScope } from "./venue-scope.js";

/** Other emitters in the file's order. */
export function readEmitters(
  given: readonly Entry<ValueOf<typeof emitterField>>[],
  scope: VenueScope,
): readonly VenueEmitter[] {
  toldTwice(given, "emitter");
  return given.flatMap(({ value, spot }) => {
    if (value.type === "other")
      for (const key of ["eirp_dbm", "airtime_ratio", "centre_mhz", "bandwidth_mhz"] as const)
        if (value[key] === null)
          spot.key(key).error(undefined, "this key, which type other needs", "missing-cell");
    const at = placedAt(value.at, value.height, value.storey, spot, scope);
    if (at === undefined) return [];
    return {
      name: value.name,
      type: value.type,
      at,
      eirpDbm: value.eirp_dbm,
      airtimeRatio: value.airtime_ratio,
      centreMhz: value.centre_mhz,
      bandwidthMhz: value.bandwidth_mhz,
    };
  });
}

/** A place by its height above a floor: of the storey named, else of the room that holds the point. */
function placedAt(
  point: PlanPoint,
  heightM: number,
  storey: string | null,
  spot: FileSpot,
  scope: VenueScope,
): Place | undefined {
  const room = [...scope.rooms.values()].find((each) => holds(each, point));
  const isSure = storey !== null || room === undefined;
  const floor = storeyOf(isSure ? storey : room.storey, spot, scope);
  return floor === undefined ? undefined : { ...point, z: floor.floorM + heightM };
}

/** Scan files in the file's order. */
export function readVenueScans(
  given: readonly Entry<ValueOf<typeof scanField>>[],
  scope: VenueScope,
): readonly VenueScan[] {
  const places = [...scope.rooms.values()].flatMap((room) => room.places);
  const allRooms = scope.rooms.size >= scope.names.rooms.length;
  for (const { value, spot } of given) {
    const { room, place, time } = value;
    if (room !== null) isKnown(room, scope.names.rooms, "room", spot.key("room"));
    if (place !== null && room === null && allRooms && !places.includes(place))
      spot
        .key("place")
        .warn(
          `no room has the place ${place}: name it in a room's places, of which there are ${someOf(places)}${nearHint(place, places)}`,
        );
    if (time !== null && !(ISO_TIME.test(time) && Number.isFinite(Date.parse(time))))
      spot.key("time").error(time, "a time in ISO 8601, as 2026-03-07T20:00:00Z");
  }
  return given.map(({ value }) => ({
    file: value.file,
    room: value.room,
    place: value.place,
    crowd: value.crowd,
    time: value.time,
    heightM: value.height,
  }));
}

const ISO_TIME = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:?\d{2})$/;

/** An access point on a wall or ceiling, assumed where the file names no height. */
const SOURCE_HEIGHT_M = 2.5;

/** Marks of sources in the file's order. */
export function readSources(
  given: readonly Entry<ValueOf<typeof sourceField>>[],
  scope: VenueScope,
): readonly SourceMark[] {
  const seen = new Set<string>();
  return given.flatMap(({ value, spot }) => {
    const { source, owner, at, height, storey } = value;
    if (seen.has(source)) spot.key("source").error(source, "each source once", "contradiction");
    seen.add(source);
    if (at === null) return { source, owner, at: null };
    const placed = placedAt(at, height ?? SOURCE_HEIGHT_M, storey, spot, scope);
    return placed === undefined ? [] : { source, owner, at: placed };
  });
}

/** What people bring, the assumed figures where the file has none. */
export function readCrowd(
  given: ValueOf<typeof crowdField> | null | undefined,
  assumed: CrowdFigures,
): CrowdFigures {
  return {
    carriedRatio: given?.carried_ratio ?? assumed.carriedRatio,
    onAirRatio: given?.on_air_ratio ?? assumed.onAirRatio,
    handsetEirpDbm: given?.handset_eirp_dbm ?? assumed.handsetEirpDbm,
    bodyLossDb: given?.body_loss_db ?? assumed.bodyLossDb,
    scanHeightGainDb: given?.scan_height_gain_db ?? assumed.scanHeightGainDb,
  };
}
