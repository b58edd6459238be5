import type { Issue } from "../issues/index.js";
import type { RadioProfile } from "../radio/index.js";
import { buildSurvey } from "../scan/index.js";
import type { BuildSurveyOptions, Crowd, ScanImport, Survey } from "../scan/index.js";
import { holdToRegion, venueSite } from "../venue/index.js";
import type { Place, RegionalVenue, Venue, VenueScan, VenueSite } from "../venue/index.js";
import type { Context } from "./context.js";
import type { LoadedVenue } from "./load-venue.js";
import { regionWord } from "./load-profile.js";
import { readScans } from "./read-scans.js";
import { readingOptions, surveyOptions } from "./survey-scans.js";
import type { SurveyOptions } from "./survey-scans.js";
import { roomFinder, roomlessCount } from "./room-of.js";
import { roomScenes } from "./room-scenes.js";
import type { RoomScene } from "./room-scenes.js";
import { handsetChannelsOf, marksOf, sourcePlacesOf } from "./source-marks.js";
import { buildingIdsOf } from "./wifi-options.js";

/** A venue with its scans, for one radio. */
export interface VenueScene {
  /** Its radios held to the region's rule. */
  readonly venue: Venue;
  /** Each system's radio against the rule; empty where no region was named. */
  readonly reviews: RegionalVenue["reviews"];
  /** Every scan, whatever its room. */
  readonly survey: Survey;
  /** The same as read, and how they were put together. */
  readonly imports: readonly ScanImport[];
  readonly shaped: BuildSurveyOptions;
  /** Ids of the building's own sources. */
  readonly buildingIds: ReadonlySet<string>;
  /** Where sources are whose place the venue file gives, by id. */
  readonly sourcePlaces: ReadonlyMap<string, Place>;
  /** Readings that belong to no room: they count for none. */
  readonly roomlessCount: number;
  readonly issues: readonly Issue[];
  readonly siteWith: (crowd: Crowd) => VenueSite;
  /** By room, those rooms that were scanned with this crowd or a smaller one. */
  readonly roomsWith: (crowd: Crowd) => ReadonlyMap<string, RoomScene>;
}

/**
 * Reads a venue's scans and sorts them by room: a scan file's own room, else the room that names a row's
 * place (or is called so). A crowd takes the scans made with it or fewer people, and the airtime that is
 * assumed for the building's sources in it; what a source reported stands.
 * @param profile the radio for whose channels power sweeps are summed
 * @throws {CliError} as `readScans`
 */
export async function venueScene(
  context: Context<SurveyOptions>,
  { venue: asFiled, scanPaths, issues, furtherAntennas }: LoadedVenue,
  profile: RadioProfile,
): Promise<VenueScene> {
  const { region } = context.options;
  const {
    venue,
    reviews,
    issues: ruleIssues,
  } = holdToRegion(asFiled, region === undefined ? undefined : regionWord(region), furtherAntennas);
  const imports = await importsOf(context, venue, scanPaths, profile);
  const shaped = {
    ...surveyOptions(context.options),
    ...marksOf(venue),
    equipmentListed: venue.allEquipmentListed,
  };
  const survey = buildSurvey(imports, shaped);
  const roomOf = roomFinder(venue, scanPaths);
  const rooms = new Map<Crowd, ReadonlyMap<string, RoomScene>>();
  const sites = new Map<Crowd, VenueSite>();
  return {
    venue,
    reviews,
    survey,
    imports,
    shaped,
    buildingIds: buildingIdsOf(survey),
    sourcePlaces: sourcePlacesOf(venue, survey),
    roomlessCount: roomlessCount(imports, roomOf),
    issues: [...issues, ...ruleIssues, ...survey.issues],
    siteWith: (crowd) =>
      remembered(sites, crowd, () => venueSite(venue, { crowd, handsetChannels: handsetChannelsOf(survey) })),
    roomsWith: (crowd) =>
      remembered(rooms, crowd, () => roomScenes({ venue, imports, shaped, roomOf, scanPaths }, crowd)),
  };
}

async function importsOf(
  context: Context<SurveyOptions>,
  { scans }: Venue,
  scanPaths: readonly string[],
  profile: RadioProfile,
): Promise<readonly ScanImport[]> {
  if (scans.length === 0) return [];
  const files = scans.map((scan, index) => ({ path: scanPaths[index]!, ...fillOf(scan) }));
  return await readScans({ ...context, files }, readingOptions(context.options, profile));
}

function remembered<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  if (!known.has(key)) known.set(key, make());
  return known.get(key)!;
}

function fillOf({ place, room, crowd, time }: VenueScan): object {
  const where = place ?? room;
  return {
    ...(where !== null && { place: where }),
    ...(crowd !== null && { crowd }),
    ...(time !== null && { time }),
  };
}
