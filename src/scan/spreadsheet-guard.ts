/** A spreadsheet runs a cell that begins so. */
const RUNS = /^[=+\-@\t\r\n]/;
/** Guarded, or looking so: an apostrophe before such a start, or before another apostrophe. */
const LOOKS_GUARDED = /^'[=+\-@\t\r\n']/;

/**
 * Makes a name harmless for a spreadsheet by an apostrophe in front, where it would be run. A name that
 * looks guarded by itself gets one too, so that {@link unguardCell} gives back every name exactly.
 * @example guardCell("=1+1"); // => "'=1+1"
 */
export function guardCell(name: string): string {
  return RUNS.test(name) || LOOKS_GUARDED.test(name) ? `'${name}` : name;
}

/**
 * Takes back what {@link guardCell} did; an apostrophe before anything else is the name's own.
 * @example unguardCell("'n Beetje Licht"); // => "'n Beetje Licht"
 */
export function unguardCell(cell: string): string {
  return LOOKS_GUARDED.test(cell) ? cell.slice(1) : cell;
}
