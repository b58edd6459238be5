import type { ColumnContent } from "./column-content.js";
import type { AirtimeStyle, LevelStyle } from "./column-style.js";
import type { TimeStyle } from "./column-time.js";
import type { ColumnMeaning } from "./header-words.js";
import type { HeaderMeaning } from "./header-meaning.js";

/** One column of a table: its header and what stands under it. */
export interface TableColumn {
  readonly index: number;
  readonly header: string;
  /** What its header says; null: nothing known, or no header. */
  readonly meaning: HeaderMeaning | null;
  readonly content: ColumnContent;
  /** Its cells in the sample, one a row. */
  readonly cells: readonly string[];
}

/** Something that was taken for granted about a column, in words. */
export interface ColumnNote {
  readonly column: string;
  readonly expected: string;
}

/** Where each meaning's column stands, from 0; absent: nowhere. */
export type PlannedColumns = Readonly<Partial<Record<ColumnMeaning, number>>>;

/** How a table is read. */
export interface TablePlan {
  readonly headers: readonly string[];
  readonly columns: PlannedColumns;
  readonly levelStyle: LevelStyle;
  readonly airtimeStyle: AirtimeStyle;
  /** Null: times are ISO 8601. */
  readonly timeStyle: TimeStyle | null;
  readonly decimalComma: boolean;
  /** Blanks beside a delimiter are no part of a name. */
  readonly isPadded: boolean;
  readonly notes: readonly ColumnNote[];
}
