import { printable } from "../issues/index.js";
import type { ColumnMap } from "./column-map.js";
import type { TablePlan } from "./column-plan.js";
import type { ColumnMeaning } from "./header-words.js";
import type { Fault } from "./fault.js";
import { headerName } from "./header-row.js";
import type { ScanCsvColumn } from "./scan-csv-columns.js";

const MOST_HEADERS_COUNT = 30;

interface Need {
  readonly column: ScanCsvColumn;
  readonly words: string;
  readonly by: readonly ColumnMeaning[];
}

const NEEDS: readonly Need[] = [
  { column: "signal_dbm", words: "the level", by: ["signal_dbm"] },
  {
    column: "channel",
    words: "the Wi-Fi channel or the frequency",
    by: ["channel", "centre_mhz", "frequency"],
  },
  { column: "bssid", words: "the address or the name", by: ["bssid", "ssid"] },
];

/** @returns the needed columns that a table hasn't got, each with the headers seen and what to type */
export function tableFaults(plan: TablePlan): readonly Fault[] {
  return NEEDS.filter(({ by }) => by.every((meaning) => plan.columns[meaning] === undefined)).map(
    ({ column, words }) => ({
      code: "missing-column",
      column,
      expected: `a column that holds ${words}; the headers are ${headerList(plan)}. Name it: ${example(plan, column)}`,
    }),
  );
}

/** What is needed and missing, by its name in a scan CSV. */
export function missingColumns(plan: TablePlan): readonly string[] {
  return tableFaults(plan).map(({ column }) => column!);
}

/** @returns headers that the user named and the table hasn't got */
export function unmatchedMaps(plan: TablePlan, map: ColumnMap): readonly Fault[] {
  const names = new Set(plan.headers.map(headerName));
  return Object.entries(map)
    .filter(([, header]) => !names.has(headerName(header)))
    .map(([field, header]) => ({
      code: "ignored",
      column: field,
      value: header,
      expected: `one of the headers ${headerList(plan)}`,
    }));
}

/** @returns the headers of columns that nothing is read from */
export function unreadHeaders({ headers, columns }: TablePlan): readonly string[] {
  const used = new Set(Object.values(columns));
  return headers.filter((header, index) => header.trim() !== "" && !used.has(index));
}

function headerList({ headers }: TablePlan): string {
  const shown = headers.slice(0, MOST_HEADERS_COUNT).map((header) => `"${printable(header.trim(), 40)}"`);
  return shown.join(", ") + (headers.length > shown.length ? ", …" : "");
}

/** What to type: with the first header that nothing is read from. */
function example(plan: TablePlan, column: ScanCsvColumn): string {
  const [header = "HEADER"] = unreadHeaders(plan);
  return `--map ${column}="${printable(header.trim(), 40)}"`;
}
