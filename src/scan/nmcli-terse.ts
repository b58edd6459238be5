import { columnsOf, usualLength } from "./nmcli-columns.js";
import { kindsByContent } from "./nmcli-content.js";
import { isUsable } from "./nmcli-kinds.js";
import type { NmcliKind } from "./nmcli-kinds.js";
import { addNmcliRows } from "./nmcli-section.js";
import type { OsTextSink } from "./os-text-sink.js";
import type { TextLine } from "./text-lines.js";

interface TerseRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/**
 * Reads what `nmcli -t` prints for a Wi-Fi list: a row a line, fields between colons, no heading. What a
 * field holds is told by the cells of its column. A line that can't be a row ends one output; the next may
 * have other fields.
 * @source `nmcli -t -f … device wifi list`, from memory
 */
export class NmcliTerseReader {
  private rows: TerseRow[] = [];
  private known: readonly NmcliKind[] = [];

  constructor(private readonly sink: OsTextSink) {}

  read({ line, text }: TextLine): void {
    if (text.trim() === "") return;
    const cells = terseCells(text);
    if (cells.length >= FEWEST_COUNT && cells.length <= MOST_COUNT) this.rows.push({ line, cells });
    else this.finish();
  }

  finish(): void {
    const rows = this.rows;
    this.rows = [];
    const length = usualLength(rows.map(({ cells }) => cells));
    const whole = rows.filter(({ cells }) => cells.length === length).map(({ cells }) => cells);
    const found = kindsByContent(columnsOf(whole, length), this.known.length === length ? this.known : []);
    const kinds = !isUsable(found) && this.known.length === length && length > 0 ? this.known : found;
    const isSure = kinds.includes("address") || whole.some(looksLikeRow) || kinds === this.known;
    const isWifi = isSure || (isUsable(kinds) && this.known.length === 0);
    if (isUsable(kinds) && isWifi) this.known = kinds;
    const own = rows.filter(({ cells }) => isWifi && (cells.length === length || looksLikeRow(cells)));
    addNmcliRows(
      own.map(({ line, cells }) => ({ line, cells: cells.length === length ? cells : null })),
      kinds,
      this.sink,
    );
  }
}

/** Signal, channel, and name or address. */
const FEWEST_COUNT = 3;
/** No list has more fields. */
const MOST_COUNT = 40;
const ADDRESS = /(?<=^|(?<!\\):)(?:[0-9a-f]{2}:){5}[0-9a-f]{2}(?=:|$)/gi;

/**
 * The fields of a terse line. A colon or a backslash within a field stands behind a backslash; an address
 * whose colons were left as they are (`-e no`) is kept whole.
 * @example terseCells("02\\:1A\\:00\\:00\\:00\\:01:Stage\\: left:6"); // => ["02:1A:00:00:00:01", "Stage: left", "6"]
 */
export function terseCells(text: string): readonly string[] {
  const guarded = text.replace(ADDRESS, (address) => address.replaceAll(":", "\\:"));
  const fields = [""];
  for (const [part] of guarded.matchAll(/\\[:\\]|\\|:|[^\\:]+/g)) {
    if (part === ":") fields.push("");
    else fields[fields.length - 1] += /^\\./.test(part) ? part.slice(1) : part;
  }
  return fields;
}

/** Has a line of another length something that only a row has? */
function looksLikeRow(cells: readonly string[]): boolean {
  return cells.some((cell) =>
    /^(?:[0-9a-f]{2}:){5}[0-9a-f]{2}$|^\d{4,5} \p{L}+$|^\d+ \p{L}+\/\p{L}+$/iu.test(cell),
  );
}
