/** What may stand between the cells of a scan CSV. */
export type Delimiter = "," | ";" | "\t" | "|";

/** In the order in which they are tried; the first wins a tie. */
export const DELIMITERS: readonly Delimiter[] = [",", ";", "\t", "|"];
