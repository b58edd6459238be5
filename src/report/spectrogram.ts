import type { Sweep, SweepBucket } from "../scan/index.js";
import { COLUMN_MHZ } from "./busy-columns.js";
import { passesIn } from "./busy-swept.js";

/** The highest levels of one power sweep by time and frequency, coarse enough to draw. */
export interface Spectrogram {
  /** Empty: not named. */
  readonly place: string;
  readonly crowd: "empty" | "part" | "full" | null;
  readonly passCount: number;
  /** Levels are not dBm. */
  readonly relative: boolean;
  readonly startMhz: number;
  readonly columnMhz: number;
  /** By time; passes without a time first. */
  readonly rows: readonly SpectrogramRow[];
}

export interface SpectrogramRow {
  /** Start of the row's first stretch of time, ms since 1970 UTC; null: passes without a time. */
  readonly startMs: number | null;
  readonly passCount: number;
  /** Column i is startMhz + i·columnMhz and columnMhz wide; the highest of any pass in one MHz, dBm; null: not read. */
  readonly maxDbm: readonly (number | null)[];
}

/** How fine a spectrogram is. */
export interface SpectrogramGrid {
  readonly columnMhz: number;
  readonly columnCount: number;
  readonly mostRowCount: number;
}

/** Columns of 2 MHz over 2400–2484 MHz, as in the picture of busy time. */
export const SURVEY_GRID: SpectrogramGrid = { columnMhz: COLUMN_MHZ, columnCount: 42, mostRowCount: 24 };

/**
 * A power sweep's stretches of time and MHz, merged until they fit: neighbours in time by equal counts, the
 * highest level of any pass kept, so that no burst is lost.
 */
export function spectrogram(sweep: Sweep, grid: SpectrogramGrid): Spectrogram {
  const { place, crowd, passCount, relative, buckets } = sweep;
  const timeless = buckets.filter(({ startMs }) => startMs === null);
  const timed = buckets.filter(({ startMs }) => startMs !== null);
  const perRow = Math.max(1, Math.ceil(timed.length / (grid.mostRowCount - timeless.length)));
  const rowCount = Math.ceil(timed.length / perRow);
  const groups = [
    ...timeless.map((bucket) => [bucket]),
    ...Array.from({ length: rowCount }, (_, row) => timed.slice(row * perRow, (row + 1) * perRow)),
  ];
  return {
    place,
    crowd,
    passCount,
    relative,
    startMhz: 2400,
    columnMhz: grid.columnMhz,
    rows: groups.map((group) => rowOf(group, grid)),
  };
}

function rowOf(group: readonly SweepBucket[], { columnMhz, columnCount }: SpectrogramGrid): SpectrogramRow {
  return {
    startMs: group[0]!.startMs,
    passCount: group.reduce((sum, bucket) => sum + passesIn(bucket), 0),
    maxDbm: Array.from({ length: columnCount }, (_, column) => {
      const levels = group.flatMap(({ maxDbm }) =>
        maxDbm.slice(column * columnMhz, (column + 1) * columnMhz).filter((level) => level !== null),
      );
      return levels.length === 0 ? null : Math.max(...levels);
    }),
  };
}
