import { ArgumentError } from "../issues/index.js";
import type { PlacedPair } from "./place-transmitters.js";
import type { Venue } from "./venue.js";
import type { VenueSystem } from "./venue-system.js";

/** A venue in which one system has become two. */
export interface SplitVenue {
  readonly venue: Venue;
  /** Names of the two: the system's own, and the same with a 2. */
  readonly systems: readonly [string, string];
}

/**
 * A system shared out to two transmitters: the second is a second system on its own channel, with its receivers,
 * fed the same universe through an isolated splitter. A channel that was settled stays the first one's.
 * @param name of the system to split
 * @throws {ArgumentError} for a system that the venue hasn't
 * @see {@link venueSite}
 */
export function splitSystem(venue: Venue, name: string, { places, receivers }: PlacedPair): SplitVenue {
  const index = venue.systems.findIndex((system) => system.name === name);
  if (index < 0) throw new ArgumentError("name", venue.systems.map((system) => system.name).join(", "), name);
  const whole = venue.systems[index]!;
  const second = freeName(venue.systems, name);
  const halves: VenueSystem[] = [
    { ...whole, transmitter: places[0], candidates: [] },
    { ...whole, name: second, transmitter: places[1], candidates: [], channel: null },
  ];
  const theirs = new Set(receivers[1]);
  return {
    venue: {
      ...venue,
      systems: [...venue.systems.slice(0, index), ...halves, ...venue.systems.slice(index + 1)],
      receivers: venue.receivers.map((receiver) =>
        receiver.system === name && theirs.has(receiver.name) ? { ...receiver, system: second } : receiver,
      ),
    },
    systems: [name, second],
  };
}

function freeName(systems: readonly VenueSystem[], name: string): string {
  let number = 2;
  while (systems.some((system) => system.name === `${name} ${number}`)) number++;
  return `${name} ${number}`;
}
