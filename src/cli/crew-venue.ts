import type { Venue } from "../venue/index.js";
import { CliError, EXIT } from "./exit.js";
import type { Io } from "./io.js";
import { loadVenue } from "./load-venue.js";
import type { LoadedVenue } from "./load-venue.js";
import { knownName } from "./patch-options.js";

/** The part of a venue that a sheet is asked for; all of it where neither is given. */
export interface PartWords {
  readonly room?: string;
  readonly system?: string;
}

/**
 * A venue whose luminaires a crew works on.
 * @param deed what is to be done with them
 * @throws {CliError} as `loadVenue`; exit 65 where it lists none
 */
export async function loadCrewVenue(path: string, io: Io, deed: "hang" | "patch"): Promise<LoadedVenue> {
  const loaded = await loadVenue(path, io);
  if (loaded.venue.luminaires.length > 0) return loaded;
  throw new CliError(
    EXIT.badData,
    `the venue file lists no luminaires: there is nothing to ${deed}`,
    "list them under luminaires, or in a table that it names; stillband init shows the form",
  );
}

/** @throws {CliError} exit 64 for a room or system that the venue hasn't, with those that it has */
export function partOf({ room, system }: PartWords, { rooms, systems }: Venue): PartWords {
  const names = (things: readonly { readonly name: string }[]): string[] => things.map(({ name }) => name);
  return {
    ...(room !== undefined && { room: knownName("--room", "room", room, names(rooms)) }),
    ...(system !== undefined && { system: knownName("--system", "system", system, names(systems)) }),
  };
}
