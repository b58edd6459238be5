import { nameKey } from "../commissioning/index.js";
import type { WalkReading } from "../commissioning/index.js";
import type { Vector3 } from "../propagation/index.js";
import { nearestWord } from "../radio/index.js";
import type { Venue } from "../venue/index.js";
import { CliError, EXIT } from "./exit.js";
import { badOption } from "./words.js";

/** Where the ends of a walk's links stand. */
export interface WalkPlaces {
  /** By name of the system or of the transmitter's place, lower case. */
  readonly transmitters: ReadonlyMap<string, Vector3>;
  /** By name of the receiver or of a luminaire that it serves, lower case. */
  readonly receivers: ReadonlyMap<string, Vector3>;
}

const NOWHERE: WalkPlaces = { transmitters: new Map(), receivers: new Map() };

/** The places that a venue knows; none without one. */
export function walkPlaces(venue: Venue | null): WalkPlaces {
  if (venue === null) return NOWHERE;
  const transmitters = new Map<string, Vector3>();
  for (const { name, transmitter } of venue.systems)
    if (transmitter !== null)
      for (const each of [transmitter.name, name]) transmitters.set(nameKey(each), transmitter.at);
  const receivers = new Map<string, Vector3>();
  for (const { name, at, luminaires } of venue.receivers)
    for (const each of [...luminaires, name]) receivers.set(nameKey(each), at);
  return { transmitters, receivers };
}

/** What the options say of the transmitter. */
export interface WalkTransmitter {
  /** Null: not said. */
  readonly name: string | null;
  readonly at: Vector3 | null;
}

/** Readings of one transmitter, with the places that their names stand for. */
export interface PlacedWalk {
  readonly readings: readonly WalkReading[];
  /** Those of other transmitters. */
  readonly others: readonly WalkReading[];
  readonly transmitters: ReadonlyMap<string, Vector3>;
}

/**
 * Readings with a position where only a receiver's name was given; with a transmitter named, those that name
 * another are left out, and those that name none are its own.
 * @throws {CliError} exit 64 where nothing knows the transmitter, or a position was given for one of several
 */
export function placedWalk(
  readings: readonly WalkReading[],
  { name, at }: WalkTransmitter,
  places: WalkPlaces,
): PlacedWalk {
  const named = [...new Set(readings.flatMap(({ transmitter }) => transmitter ?? []).map(nameKey))];
  if (name !== null && !named.includes(nameKey(name)) && !places.transmitters.has(nameKey(name))) {
    const known = [...new Set([...named, ...places.transmitters.keys()])];
    const near = nearestWord(nameKey(name), known) ?? known[0] ?? "hall";
    throw badOption("--transmitter", `one that readings or venue name: ${known.join(", ")}`, name, near);
  }
  if (at !== null && name === null && named.length > 1)
    throw new CliError(
      EXIT.usage,
      `--transmitter-at: expected --transmitter beside it: the readings name ${named.length} transmitters`,
      `--transmitter ${named[0]!}`,
    );
  const isOwn = ({ transmitter }: WalkReading): boolean =>
    name === null || transmitter === null || sameEnd(transmitter, name, places);
  const own = at === null ? places.transmitters : new Map([["", at]]);
  return {
    readings: readings.filter(isOwn).map((reading) => ({
      ...reading,
      transmitter: at === null ? transmitterOf(reading, name, places) : "",
      at: reading.at ?? places.receivers.get(nameKey(reading.receiver ?? "")) ?? null,
    })),
    others: readings.filter((reading) => !isOwn(reading)),
    transmitters: own,
  };
}

/** The only place of a venue, under two names, is meant where a reading names none. */
function transmitterOf(
  reading: WalkReading,
  name: string | null,
  { transmitters }: WalkPlaces,
): string | null {
  const told = reading.transmitter ?? name;
  if (told !== null) return nameKey(told);
  return new Set(transmitters.values()).size === 1 ? [...transmitters.keys()][0]! : null;
}

/** A system and the place where its transmitter stands are one end. */
function sameEnd(one: string, other: string, { transmitters }: WalkPlaces): boolean {
  const place = transmitters.get(nameKey(one));
  return (
    nameKey(one) === nameKey(other) || (place !== undefined && place === transmitters.get(nameKey(other)))
  );
}
