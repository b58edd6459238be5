import { sweepReceiverOf } from "../scan/index.js";
import type { VenueSystem } from "../venue/index.js";
import type { Context } from "./context.js";
import type { LoadedVenue } from "./load-venue.js";
import type { SurveyOptions } from "./survey-scans.js";
import { venueScene } from "./venue-scene.js";
import type { VenueScene } from "./venue-scene.js";

/**
 * Each system's name with the venue's scans as its radio hears them: a power sweep is summed for a radio's channels.
 * Systems whose radios listen alike share a scene.
 * @throws {CliError} as `venueScene`
 */
export async function venueScenes(
  context: Context<SurveyOptions>,
  loaded: LoadedVenue,
  systems: readonly VenueSystem[],
): Promise<ReadonlyMap<string, VenueScene>> {
  const scenes = new Map<string, VenueScene>();
  const bySystem = new Map<string, VenueScene>();
  for (const { name, profile } of systems) {
    const key = JSON.stringify(sweepReceiverOf(profile));
    const scene = scenes.get(key) ?? (await venueScene(context, loaded, profile));
    scenes.set(key, scene);
    bySystem.set(name, scene);
  }
  return bySystem;
}
