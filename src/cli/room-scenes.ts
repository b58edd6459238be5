import { ASSUMED_AIRTIME, buildSurvey, crowdRank, CROWDS, toEmitters } from "../scan/index.js";
import type { BuildSurveyOptions, Crowd, ScanImport, Survey } from "../scan/index.js";
import type { RoomSurvey, Venue } from "../venue/index.js";
import type { RoomOf } from "./room-of.js";

/** What the scans say of one room with one crowd in. */
export interface RoomScene extends RoomSurvey {
  /** The room's scans with this crowd or a smaller one. */
  readonly survey: Survey;
}

/** A venue's scans, to be sorted by room. */
export interface Sorting {
  readonly venue: Venue;
  readonly imports: readonly ScanImport[];
  readonly shaped: BuildSurveyOptions;
  readonly roomOf: RoomOf;
  readonly scanPaths: readonly string[];
}

/**
 * What the scans say of each room with a crowd in: those made with it or fewer people, and the airtime that is
 * assumed for the building's sources in it.
 * @returns by room, those that were scanned so
 */
export function roomScenes(sorting: Sorting, crowd: Crowd): ReadonlyMap<string, RoomScene> {
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
