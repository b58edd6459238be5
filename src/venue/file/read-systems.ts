import type { Issue } from "../../issues/index.js";
import type { Antenna } from "../../propagation/index.js";
import type { RadioProfile } from "../../radio/index.js";
import type { Room } from "../venue-room.js";
import type { TransmitterPlace, VenueSystem } from "../venue-system.js";
import type { ValueOf } from "./field.js";
import type { Entry } from "./field-list.js";
import type { FileSpot } from "./file-spot.js";
import { nearHint, someOf } from "./near-hint.js";
import { aboveCeiling } from "./read-rooms.js";
import { readSystemProfile } from "./read-system-profile.js";
import type { ProfileOf } from "./read-system-profile.js";
import type { transmitterField } from "./room-fields.js";
import type { systemField } from "./system-fields.js";
import { floorOfM, holds, isKnown, toldTwice } from "./venue-scope.js";
import type { VenueScope } from "./venue-scope.js";

type SystemPart = ValueOf<typeof systemField>;

/** A system and what the file says of all its receivers. */
export interface FiledSystem extends VenueSystem {
  readonly receiverAntenna: Antenna | null;
  readonly spot: FileSpot;
}

/** Systems in the file's order; one whose radio or rooms are wrong is left out, and told of. */
export function readSystems(
  given: readonly Entry<SystemPart>[],
  scope: VenueScope,
  profileOf: ProfileOf,
  told: Issue[],
): readonly FiledSystem[] {
  toldTwice(given, "system");
  return given.flatMap(({ value, spot }) => {
    const { names } = scope;
    const rooms = value.rooms.filter((room, index) =>
      isKnown(room, names.rooms, "room", spot.key("rooms").item(index)),
    );
    const profile = readSystemProfile(value, spot, profileOf, told);
    if (profile !== undefined) heldToProfile(value, profile, spot);
    const candidates = readCandidates(value, rooms, scope);
    const transmitter =
      value.transmitter === null
        ? null
        : placeOf(value.transmitter, `${value.name} transmitter`, rooms, scope, spot.key("transmitter"));
    if (profile === undefined) return [];
    return {
      name: value.name,
      rooms: [...new Set(rooms)],
      profile,
      transmitter: transmitter ?? null,
      candidates,
      channel: value.channel,
      allowedChannels: value.allowed_channels,
      universe: value.universe ?? 1,
      receiverAntenna: value.receiver_antenna,
      spot,
    };
  });
}

/** A system as the venue has it, without what only the reading needs. */
export function plainSystem(system: FiledSystem): VenueSystem {
  const { name, rooms, profile, transmitter, candidates, channel, allowedChannels, universe } = system;
  return { name, rooms, profile, transmitter, candidates, channel, allowedChannels, universe };
}

function readCandidates(
  { candidates }: SystemPart,
  rooms: readonly string[],
  scope: VenueScope,
): TransmitterPlace[] {
  const given = (candidates ?? []).map(({ value, spot }, index) => ({
    value: { ...value, name: value.name ?? `candidate ${index + 1}` },
    spot,
  }));
  toldTwice(given, "candidate");
  return given.flatMap(({ value, spot }) => placeOf(value, value.name, rooms, scope, spot) ?? []);
}

function heldToProfile(value: SystemPart, profile: RadioProfile, spot: FileSpot): void {
  const { channel, allowed_channels: allowed } = value;
  const numbers = profile.channels.map((each) => each.channel);
  const expected = `a radio channel of ${profile.name}: ${someOf(numbers.map(String))}`;
  const isStrange = (number: number): boolean => !numbers.includes(number);
  if (channel !== null && profile.hopping !== null)
    spot.key("channel").error(channel, `no channel: ${profile.name} hops`, "contradiction");
  else if (channel !== null && isStrange(channel))
    spot.key("channel").error(channel, expected, "contradiction");
  for (const [index, number] of (allowed ?? []).entries())
    if (isStrange(number)) spot.key("allowed_channels").item(index).error(number, expected, "contradiction");
  if (channel !== null && allowed !== null && !allowed.includes(channel))
    spot.key("channel").error(channel, "a channel among allowed_channels", "contradiction");
}

/** A transmitter's place, its room found from the point where none is named. */
function placeOf(
  part: ValueOf<typeof transmitterField>,
  name: string,
  systemRooms: readonly string[],
  scope: VenueScope,
  spot: FileSpot,
): TransmitterPlace | undefined {
  const room = roomOf(part, systemRooms, scope, spot);
  if (room === undefined) return undefined;
  if (part.height > room.heightM) aboveCeiling(part.height, room.heightM, spot.key("height"));
  return {
    name: part.name ?? name,
    at: { ...part.at, z: floorOfM(room, scope) + part.height },
    heightM: part.height,
    room: room.name,
    antenna: part.antenna,
    inRack: part.in_rack,
    inSight: part.in_sight,
  };
}

function roomOf(
  { room, at }: ValueOf<typeof transmitterField>,
  systemRooms: readonly string[],
  { rooms, names }: VenueScope,
  spot: FileSpot,
): Room | undefined {
  if (room !== null) {
    if (!isKnown(room, names.rooms, "room", spot.key("room"))) return undefined;
    const named = rooms.get(room);
    if (named !== undefined && !holds(named, at))
      spot.key("at").warn(`the transmitter stands outside ${room}`);
    return named;
  }
  const around = [...rooms.values()].filter((each) => holds(each, at));
  const own = around.filter(({ name }) => systemRooms.includes(name));
  if (own.length > 0) return own[0];
  if (around.length > 1) {
    const held = around.map(({ name }) => name);
    return spot
      .key("room")
      .error(undefined, `its room, as several hold the point: ${someOf(held)}`, "missing-cell");
  }
  const first = rooms.get(systemRooms[0] ?? "");
  if (around.length === 0 && first !== undefined)
    spot.key("at").warn(`no room holds this transmitter; its height counts from the floor of ${first.name}`);
  return around[0] ?? first;
}

/** The system that serves a luminaire or a receiver: the one named, else the only one of its room. */
export function systemFor(
  named: string | null,
  room: string,
  systems: readonly FiledSystem[],
  names: readonly string[],
  spot: FileSpot,
): FiledSystem | undefined {
  if (named !== null) {
    if (!isKnown(named, names, "system", spot.key("system"))) return undefined;
    return systems.find(({ name }) => name === named);
  }
  const serving = systems.filter(({ rooms }) => rooms.includes(room));
  if (serving.length === 1) return serving[0];
  // A system that could not be read has been told of: it may be the one.
  if (serving.length === 0 && systems.length < names.length) return undefined;
  const served = serving.map(({ name }) => name);
  const expected =
    serving.length === 0
      ? `a system, as none serves ${room}: add the room to a system's rooms${nearHint(
          room,
          systems.flatMap(({ rooms }) => rooms),
        )}`
      : `its system, as several serve ${room}: ${someOf(served)}`;
  return spot.key("system").error(undefined, expected, "missing-cell");
}
