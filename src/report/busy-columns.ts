import type { BusyCell } from "./busy-cells.js";

/** Width of a column in the pictures of busy time and of swept power. */
export const COLUMN_MHZ = 2;
/** Steps of the scale of busy time. */
export const BUSY_STEP_RATIO = 0.25;

/** One column of a picture of busy time. */
export interface BusyColumn {
  readonly fromMhz: number;
  readonly toMhz: number;
  /** Of its busiest MHz; null where nothing was scanned. */
  readonly busyRatio: number | null;
}

/** Busy time by columns of two MHz: the busier counts. */
export function busyColumns(cells: readonly BusyCell[]): BusyColumn[] {
  return Array.from({ length: Math.ceil(cells.length / COLUMN_MHZ) }, (_, index) => {
    const own = cells.slice(COLUMN_MHZ * index, COLUMN_MHZ * (index + 1));
    const known = own.map(({ busyRatio }) => busyRatio).filter((ratio) => ratio !== null);
    return {
      fromMhz: own[0]!.fromMhz,
      toMhz: own[own.length - 1]!.toMhz,
      busyRatio: known.length === 0 ? null : Math.max(...known),
    };
  });
}
