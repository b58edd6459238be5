import { posix, relative, sep } from "node:path";
import { printable } from "../issues/index.js";
import type { ScanImport, Survey } from "../scan/index.js";
import type { ScanArgument } from "./scan-arguments.js";

/** What scans tell of a venue before anybody has drawn it. */
export interface VenueSketch {
  readonly rooms: readonly SketchRoom[];
  readonly scans: readonly SketchScan[];
  /** Strongest first. */
  readonly sources: readonly SketchSource[];
}

export interface SketchRoom {
  readonly name: string;
  /** Scan places in it, beside its own name. */
  readonly places: readonly string[];
}

export interface SketchScan {
  /** From the venue file's folder. */
  readonly file: string;
  readonly place: string | null;
  readonly crowd: "empty" | "part" | "full" | null;
  readonly time: string | null;
}

export interface SketchSource {
  readonly source: string;
  readonly owner: "building" | "neighbour";
  /** Names, level, place. */
  readonly words: string;
}

/** Without a scan: one room to start from. */
export const EMPTY_SKETCH: VenueSketch = {
  rooms: [{ name: "hall", places: [] }],
  scans: [],
  sources: [],
};

/** Sources at this level or above are presumably the building's own (assumed). */
const OWN_LEVEL_DBM = -75;
const MOST_ROOMS = 50;
const MOST_SOURCES = 60;

/** A sketch of a venue from its scans. @param folder of the venue file, from where the command runs */
export function venueSketch(
  survey: Survey,
  imports: readonly ScanImport[],
  files: readonly ScanArgument[],
  folder: string,
): VenueSketch {
  const rooms = roomsOf(survey.places);
  return {
    rooms: rooms.length > 0 ? rooms : EMPTY_SKETCH.rooms,
    scans: files
      .filter(({ path }) => path !== "-")
      .map((file) => ({
        file: fileFrom(folder, file.path),
        place: file.place ?? null,
        crowd: file.crowd ?? onlyCrowd(imports.find(({ source }) => source === file.path)),
        time: file.time ?? null,
      })),
    sources: sourcesOf(survey),
  };
}

/** The strongest sources; one that was heard on several channels once. */
function sourcesOf({ emitters }: Survey): SketchSource[] {
  const sources = new Map<string, SketchSource>();
  for (const each of [...emitters].sort((a, b) => b.levelDbm - a.levelDbm)) {
    const { emitter, bssids, names, levelDbm, levelPlace, channel } = each;
    const source = bssids[0] ?? names[0] ?? emitter;
    if (sources.has(source)) continue;
    const where = levelPlace === "" ? "" : ` at ${levelPlace}`;
    const heard = `${names.join(", ") || "hidden"}: ${Math.round(levelDbm)} dBm${where}, Wi-Fi ch ${channel}`;
    const owner = levelDbm >= OWN_LEVEL_DBM ? "building" : "neighbour";
    sources.set(source, { source, owner, words: printable(heard, 100) });
  }
  return [...sources.values()].slice(0, MOST_SOURCES);
}

/** Places whose first word is the same lie in one room, presumably: `foyer` and `foyer bar`. */
function roomsOf(places: readonly string[]): SketchRoom[] {
  const plain = [...new Set(places.map((place) => printable(place.trim(), 60)))].filter(
    (place) => place !== "",
  );
  const byWord = new Map<string, string[]>();
  for (const place of plain) {
    const word = place.split(" ")[0]!;
    byWord.set(word, [...(byWord.get(word) ?? []), place]);
  }
  return [...byWord]
    .slice(0, MOST_ROOMS)
    .map(([word, those]) =>
      those.length === 1
        ? { name: those[0]!, places: [] }
        : { name: word, places: those.filter((place) => place !== word) },
    );
}

/** The crowd of every row, where they agree. */
function onlyCrowd(scan: ScanImport | undefined): SketchScan["crowd"] {
  const crowds = new Set(scan?.readings.map(({ crowd }) => crowd) ?? []);
  const [first = null] = crowds;
  return crowds.size === 1 ? first : null;
}

function fileFrom(folder: string, path: string): string {
  return path.startsWith("/") ? path : relative(folder, path).split(sep).join(posix.sep);
}
