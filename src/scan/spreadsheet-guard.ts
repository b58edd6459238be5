/** A spreadsheet runs a cell that begins so. */
const RUNS = /^[=+\-@\t\r\n]/;
/** Guarded, or looking so: an apostrophe before such a start, or before another apostrophe. */
const LOOKS_GUARDED = /^'[=+\-@\t\r\n']/;
/** What a terminal obeys: C0 but for tab and line ends, DEL, C1, and what turns the direction of writing. */
const OBEYED = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;
const OBEYED_OR_BACKSLASH = new RegExp(`${OBEYED.source}|\\\\`, "g");
/** Such a character, or the backslash itself, written out as `\u` and four hex digits. */
const ESCAPE = /\\u(?:00(?:[01][0-9a-f]|7f|[89][0-9a-f]|5c)|202[a-e]|206[6-9])/;
const ESCAPES = new RegExp(ESCAPE.source, "g");

/**
 * Makes a name harmless for a spreadsheet and a terminal, so that `unguardCell` gives back every name
 * exactly. Where a spreadsheet would run it, it gets an apostrophe in front; so does a name that looks
 * guarded by itself. Where it holds control characters (tab and line ends apart) or turns the direction of
 * writing, they and its backslashes are written out as `\u001b`, behind an apostrophe.
 * @example guardCell("=1+1"); // => "'=1+1"
 */
export function guardCell(name: string): string {
  const cell = RUNS.test(name) || LOOKS_GUARDED.test(name) ? `'${name}` : name;
  return OBEYED.test(name) || looksWrittenOut(cell)
    ? `'${name.replace(OBEYED_OR_BACKSLASH, writtenOut)}`
    : cell;
}

/**
 * Takes back what {@link guardCell} did; an apostrophe before anything else is the name's own, and so is a
 * `\u001b` that no apostrophe goes before.
 * @example unguardCell("'n Beetje Licht"); // => "'n Beetje Licht"
 */
export function unguardCell(cell: string): string {
  if (looksWrittenOut(cell)) return cell.slice(1).replace(ESCAPES, readBack);
  return LOOKS_GUARDED.test(cell) ? cell.slice(1) : cell;
}

function looksWrittenOut(cell: string): boolean {
  return cell.startsWith("'") && ESCAPE.test(cell);
}

function writtenOut(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
}

function readBack(escape: string): string {
  return String.fromCharCode(Number.parseInt(escape.slice(2), 16));
}
