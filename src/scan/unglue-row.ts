import { addressCell } from "./column-address.js";

const GLUED_ADDRESS = /^(.*?)((?:[0-9a-f]{2}[:-]){5}[0-9a-f]{2})$/i;

/**
 * A row with the wrong number of cells, put right where there is one way only: fields that share a pair
 * of quotes are cut apart, blank cells too many are left off, two rows on one line are two rows.
 * @param fits judges one row's cells
 * @returns the rows; null where there is no such way
 * @example ungluedRows(["a", "-80,6"], 3, ",", () => true); // => [["a", "-80", "6"]]
 */
export function ungluedRows(
  cells: readonly string[],
  columnCount: number,
  delimiter: string,
  fits: (cells: readonly string[]) => boolean,
): readonly (readonly string[])[] | null {
  const candidates =
    cells.length < columnCount ? cutApart(cells, columnCount, delimiter) : tooMany(cells, columnCount);
  const fitting = candidates.filter((rows) => rows.every((row) => row.length === columnCount && fits(row)));
  return fitting.length === 1 ? fitting[0]! : null;
}

type Rows = readonly (readonly string[])[];

function cutApart(cells: readonly string[], columnCount: number, delimiter: string): readonly Rows[] {
  return cells.flatMap((cell, index): Rows[] => {
    const parts = cell.split(delimiter);
    if (cells.length - 1 + parts.length !== columnCount) return [];
    return [[[...cells.slice(0, index), ...parts, ...cells.slice(index + 1)]]];
  });
}

function tooMany(cells: readonly string[], columnCount: number): readonly Rows[] {
  if (cells.slice(columnCount).every((cell) => cell.trim() === "")) return [[cells.slice(0, columnCount)]];
  if (cells.length === 2 * columnCount) return [[cells.slice(0, columnCount), cells.slice(columnCount)]];
  if (cells.length !== 2 * columnCount - 1) return [];
  const joint = GLUED_ADDRESS.exec(cells[columnCount - 1]!);
  if (joint === null || addressCell(joint[2]!).kind !== "address") return [];
  return [
    [
      [...cells.slice(0, columnCount - 1), joint[1]!],
      [joint[2]!, ...cells.slice(columnCount)],
    ],
  ];
}
