import { SCAN_CSV_COLUMNS } from "../scan/index.js";
import type { CommonOptions } from "./context.js";
import type { ReadingOptions } from "./read-scans.js";
import { badOption } from "./words.js";

/**
 * What `--map field="Header"` says of the columns of foreign tables; the last of one field counts.
 * @throws {CliError} exit 64 where it is no such pair, or no field of a scan CSV
 */
export function mapOption({ map = [] }: CommonOptions): ReadingOptions {
  if (map.length === 0) return {};
  return { columns: Object.fromEntries(map.map(pairOf)) };
}

function pairOf(text: string): readonly [string, string] {
  const [, field = "", header = ""] = /^\s*([^=]*?)\s*=\s*(?:"(.*)"\s*|.*)$/s.exec(text)?.slice(0, 3) ?? [];
  const name = field.toLowerCase();
  const value = header || text.slice(text.indexOf("=") + 1).trim();
  const isField = SCAN_CSV_COLUMNS.some((column) => column === name);
  if (!text.includes("=") || !isField || value === "")
    throw badOption(
      "--map",
      `FIELD=HEADER with a field among ${SCAN_CSV_COLUMNS.join(", ")}`,
      text,
      'signal_dbm="Level"',
    );
  return [name, value];
}
