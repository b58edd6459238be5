import { stat } from "node:fs/promises";
import type { RadioProfile } from "../radio/index.js";
import type { Crowd, ScanImport } from "../scan/index.js";
import type { Venue, VenueScan } from "../venue/index.js";
import type { Context } from "./context.js";
import { CliError, EXIT } from "./exit.js";
import { readScans } from "./read-scans.js";
import { roomFinder } from "./room-of.js";
import type { RoomOf } from "./room-of.js";
import type { ScanArgument } from "./scan-arguments.js";
import { readingOptions } from "./survey-scans.js";
import type { VerifyOptions } from "./verify-options.js";

/** Fresh scans, read for one radio, and how their rows are sorted. */
export interface FreshScans {
  readonly imports: readonly ScanImport[];
  readonly roomOf: RoomOf;
  /** The venue with these scans in place of the survey's, and their paths. */
  readonly venue: Venue;
  readonly scanPaths: readonly string[];
  /** The UTC day of a reading or sweep, from its own time, else its file's. */
  readonly dayOf: (source: string, timeMs: number | null) => string;
}

/** Days of the files themselves, for rows without a time. */
export type FileDays = ReadonlyMap<string, string>;

/** @returns by path; standard input has none and counts as undated */
export async function fileDays(files: readonly ScanArgument[]): Promise<FileDays> {
  const days = new Map<string, string>();
  for (const { path } of files) {
    const stats = path === "-" ? null : await stat(path).catch(() => null);
    if (stats !== null) days.set(path, dayWord(stats.mtimeMs));
  }
  return days;
}

/**
 * Reads the fresh scans. A scan file's room is the survey's of that very file, else the one that names a row's
 * place (or is called so).
 * @throws {CliError} as `readScans`; exit 65 where no row belongs to a room of the venue
 */
export async function freshScans(
  context: Context<VerifyOptions>,
  surveyed: { readonly venue: Venue; readonly scanPaths: readonly string[] },
  profile: RadioProfile,
  days: FileDays,
): Promise<FreshScans> {
  const imports = await readScans(context, readingOptions(context.options, profile));
  const scanPaths = context.files.map(({ path }) => path);
  const venue = {
    ...surveyed.venue,
    scans: scanPaths.map((path, index) => freshScan(path, index, surveyed, context)),
  };
  const roomOf = roomFinder(venue, scanPaths);
  const isPlaced = imports.some(
    ({ source, readings, sweep }) =>
      readings.some(({ place }) => roomOf(source, place) !== null) ||
      (sweep !== null && roomOf(source, sweep.place) !== null),
  );
  if (!isPlaced) {
    const [room] = venue.rooms;
    throw new CliError(
      EXIT.badData,
      "the fresh scans name no place that a room of the venue file holds",
      `--place "${room?.name ?? "hall"}" --scan ${scanPaths[0] ?? "after.csv"}: the room's name or one of its places`,
      imports.flatMap(({ issues }) => [...issues]),
    );
  }
  return {
    ...{ imports, roomOf, venue, scanPaths },
    dayOf: (source, timeMs) => (timeMs === null ? (days.get(source) ?? UNDATED) : dayWord(timeMs)),
  };
}

/** A day before all others: rows that nothing dates. */
export const UNDATED = "";

function dayWord(timeMs: number): string {
  return new Date(timeMs).toISOString().slice(0, 10);
}

/** Height and room as the survey has them of the same file, or, where its scans of the place agree, the height. */
function freshScan(
  path: string,
  index: number,
  { venue, scanPaths }: { readonly venue: Venue; readonly scanPaths: readonly string[] },
  { files }: Context<VerifyOptions>,
): VenueScan {
  const same = venue.scans[scanPaths.indexOf(path)];
  const { place, crowd, time } = files[index]!;
  const there = venue.scans.filter((scan) => place !== undefined && (scan.place ?? scan.room) === place);
  const heights = new Set(there.map(({ heightM }) => heightM));
  return {
    file: path,
    room: same?.room ?? null,
    place: place ?? null,
    crowd: crowd ?? null,
    time: time ?? null,
    heightM: same?.heightM ?? (heights.size === 1 ? [...heights][0]! : null),
  };
}

/** A row of a scan, or a sweep. */
export interface ScanSpot {
  readonly source: string;
  readonly place: string;
  readonly crowd: Crowd | null;
  readonly timeMs: number | null;
}

/** The same scans with only what `keeps` keeps. */
export function filteredScans(
  imports: readonly ScanImport[],
  keeps: (spot: ScanSpot) => boolean,
): ScanImport[] {
  return imports
    .map((scan) => {
      const { source, readings, sweep } = scan;
      const isSweepKept =
        sweep !== null && keeps({ source, place: sweep.place, crowd: sweep.crowd, timeMs: sweep.lastMs });
      return { ...scan, readings: readings.filter(keeps), sweep: isSweepKept ? sweep : null };
    })
    .filter(({ readings, sweep }) => readings.length > 0 || sweep !== null);
}

/** Every row and sweep. */
export function scanSpots(imports: readonly ScanImport[]): ScanSpot[] {
  return imports.flatMap(({ source, readings, sweep }) => [
    ...readings,
    ...(sweep === null ? [] : [{ source, place: sweep.place, crowd: sweep.crowd, timeMs: sweep.lastMs }]),
  ]);
}
