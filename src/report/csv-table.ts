/** A table for a spreadsheet: headings, then a row a line. Whoever writes it makes the texts harmless. */
export interface CsvTable {
  readonly heads: readonly string[];
  /** `[row][column]`; null is a blank cell. */
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** Numbers of a cell to a ten-thousandth: a crew's tape reads no finer, and binary fractions leave no tail. */
export function tenThousandths(cell: string | number | null): string | number | null {
  return typeof cell === "number" ? Number(cell.toFixed(4)) : cell;
}
