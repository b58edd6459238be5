import type { VenueReceiver } from "../venue-system.js";
import type { ValueOf } from "./field.js";
import type { Entry } from "./field-list.js";
import type { FileSpot } from "./file-spot.js";
import { aboveCeiling } from "./read-rooms.js";
import { systemFor } from "./read-systems.js";
import type { FiledSystem } from "./read-systems.js";
import type { FiledLuminaire } from "./read-luminaires-of-venue.js";
import type { receiverField } from "./system-fields.js";
import { floorOfM, holds, isKnown, toldTwice } from "./venue-scope.js";
import type { VenueScope } from "./venue-scope.js";

type ReceiverEntry = Entry<ValueOf<typeof receiverField>>;

/** Receivers: one of its own for each luminaire that names none, then those of the file. */
export function readReceivers(
  given: readonly ReceiverEntry[],
  luminaires: readonly FiledLuminaire[],
  luminaireNames: readonly string[],
  systems: readonly FiledSystem[],
  scope: VenueScope,
): readonly VenueReceiver[] {
  toldTwice(given, "receiver");
  const servedBy = receiversOf(given, luminaires, luminaireNames);
  const own = luminaires.filter(({ luminaire }) => !servedBy.has(luminaire.name));
  const ownNames = new Set(own.map(({ luminaire }) => luminaire.name));
  for (const { value, spot } of given)
    if (ownNames.has(value.name))
      spot
        .key("name")
        .error(value.name, "a name that no luminaire with its own receiver has", "contradiction");
  return [
    ...own.flatMap((each) => ownReceiver(each, scope)),
    ...given.flatMap((entry) => {
      const served = luminaires.filter(({ luminaire }) => servedBy.get(luminaire.name) === entry.value.name);
      // What a faulty luminaire would have said is not missed.
      const isTold =
        luminaires.length === luminaireNames.length && (entry.value.luminaires ?? []).length === 0;
      if (served.length === 0 && !isTold && lackingKey(entry.value, undefined) !== null) return [];
      return sharedReceiver(entry, served, systems, scope) ?? [];
    }),
  ];
}

/** Which receiver serves a luminaire: its row and the receiver's list both say so; they may not differ. */
function receiversOf(
  given: readonly ReceiverEntry[],
  luminaires: readonly FiledLuminaire[],
  luminaireNames: readonly string[],
): ReadonlyMap<string, string> {
  const servedBy = new Map<string, string>();
  for (const { luminaire } of luminaires)
    if (luminaire.receiver !== null) servedBy.set(luminaire.name, luminaire.receiver);
  for (const { value, spot } of given)
    for (const [index, name] of (value.luminaires ?? []).entries()) {
      const at = spot.key("luminaires").item(index);
      if (!isKnown(name, luminaireNames, "luminaire", at)) continue;
      const other = servedBy.get(name) ?? value.name;
      if (other !== value.name) at.error(name, `a luminaire that ${other} does not serve`, "contradiction");
      servedBy.set(name, other);
    }
  return servedBy;
}

function ownReceiver({ luminaire, room, system }: FiledLuminaire, scope: VenueScope): VenueReceiver[] {
  if (system === null) return [];
  const heightM = luminaire.trimHeightM ?? luminaire.ceilingHeightM ?? room.heightM;
  return [
    {
      name: luminaire.name,
      system: system.name,
      room: room.name,
      at: { x: luminaire.x, y: luminaire.y, z: floorOfM(room, scope) + heightM },
      heightM,
      antenna: system.receiverAntenna,
      enclosure: null,
      luminaires: [luminaire.name],
    },
  ];
}

function sharedReceiver(
  { value, spot }: ReceiverEntry,
  served: readonly FiledLuminaire[],
  systems: readonly FiledSystem[],
  scope: VenueScope,
): VenueReceiver | undefined {
  const [first] = served;
  const { names, rooms } = scope;
  if (value.room !== null && !isKnown(value.room, names.rooms, "room", spot.key("room"))) return undefined;
  const roomName = value.room ?? first?.luminaire.room;
  const lacking = lackingKey(value, first);
  if (roomName === undefined || lacking !== null) {
    const expected = "this key, as the receiver serves no luminaire whose place it could take";
    return spot.key(lacking ?? "room").error(undefined, expected, "missing-cell");
  }
  const room = rooms.get(roomName);
  const system = systemFor(value.system, roomName, systems, names.systems, spot);
  if (room === undefined || system === undefined) return undefined;
  const at = value.at ?? { x: first!.luminaire.x, y: first!.luminaire.y };
  const heightM =
    value.height ?? first!.luminaire.trimHeightM ?? first!.luminaire.ceilingHeightM ?? room.heightM;
  if (heightM > room.heightM) aboveCeiling(heightM, room.heightM, spot.key("height"));
  if (value.at !== null && !holds(room, at)) spot.key("at").warn(`the receiver hangs outside ${room.name}`);
  toldOfOthers(value.name, system, served, spot);
  return {
    name: value.name,
    system: system.name,
    room: room.name,
    at: { x: at.x, y: at.y, z: floorOfM(room, scope) + heightM },
    heightM,
    antenna: value.antenna ?? system.receiverAntenna,
    enclosure: value.enclosure,
    luminaires: served.map(({ luminaire }) => luminaire.name),
  };
}

function lackingKey(value: ReceiverEntry["value"], first: FiledLuminaire | undefined): string | null {
  if (first !== undefined) return null;
  if (value.at === null) return "at";
  return value.height === null ? "height" : null;
}

/** A receiver hears one system: its luminaires can't belong to another. */
function toldOfOthers(
  name: string,
  system: FiledSystem,
  served: readonly FiledLuminaire[],
  spot: FileSpot,
): void {
  for (const { luminaire } of served)
    if (luminaire.system !== null && luminaire.system !== system.name)
      spot
        .key("luminaires")
        .error(luminaire.name, `luminaires of ${system.name}, the system of ${name}`, "contradiction");
}
