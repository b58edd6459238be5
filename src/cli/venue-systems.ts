import { printable } from "../issues/index.js";
import { nearestWord } from "../radio/index.js";
import type { Venue, VenueSystem } from "../venue/index.js";
import type { Context } from "./context.js";
import { CliError, EXIT } from "./exit.js";
import type { LoadedVenue } from "./load-venue.js";
import type { SurveyOptions } from "./survey-scans.js";
import type { VenueScene } from "./venue-scene.js";
import { venueScenes } from "./venue-scenes.js";

/** The systems of a venue that take part, with the scene for the radio of each. */
export type SystemScene = readonly [system: VenueSystem, scene: VenueScene];

/**
 * Reads the venue's scans once for each kind of radio among the systems: power sweeps are summed for its channels.
 * @param asFiled systems of that venue, at least one
 * @returns the same systems, held to the region's rule
 * @throws {CliError} as `venueScene`
 */
export async function systemScenes(
  context: Context<SurveyOptions>,
  loaded: LoadedVenue,
  asFiled: readonly VenueSystem[],
): Promise<SystemScene[]> {
  const scenes = await venueScenes(context, loaded, asFiled);
  return asFiled.map(({ name }) => {
    const scene = scenes.get(name)!;
    return [scene.venue.systems.find((system) => system.name === name)!, scene];
  });
}

/**
 * The systems that `--system` names: all where it isn't given.
 * @throws {CliError} exit 64 for another name, with those that there are; exit 65 for a venue without systems
 */
export function systemsAsked(venue: Venue, name: string | undefined): readonly VenueSystem[] {
  if (venue.systems.length === 0)
    throw new CliError(
      EXIT.badData,
      "the venue file names no system",
      "add one under systems: stillband init shows the form",
    );
  if (name === undefined) return venue.systems;
  return [named("--system", "a system of the venue file", venue.systems, name)];
}

/** So many names are told. */
const MOST_NAMED = 30;

/**
 * The one of a venue's things that an option names.
 * @throws {CliError} exit 64 for another name, with the nearest and those that there are
 */
export function named<Thing extends { readonly name: string }>(
  flag: string,
  expected: string,
  things: readonly Thing[],
  name: string,
): Thing {
  const found = things.find((thing) => thing.name === name);
  if (found !== undefined) return found;
  const names = things.map((thing) => thing.name);
  const more = names.length > MOST_NAMED ? `, and ${names.length - MOST_NAMED} more` : "";
  const known = names.slice(0, MOST_NAMED).map((one) => printable(one, 40));
  const nearest = nearestWord(name, names) ?? names[0];
  throw new CliError(
    EXIT.usage,
    `${flag}: expected ${expected} (${known.join(", ")}${more}), got "${printable(name, 60)}"`,
    nearest === undefined ? undefined : `${flag} "${printable(nearest, 60)}"`,
  );
}
