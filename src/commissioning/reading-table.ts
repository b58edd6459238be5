import { ArgumentError } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { WALK_COLUMNS, readingColumn } from "./reading-columns.js";
import type { ReadingColumn } from "./reading-columns.js";
import type { CutRow, ReadReadingsOptions } from "./walk-reading.js";

/** Where the columns of a table of readings stand. */
export interface ReadingTable {
  readonly headers: readonly string[];
  readonly indexes: ReadonlyMap<ReadingColumn, number>;
  /** Of lengths, by column. */
  readonly units: ReadonlyMap<ReadingColumn, "m" | "ft">;
}

/**
 * The columns of a table by its header, or what is wrong with it: none that tells a level, none that tells where,
 * or two of one meaning.
 * @throws {ArgumentError} where `options.columns` names a column that readings haven't got
 */
export function readingTable(header: CutRow, options: ReadReadingsOptions): ReadingTable | Issue {
  const given = mapped(options);
  const indexes = new Map<ReadingColumn, number>();
  const units = new Map<ReadingColumn, "m" | "ft">();
  const issue = (code: Issue["code"], expected: string, value: string): Issue => ({
    ...{ code, severity: "error", source: options.source, line: header.line, value, expected },
    action: "stopped",
  });
  for (const [index, cell] of header.cells.entries()) {
    const found = readingColumn(cell);
    const own = given.get(cell.trim().toLowerCase());
    const column = own ?? found?.column;
    if (column === undefined || (own === undefined && [...given.values()].includes(column))) continue;
    const before = indexes.get(column);
    if (before !== undefined)
      return issue(
        "contradiction",
        `one column for ${column}, not both`,
        `${header.cells[before]!}, ${cell}`,
      );
    indexes.set(column, index);
    units.set(column, found?.unit ?? options.units ?? "m");
  }
  for (const [needed, words] of NEEDED)
    if (!needed.some((column) => indexes.has(column)))
      return issue("missing-column", words, header.cells.join(", "));
  return { headers: header.cells, indexes, units };
}

const NEEDED: readonly (readonly [readonly ReadingColumn[], string])[] = [
  [["received_dbm", "quality", "heard"], "a column for the level received (received_dbm, quality or heard)"],
  [["receiver", "distance_m", "x"], "a column that tells where (receiver, distance_m, or x and y)"],
];

/** Columns by the headers that the user named, lower case. */
function mapped({ columns = {} }: ReadReadingsOptions): Map<string, ReadingColumn> {
  return new Map(
    Object.entries(columns).map(([column, header]) => {
      const known = WALK_COLUMNS.find((each) => each === column);
      if (known === undefined)
        throw new ArgumentError("options.columns", `columns among ${WALK_COLUMNS.join(", ")}`, column);
      return [header.trim().toLowerCase(), known];
    }),
  );
}
