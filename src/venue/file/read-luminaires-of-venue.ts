import type { Luminaire } from "../venue-luminaire.js";
import type { Room } from "../venue-room.js";
import { inUnit, lengthWords } from "./field-length.js";
import type { Entry } from "./field-list.js";
import type { FileSpot } from "./file-spot.js";
import { aboveCeiling } from "./read-rooms.js";
import { systemFor } from "./read-systems.js";
import type { FiledSystem } from "./read-systems.js";
import { holds, isKnown, toldTwice } from "./venue-scope.js";
import type { VenueScope } from "./venue-scope.js";

/** DMX512 slots of a universe. */
const UNIVERSE_SLOT_COUNT = 512;

/** A luminaire that fits into its room and its system, with both. */
export interface FiledLuminaire {
  readonly luminaire: Luminaire;
  readonly room: Room;
  /** Null where none serves it, or it could not be read. */
  readonly system: FiledSystem | null;
  readonly spot: FileSpot;
}

/** Holds luminaires to the rooms, systems and receivers of the file; those that fit nowhere are left out. */
export function fittedLuminaires(
  given: readonly Entry<Luminaire>[],
  systems: readonly FiledSystem[],
  scope: VenueScope,
): readonly FiledLuminaire[] {
  const { names, rooms } = scope;
  toldTwice(given, "luminaire");
  toldAtOnePoint(given);
  return given.flatMap(({ value, spot }) => {
    heldToUniverse(value, spot);
    if (value.receiver !== null) isKnown(value.receiver, names.receivers, "receiver", spot.key("receiver"));
    if (!isKnown(value.room, names.rooms, "room", spot.key("room"))) return [];
    const room = rooms.get(value.room);
    if (room === undefined) return [];
    const luminaire = { ...value, trimHeightM: value.trimHeightM ?? room.trimHeightM };
    heldToRoom(luminaire, room, spot);
    const system = systemFor(value.system, value.room, systems, names.systems, spot) ?? null;
    if (system !== null) heldToSystem(value, system, spot);
    return { luminaire: { ...luminaire, system: system?.name ?? null }, room, system, spot };
  });
}

/** A patch made by hand may be wrong: that stops no other plan, and `patch` names it among the clashes. */
function heldToUniverse({ name, address, footprintSlotCount }: Luminaire, spot: FileSpot): void {
  if (address === null || footprintSlotCount === null) return;
  const most = UNIVERSE_SLOT_COUNT + 1 - footprintSlotCount;
  if (address > most)
    spot
      .key("address")
      .warn(
        `${name} runs past slot 512 from DMX address ${address}: at most ${most}, as it takes ${footprintSlotCount} slots`,
      );
}

function heldToRoom({ ceilingHeightM, trimHeightM, x, y }: Luminaire, room: Room, spot: FileSpot): void {
  if (ceilingHeightM !== null && ceilingHeightM > room.heightM + 1e-9)
    aboveCeiling(ceilingHeightM, room.heightM, spot.key("ceiling_height"), `the height of ${room.name}`);
  const ceilingM = ceilingHeightM ?? room.heightM;
  if (trimHeightM !== null && trimHeightM > ceilingM + 1e-9)
    aboveCeiling(trimHeightM, ceilingM, spot.key("trim_height"), "its ceiling height");
  if (!holds(room, { x, y }))
    spot
      .key("x")
      .warn(`the luminaire hangs at ${inUnit(x, spot)}, ${lengthWords(y, spot)}, outside ${room.name}`);
}

function heldToSystem({ name, universe }: Luminaire, system: FiledSystem, spot: FileSpot): void {
  if (universe === null) return;
  const last = system.universe + system.profile.universesPerTransmitterCount.value - 1;
  if (universe >= system.universe && universe <= last) return;
  const carried = last === system.universe ? `${last}` : `${system.universe} to ${last}`;
  spot
    .key("universe")
    .warn(`${name} is in universe ${universe}, which ${system.name} does not carry: it carries ${carried}`);
}

/** Two luminaires at one point of the plan: a row copied and not changed. */
function toldAtOnePoint(given: readonly Entry<Luminaire>[]): void {
  const at = new Map<string, string>();
  for (const { value, spot } of given) {
    const point = `${value.room}\n${Math.round(value.x * 100)}\n${Math.round(value.y * 100)}`;
    const other = at.get(point);
    if (other !== undefined)
      spot.key("x").warn(`${value.name} hangs at the same point of the plan as ${other}`);
    else at.set(point, value.name);
  }
}
