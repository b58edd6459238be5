import type { Place } from "./venue-room.js";

/** A scan file of the survey and where it was made. */
export interface VenueScan {
  /** As the venue file names it, relative to that file. */
  readonly file: string;
  /** Null: each row's own place says, by the places that the rooms name. */
  readonly room: string | null;
  readonly place: string | null;
  /** Null: each row's own crowd says. */
  readonly crowd: "empty" | "part" | "full" | null;
  readonly time: string | null;
  /** Of the scanning antenna above the floor, m; null: not known, taken as on the floor. */
  readonly heightM: number | null;
}

/** Whose a source is. */
export type Owner = "building" | "neighbour" | "unknown";

/** What the venue file says of a source that the scans heard. */
export interface SourceMark {
  /** A network name or an address. */
  readonly source: string;
  readonly owner: Owner;
  readonly at: Place | null;
}
