import type { Issue } from "../../issues/index.js";
import type { PathModel, PathModelImport } from "../../propagation/index.js";
import type { Room, Storey } from "../venue-room.js";
import { SAME_PLACE_M } from "../outline-fault.js";
import type { ValueOf } from "./field.js";
import { inUnit, lengthWords } from "./field-length.js";
import type { Entry } from "./field-list.js";
import type { FileSpot } from "./file-spot.js";
import type { roomField, storeyField } from "./room-fields.js";
import { storeyOf, toldTwice } from "./venue-scope.js";
import type { VenueScope } from "./venue-scope.js";

/** The only storey of a file that names none. */
const GROUND: Storey = { name: "ground", floorM: 0, floorLossDb: null };

/** Seated people's handsets, assumed: common practice, no source. */
const HANDSET_HEIGHT_M = 1.2;

/** Storeys, lowest first. */
export function readStoreys(
  given: readonly Entry<ValueOf<typeof storeyField>>[] | null | undefined,
): readonly Storey[] {
  if (given === null || given === undefined || given.length === 0) return [GROUND];
  toldTwice(given, "storey");
  const sorted = [...given].sort((a, b) => a.value.floor - b.value.floor);
  const lowest = sorted[0]!;
  if (lowest.value.floor !== 0)
    lowest.spot
      .key("floor")
      .error(
        inUnit(lowest.value.floor, lowest.spot),
        "0 for the lowest storey: heights count from its floor",
      );
  for (const [index, { value, spot }] of sorted.entries())
    if (index > 0 && value.floor - sorted[index - 1]!.value.floor <= SAME_PLACE_M)
      spot
        .key("floor")
        .error(inUnit(value.floor, spot), "a floor height of its own for each storey", "contradiction");
  return sorted.map(({ value }) => ({
    name: value.name,
    floorM: value.floor,
    floorLossDb: value.floor_loss_db,
  }));
}

/** A path model's file, read, by the name that the venue file has for it; undefined: no such file. */
export type PathModelOf = (file: string) => PathModelImport | undefined;

/** Where rooms have their fitted models from. */
export interface RoomModels {
  readonly pathModelOf: PathModelOf;
  /** Takes what is wrong with a model's file. */
  readonly told: Issue[];
}

/** Rooms in the file's order; those on a storey that isn't there are left out, and told of. */
export function readRooms(
  given: readonly Entry<ValueOf<typeof roomField>>[],
  scope: Omit<VenueScope, "rooms">,
  models: RoomModels,
): readonly Room[] {
  toldTwice(given, "room");
  placedTwice(given);
  return given.flatMap(({ value, spot }) => {
    const storey = storeyOf(value.storey, spot, { ...scope, rooms: new Map() });
    if (storey === undefined) return [];
    const handsetHeightM = value.handset_height ?? HANDSET_HEIGHT_M;
    if (handsetHeightM > value.height) aboveCeiling(handsetHeightM, value.height, spot.key("handset_height"));
    if (value.trim_height !== null && value.trim_height > value.height)
      aboveCeiling(value.trim_height, value.height, spot.key("trim_height"));
    return {
      name: value.name,
      storey: storey.name,
      outline: value.outline,
      heightM: value.height,
      pathModel: roomModel(value.path_model, spot.key("path_model"), models),
      places: [...new Set([value.name, ...(value.places ?? [])])],
      people: value.people ?? { empty: 0, part: 0, full: 0 },
      seating: value.seating,
      handsetHeightM,
      trimHeightM: value.trim_height,
      laserLineM: value.laser_line,
    };
  });
}

/** The room's own model, or that of the file that it names. */
function roomModel(
  given: PathModel | string | null,
  spot: FileSpot,
  { pathModelOf, told }: RoomModels,
): PathModel | null {
  if (typeof given !== "string") return given;
  const read = pathModelOf(given);
  if (read === undefined) {
    spot.error(given, "a file with a fitted path model that is there", "unreadable");
    return null;
  }
  told.push(...read.issues);
  return read.model;
}

/** Tells that something hangs above the ceiling. */
export function aboveCeiling(
  heightM: number,
  ceilingM: number,
  spot: FileSpot,
  ceiling = "the room's ceiling",
): void {
  spot.error(inUnit(heightM, spot), `at most ${ceiling}, ${lengthWords(ceilingM, spot)}`, "contradiction");
}

/** A scan place lies in one room. */
function placedTwice(given: readonly Entry<ValueOf<typeof roomField>>[]): void {
  const roomOf = new Map(given.map(({ value }) => [value.name, value.name]));
  for (const { value, spot } of given)
    for (const [index, place] of (value.places ?? []).entries()) {
      const other = roomOf.get(place) ?? value.name;
      if (other !== value.name)
        spot
          .key("places")
          .item(index)
          .error(place, `each place in one room; ${other} has it too`, "contradiction");
      roomOf.set(place, other);
    }
}
