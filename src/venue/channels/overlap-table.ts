import type { AssignmentProblem } from "./assignment-problem.js";

/** Shares of a coupling by the channels of both ends, and each row's columns from the least share to the greatest. */
export interface OverlapTable {
  readonly columnCount: number;
  /** [receiving channel · columnCount + other channel] */
  readonly shareRatios: Float64Array;
  /** [receiving channel · columnCount + k] the column with the k-th least share of that row. */
  readonly order: Int32Array;
  /** [receiving channel] the greatest share of that row. */
  readonly mostRatios: Float64Array;
  readonly greatestRatio: number;
}

/** @param shareRatio share at a receiving channel and another's channel */
export function overlapTable(
  rowCount: number,
  columnCount: number,
  shareRatio: (rowChannel: number, columnChannel: number) => number,
): OverlapTable {
  const shareRatios = new Float64Array(rowCount * columnCount);
  const order = new Int32Array(rowCount * columnCount);
  const mostRatios = new Float64Array(rowCount);
  for (let row = 0; row < rowCount; row++) {
    const start = row * columnCount;
    for (let column = 0; column < columnCount; column++)
      shareRatios[start + column] = shareRatio(row, column);
    const columns = Array.from({ length: columnCount }, (_, column) => column);
    columns.sort((a, b) => shareRatios[start + a]! - shareRatios[start + b]! || a - b);
    order.set(columns, start);
    mostRatios[row] = shareRatios[start + columns.at(-1)!]!;
  }
  const greatestRatio = mostRatios.reduce((most, ratio) => Math.max(most, ratio), 0);
  return { columnCount, shareRatios, order, mostRatios, greatestRatio };
}

/**
 * @returns [receiving system · systems + other] pairs whose shares are the same by both channels have one table
 *   between them, which is how systems that could change places are told
 */
export function pairTables(
  { overlap, overlapOf }: AssignmentProblem,
  channelCounts: Int32Array,
): OverlapTable[] {
  const shared = new Map<string, OverlapTable>();
  const byDistance = (c: number, d: number): number => overlap[Math.abs(c - d)]!;
  return Array.from(channelCounts).flatMap((rowCount, r) =>
    Array.from(channelCounts, (columnCount, o) => {
      const share = overlapOf ? (c: number, d: number) => (r === o ? 0 : overlapOf(r, c, o, d)) : byDistance;
      const key = overlapOf
        ? [rowCount, ...sharesOf(rowCount, columnCount, share)].join(" ")
        : `${rowCount} ${columnCount}`;
      const table = shared.get(key) ?? overlapTable(rowCount, columnCount, share);
      shared.set(key, table);
      return table;
    }),
  );
}

function sharesOf(
  rowCount: number,
  columnCount: number,
  share: (rowChannel: number, columnChannel: number) => number,
): number[] {
  return Array.from({ length: rowCount * columnCount }, (_, k) =>
    share(Math.floor(k / columnCount), k % columnCount),
  );
}
