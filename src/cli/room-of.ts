import type { ScanImport } from "../scan/index.js";
import type { Venue } from "../venue/index.js";

/** The room in which a row was scanned; null: in none. */
export type RoomOf = (source: string, place: string) => string | null;

/** A scan file's own room, else the one that names a row's place or is called so. */
export function roomFinder({ scans, rooms }: Venue, scanPaths: readonly string[]): RoomOf {
  const byPath = new Map(scans.map(({ room }, index) => [scanPaths[index]!, room]));
  const byPlace = new Map(
    rooms.flatMap(({ name, places }) => [name, ...places].map((place) => [place, name])),
  );
  return (source, place) => byPath.get(source) ?? byPlace.get(place) ?? null;
}

/** Readings that belong to no room. */
export function roomlessCount(imports: readonly ScanImport[], roomOf: RoomOf): number {
  return imports.reduce(
    (sum, { source, readings }) =>
      sum + readings.filter(({ place }) => roomOf(source, place) === null).length,
    0,
  );
}
