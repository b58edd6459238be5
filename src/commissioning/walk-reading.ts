import type { Issue } from "../issues/index.js";
import type { Vector3 } from "../propagation/index.js";

/** One reading of a transmitter's level at a spot: a row of a walk test or of the readings after install. */
export interface WalkReading {
  /** 1-based physical line where the row starts. */
  readonly line: number;
  /** ms since 1970 UTC; null: blank. */
  readonly timeMs: number | null;
  /** Null: blank. */
  readonly receiver: string | null;
  readonly transmitter: string | null;
  /** Antenna separation, m; null: not given, or to be had from the position. */
  readonly distanceM: number | null;
  /** m; z is 0 where not given. Null: no position. */
  readonly at: Vector3 | null;
  readonly isHeard: boolean;
  /** dBm; null where it was not heard. */
  readonly receivedDbm: number | null;
  /** The level came as a percentage. */
  readonly isLevelAssumed: boolean;
  /** Of a reading not heard: the level that it stayed below, dBm; null where nothing tells. */
  readonly floorDbm: number | null;
  /** Walls between; null: blank. */
  readonly wallCount: number | null;
  /** When it was read, as the checklist names it (on the ground, at trim); null: blank. */
  readonly stage: string | null;
}

/** Readings of a table. Rows in = used + rejected, always: `rowCount === readings.length + rejectedCount`. */
export interface ReadingsImport {
  readonly source: string;
  readonly readings: readonly WalkReading[];
  /** Filled rows below the header. */
  readonly rowCount: number;
  readonly rejectedCount: number;
  readonly notHeardCount: number;
  readonly issues: readonly Issue[];
}

/** How a table of readings is read. */
export interface ReadReadingsOptions {
  /** File name for messages. */
  readonly source: string;
  /** The unit of lengths whose header and cell name none; m unless given. */
  readonly units?: "m" | "ft";
  /** May a comma be the decimal point? False unless given. */
  readonly decimalComma?: boolean;
  /** The level that the receiver still hears, dBm: the floor of readings not heard whose row names none. */
  readonly floorDbm?: number;
  /** The header of a column where it can't be guessed, as `{ received_dbm: "Feld" }`. */
  readonly columns?: Readonly<Record<string, string>>;
}

/** One row of a table, as a reader of CSV cuts it. */
export interface CutRow {
  readonly line: number;
  readonly cells: readonly string[];
}
