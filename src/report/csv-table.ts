/** A table for a spreadsheet: headings, then a row a line. Whoever writes it makes the texts harmless. */
export interface CsvTable {
  readonly heads: readonly string[];
  /** `[row][column]`; null is a blank cell. */
  readonly rows: readonly (readonly (string | number | null)[])[];
}
