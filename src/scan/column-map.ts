import { ArgumentError } from "../issues/index.js";
import { SCAN_CSV_COLUMNS } from "./scan-csv-columns.js";
import type { ScanCsvColumn } from "./scan-csv-columns.js";

/** Headers that the user gave for columns of a scan CSV. */
export type ColumnMap = Readonly<Partial<Record<ScanCsvColumn, string>>>;

/**
 * @returns the map, checked
 * @throws {ArgumentError} for a field that a scan CSV hasn't got, or a header that is no text
 */
export function columnMapFrom(columns: Readonly<Record<string, string>>): ColumnMap {
  for (const [field, header] of Object.entries(columns)) {
    if (!SCAN_CSV_COLUMNS.some((column) => column === field))
      throw new ArgumentError("options.columns", `fields among ${SCAN_CSV_COLUMNS.join(", ")}`, field);
    if (typeof header !== "string" || header.trim() === "")
      throw new ArgumentError(`options.columns.${field}`, "the header of a column", header);
  }
  return columns;
}
