import { columnsOf, usualLength } from "./nmcli-columns.js";
import { kindsByContent } from "./nmcli-content.js";
import { isUsable, kindsByHeading } from "./nmcli-kinds.js";
import type { NmcliKind } from "./nmcli-kinds.js";
import { addNmcliRows } from "./nmcli-section.js";
import { isHeading, looksLikeRow, segmentsOf, tableCells } from "./nmcli-table-row.js";
import type { TableRow } from "./nmcli-table-row.js";
import type { OsTextSink } from "./os-text-sink.js";
import type { TextLine } from "./text-lines.js";

/**
 * Reads the table that `nmcli device wifi list` prints. Cells stand two blanks or more apart; what lies
 * between the columns left of the name and those right of it is the name, so that a name with blanks in it,
 * or one whose width the terminal sees otherwise, shifts nothing. Columns are told by their heading, or by
 * their cells where the heading is in another language or lost. Each heading starts anew.
 * @source `nmcli device wifi list`, from memory
 */
export class NmcliTableReader {
  private headings: readonly string[] | null = null;
  private rows: TableRow[] = [];

  constructor(private readonly sink: OsTextSink) {}

  read({ line, text }: TextLine): void {
    const segments = segmentsOf(text);
    if (segments.length < FEWEST_COUNT) return;
    if (isHeading(segments)) {
      this.finish();
      this.headings = segments.map((segment) => segment.text);
    } else this.rows.push({ line, text, segments });
  }

  finish(): void {
    const rows = this.rows;
    const kinds = kindsByHeading(this.headings ?? [""]) ?? kindsOfRows(rows);
    this.rows = [];
    if (!isUsable(kinds) && !kinds.includes("address")) return;
    const own = rows.flatMap((row) => {
      const cells = tableCells(row, kinds);
      return cells === null && !looksLikeRow(row.segments) ? [] : [{ line: row.line, cells }];
    });
    addNmcliRows(own, kinds, this.sink);
  }
}

/** Signal, channel, and name or address. */
const FEWEST_COUNT = 3;
/** No list has more columns. */
const MOST_COUNT = 40;

/** By content; the mark of the network in use stands first in a few rows only. */
function kindsOfRows(rows: readonly TableRow[]): readonly NmcliKind[] {
  const unmarked = rows.map(({ segments }) => {
    const cells = segments.map(({ text }) => text);
    return cells[0] === "*" ? cells.slice(1) : cells;
  });
  const length = Math.min(MOST_COUNT, usualLength(unmarked));
  const whole = unmarked.filter((cells) => cells.length === length);
  return ["inUse", ...kindsByContent(columnsOf(whole, length))];
}
