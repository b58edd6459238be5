import { ArgumentError } from "../issues/index.js";
import { columnMapFrom } from "./column-map.js";
import type { ColumnMap } from "./column-map.js";
import { parseIsoTime } from "./iso-time.js";
import { parseCrowd } from "./crowd.js";
import type { Crowd } from "./reading.js";
import type { ReadScanOptions } from "./scan-import.js";

/** What stands in for the blank cells of a file. */
export interface Fill {
  readonly source: string;
  readonly place: string;
  readonly crowd: Crowd | null;
  readonly timeMs: number | null;
  /** Headers that the user named. */
  readonly columns: ColumnMap;
  /** Wi-Fi channel by address, from another file. */
  readonly channels: ReadonlyMap<string, number>;
}

/** @throws {ArgumentError} when an option can't be what it should be */
export function fillFrom(options: ReadScanOptions): Fill {
  const { source, place = "", crowd, time, columns = {}, channels = new Map() } = options;
  if (typeof source !== "string") throw new ArgumentError("options.source", "the file's name", source);
  if (typeof place !== "string") throw new ArgumentError("options.place", "a name", place);
  if (!(channels instanceof Map))
    throw new ArgumentError("options.channels", "a map of channels by address", channels);
  const figures = { crowd: crowdOf(crowd), timeMs: timeOf(time) };
  return { source, place: place.trim(), ...figures, columns: columnMapFrom(columns), channels };
}

function crowdOf(crowd: string | undefined): Crowd | null {
  if (crowd === undefined) return null;
  const known = parseCrowd(crowd);
  if (known === null) throw new ArgumentError("options.crowd", "empty, part or full", crowd);
  return known;
}

function timeOf(time: string | undefined): number | null {
  if (time === undefined) return null;
  const timeMs = parseIsoTime(time);
  if (timeMs === null) throw new ArgumentError("options.time", "a time as ISO 8601 writes it", time);
  return timeMs;
}
