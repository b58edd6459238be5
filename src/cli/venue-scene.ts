import type { Issue } from "../issues/index.js";
import type { RadioProfile } from "../radio/index.js";
import { ASSUMED_AIRTIME, buildSurvey, crowdRank, CROWDS, toEmitters } from "../scan/index.js";
import type { BuildSurveyOptions, Crowd, ScanImport, Survey } from "../scan/index.js";
import { holdToRegion, venueSite } from "../venue/index.js";
import type { RegionalVenue, RoomSurvey, Venue, VenueScan, VenueSite } from "../venue/index.js";
import type { Context } from "./context.js";
import type { LoadedVenue } from "./load-venue.js";
import { regionWord } from "./load-profile.js";
import { readScans } from "./read-scans.js";
import { readingOptions, surveyOptions } from "./survey-scans.js";
import type { SurveyOptions } from "./survey-scans.js";

/** What the scans say of one room with one crowd in. */
export interface RoomScene extends RoomSurvey {
  /** The room's scans with this crowd or a smaller one. */
  readonly survey: Survey;
}

/** A venue with its scans, for one radio. */
export interface VenueScene {
  /** Its radios held to the region's rule. */
  readonly venue: Venue;
  /** Each system's radio against the rule; empty where no region was named. */
  readonly reviews: RegionalVenue["reviews"];
  /** Every scan, whatever its room. */
  readonly survey: Survey;
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
  { venue: asFiled, scanPaths, issues }: LoadedVenue,
  profile: RadioProfile,
): Promise<VenueScene> {
  const { region } = context.options;
  const {
    venue,
    reviews,
    issues: ruleIssues,
  } = holdToRegion(asFiled, region === undefined ? undefined : regionWord(region));
  const files = venue.scans.map((scan, index) => ({ path: scanPaths[index]!, ...fillOf(scan) }));
  const imports =
    files.length === 0
      ? []
      : await readScans({ ...context, files }, readingOptions(context.options, profile));
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
    roomlessCount: imports.reduce(
      (sum, scan) => sum + scan.readings.filter(({ place }) => roomOf(scan.source, place) === null).length,
      0,
    ),
    issues: [...issues, ...ruleIssues, ...survey.issues],
    siteWith: (crowd) => remembered(sites, crowd, () => venueSite(venue, { crowd })),
    roomsWith: (crowd) =>
      remembered(rooms, crowd, () => roomScenes({ venue, imports, shaped, roomOf, scanPaths }, crowd)),
  };
}

type RoomOf = (source: string, place: string) => string | null;

interface Sorting {
  readonly venue: Venue;
  readonly imports: readonly ScanImport[];
  readonly shaped: BuildSurveyOptions;
  readonly roomOf: RoomOf;
  readonly scanPaths: readonly string[];
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

function marksOf({ sources }: Venue): Pick<BuildSurveyOptions, "building" | "neighbour"> {
  const named = (owner: string): string[] =>
    sources.filter((mark) => mark.owner === owner).map(({ source }) => source);
  return { building: named("building"), neighbour: named("neighbour") };
}

function roomFinder({ scans, rooms }: Venue, scanPaths: readonly string[]): RoomOf {
  const byPath = new Map(scans.map(({ room }, index) => [scanPaths[index]!, room]));
  const byPlace = new Map(
    rooms.flatMap(({ name, places }) => [name, ...places].map((place) => [place, name])),
  );
  return (source, place) => byPath.get(source) ?? byPlace.get(place) ?? null;
}

function roomScenes(sorting: Sorting, crowd: Crowd): ReadonlyMap<string, RoomScene> {
  const { venue, imports, shaped, roomOf } = sorting;
  const most = crowdRank(crowd);
  const scenes = new Map<string, RoomScene>();
  for (const { name } of venue.rooms) {
    const isHere = (
      { source }: ScanImport,
      row: { readonly place: string; readonly crowd: Crowd | null },
    ): boolean => roomOf(source, row.place) === name && crowdRank(row.crowd) <= most;
    const here = imports
      .map((scan) => ({
        ...scan,
        readings: scan.readings.filter((reading) => isHere(scan, reading)),
        sweep: scan.sweep !== null && isHere(scan, scan.sweep) ? scan.sweep : null,
        issues: [],
      }))
      .filter(({ readings, sweep }) => readings.length > 0 || sweep !== null);
    if (here.length === 0) continue;
    const survey = withCrowdAirtime({ ...buildSurvey(here, shaped), issues: [] }, crowd, shaped);
    scenes.set(name, {
      survey,
      emitters: toEmitters(survey),
      sweeps: survey.sweepLevels,
      scanHeightM: scanHeightM(sorting, here),
    });
  }
  return scenes;
}

/** The building's sources that reported no airtime carry the crowd that is planned for. */
function withCrowdAirtime(survey: Survey, crowd: Crowd, { assumedAirtime }: BuildSurveyOptions): Survey {
  const { emptyRatio, partRatio, fullRatio } = assumedAirtime ?? ASSUMED_AIRTIME;
  const ownRatio = [emptyRatio, partRatio, fullRatio][CROWDS.indexOf(crowd)]!;
  return {
    ...survey,
    emitters: survey.emitters.map((source) =>
      source.airtimeAssumed
        ? { ...source, airtimeRatio: source.owner === "building" ? ownRatio : emptyRatio }
        : source,
    ),
  };
}

/** The lowest that a scan of the room was made at; null where one doesn't say. */
function scanHeightM({ venue, scanPaths }: Sorting, here: readonly ScanImport[]): number | null {
  const heightsM = here.map(({ source }) => venue.scans[scanPaths.indexOf(source)]?.heightM ?? null);
  return heightsM.reduce<number | null>(
    (least, heightM) => (least === null || heightM === null ? null : Math.min(least, heightM)),
    Infinity,
  );
}
