/** Longest record of a table, or line of a text, in characters. */
export const LONGEST_RECORD_COUNT = 1_048_576;

/** Most columns of a table. */
export const MOST_COLUMNS_COUNT = 1_000;
