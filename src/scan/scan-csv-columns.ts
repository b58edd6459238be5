/** The columns of a scan CSV, in the order in which they are written. */
export const SCAN_CSV_COLUMNS = [
  "time",
  "place",
  "crowd",
  "bssid",
  "ssid",
  "channel",
  "centre_mhz",
  "width_mhz",
  "signal_dbm",
  "airtime_ratio",
  "stations",
  "standard",
] as const;

/** Name of a column of a scan CSV. */
export type ScanCsvColumn = (typeof SCAN_CSV_COLUMNS)[number];

/** Where each column stands in a row, from 0; −1 where the file hasn't got it. */
export type ColumnIndexes = Readonly<Record<ScanCsvColumn, number>>;

/**
 * Finds the columns by name, in any order, capitals or not. A name that comes twice counts where it comes
 * first.
 * @example columnIndexes(["SSID", "Signal_dBm"]).signal_dbm; // => 1
 */
export function columnIndexes(header: readonly string[]): ColumnIndexes {
  const names = header.map(columnName);
  return Object.fromEntries(
    SCAN_CSV_COLUMNS.map((column) => [column, names.indexOf(column)]),
  ) as unknown as ColumnIndexes;
}

/** @returns how many of a row's cells name a column of a scan CSV */
export function knownColumnCount(cells: readonly string[]): number {
  return cells.filter((cell) => NAMES.has(columnName(cell))).length;
}

/**
 * Is it the header of a scan CSV: are its needed columns there by name, and none by a name that the user
 * mapped to something else?
 * @param mapped headers that the user named, lower case
 * @example isScanCsvHeader(["ssid", "channel", "signal_dbm"], new Set()); // => true
 */
export function isScanCsvHeader(cells: readonly string[], mapped: ReadonlySet<string>): boolean {
  const names = new Set(cells.map(columnName));
  if (!NEEDED.every((alternatives) => alternatives.some((name) => names.has(name)))) return false;
  return mapped.size === 0 || ![...mapped].some((header) => names.has(header));
}

/** @returns what of a header is not read: unknown names, and known ones that come again */
export function unreadColumns(header: readonly string[], columns: ColumnIndexes): readonly string[] {
  const used = new Set(Object.values(columns));
  return header.filter((name, index) => !used.has(index) && name.trim() !== "");
}

const NAMES: ReadonlySet<string> = new Set(SCAN_CSV_COLUMNS);
const NEEDED: readonly (readonly ScanCsvColumn[])[] = [
  ["signal_dbm"],
  ["channel", "centre_mhz"],
  ["bssid", "ssid"],
];

function columnName(cell: string): string {
  return cell.trim().toLowerCase();
}
