import type { Crowd, ScanImport } from "../scan/index.js";
import { filteredScans, scanSpots } from "./fresh-scans.js";
import type { FreshScans } from "./fresh-scans.js";
import { roomFinder } from "./room-of.js";
import type { VenueScene } from "./venue-scene.js";

/** What of the survey the fresh scans can be compared with. */
export interface ComparableScans {
  /** Of the survey: the same rooms and, where it has them, the same places and crowd. Empty: nothing. */
  readonly imports: readonly ScanImport[];
  readonly rooms: readonly string[];
  readonly crowds: readonly (Crowd | null)[];
  /** What keeps like from being compared with like, a sentence each. */
  readonly caveats: readonly string[];
}

/**
 * The surveyed scans that were made as the fresh ones were. A source is loudest near its place, and busiest with
 * the house full: other places or another crowd would show changes that are none.
 * @param surveyedPaths of the venue's scans, in their order
 */
export function likeWithLike(
  { venue, imports }: VenueScene,
  surveyedPaths: readonly string[],
  { roomOf }: FreshScans,
  today: readonly ScanImport[],
): ComparableScans {
  const surveyedRoomOf = roomFinder(venue, surveyedPaths);
  const spots = scanSpots(today).filter(({ source, place }) => roomOf(source, place) !== null);
  const crowds = [...new Set(spots.map(({ crowd }) => crowd))];
  const fits = venue.rooms.flatMap(({ name: room }): RoomFit[] => {
    const fresh = spots.filter(({ source, place }) => roomOf(source, place) === room);
    if (fresh.length === 0) return [];
    const then = scanSpots(imports).filter(({ source, place }) => surveyedRoomOf(source, place) === room);
    const places = new Set(fresh.map(({ place }) => place));
    return [
      {
        ...{ room, places },
        isSurveyed: then.length > 0,
        hasCrowd: then.some(({ crowd }) => crowds.includes(crowd)),
        hasPlace: then.some(({ place }) => places.has(place)),
      },
    ];
  });
  return {
    imports: filteredScans(imports, (spot) => {
      const fit = fits.find(({ room }) => room === surveyedRoomOf(spot.source, spot.place));
      if (fit === undefined) return false;
      return (!fit.hasCrowd || crowds.includes(spot.crowd)) && (!fit.hasPlace || fit.places.has(spot.place));
    }),
    rooms: fits.map(({ room }) => room),
    crowds,
    caveats: caveatsOf(fits),
  };
}

/** What the survey has of a freshly scanned room. */
interface RoomFit {
  readonly room: string;
  readonly places: ReadonlySet<string>;
  readonly isSurveyed: boolean;
  readonly hasCrowd: boolean;
  readonly hasPlace: boolean;
}

function caveatsOf(fits: readonly RoomFit[]): string[] {
  const rooms = (isMeant: (fit: RoomFit) => boolean): string[] =>
    fits.filter(isMeant).map(({ room }) => room);
  return [
    ...said(
      rooms(({ isSurveyed }) => !isSurveyed),
      "not surveyed before the plan: what is new there can't be told",
    ),
    ...said(
      rooms(({ isSurveyed, hasCrowd }) => isSurveyed && !hasCrowd),
      "surveyed with another crowd: airtime differs by that alone",
    ),
    ...said(
      rooms(({ isSurveyed, hasPlace }) => isSurveyed && !hasPlace),
      "surveyed at other places: levels differ by that alone",
    ),
  ];
}

function said(rooms: readonly string[], what: string): string[] {
  return rooms.length === 0 ? [] : [`${rooms.join(", ")} ${what}`];
}
