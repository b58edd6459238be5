import { DELIMITERS } from "./delimiter.js";
import type { Delimiter } from "./delimiter.js";

/**
 * The delimiter that a spreadsheet's hint names: a first line as `sep=;`.
 * @returns null when the line is no such hint
 * @example separatorOf("sep=;"); // => ";"
 */
export function separatorOf(line: string): Delimiter | null {
  const hint = /^sep=([,;\t|]) *$/i.exec(line)?.[1];
  return DELIMITERS.find((delimiter) => delimiter === hint) ?? null;
}

/** Are these the cells of such a hint, cut at the delimiter that it names? */
export function isSeparatorLine(cells: readonly string[], delimiter: Delimiter): boolean {
  return separatorOf(cells.join(delimiter)) === delimiter;
}
