import { columnContent } from "./column-content.js";
import type { ColumnMap } from "./column-map.js";
import { cellNumber } from "./column-number.js";
import type { TablePlan } from "./column-plan.js";
import { levelStyle } from "./column-style.js";
import { channelRowIndex, heardColumns } from "./fingerprint-channels.js";
import type { HeardColumn } from "./fingerprint-channels.js";
import { headedAddress } from "./header-row.js";
import { planTable } from "./table-plan.js";
import { unheardLevels } from "./unheard-levels.js";

/** How a fingerprint table is read. */
export interface FingerprintPlan {
  readonly plan: TablePlan;
  readonly heard: readonly HeardColumn[];
  readonly unheard: ReadonlySet<number>;
  /** Which row of the sample gives the channels; −1: none. */
  readonly channelRowIndex: number;
}

/**
 * Plans a table with a column for each of several addresses.
 * @param rows a sample of its rows
 * @param channels Wi-Fi channel by address, from a list
 */
export function planFingerprints(
  header: readonly string[],
  rows: readonly (readonly string[])[],
  map: ColumnMap,
  channels: ReadonlyMap<string, number>,
  delimiter: string,
): FingerprintPlan {
  const rowIndex = channelRowIndex(header, rows, map);
  const heard = heardColumns(header, rowIndex === -1 ? null : rows[rowIndex]!, channels);
  const positions = rows.filter((_, index) => index !== rowIndex);
  const others = (cells: readonly string[]): readonly string[] =>
    cells.map((cell, index) => (headedAddress(header[index] ?? "") === null ? cell : ""));
  const sample = { header: others(header), rows: positions.map(others), columnCount: header.length };
  const plan = planTable(sample, {}, delimiter);
  const cells = heard.flatMap(({ index }) => positions.map((row) => row[index] ?? ""));
  const style = levelStyle(columnContent(cells, plan.decimalComma), null) ?? "dbm";
  const columns = Object.fromEntries(
    Object.entries(plan.columns).filter(([meaning]) => OF_POSITIONS.has(meaning)),
  );
  return {
    plan: {
      ...plan,
      headers: header,
      columns,
      levelStyle: style,
      notes: styleNotes(style === "quality", plan),
    },
    heard,
    unheard: style === "dbm" ? sampledFills(heard, positions, plan.decimalComma) : new Set(),
    channelRowIndex: rowIndex,
  };
}

/** What a row of a fingerprint table tells beside levels. */
const OF_POSITIONS: ReadonlySet<string> = new Set(["time", "date", "clock", "place", "crowd", "x", "y"]);

function styleNotes(isQuality: boolean, { notes, columns, headers }: TablePlan): TablePlan["notes"] {
  const kept = notes.filter(({ column }) => column === headers[columns.time ?? -1]);
  const expected =
    "numbers from 0 to 100 taken as a quality N, its level as N/2 − 100 dBm (assumed, common practice)";
  return isQuality ? [...kept, { column: "addresses", expected }] : kept;
}

function sampledFills(
  heard: readonly HeardColumn[],
  rows: readonly (readonly string[])[],
  decimalComma: boolean,
): ReadonlySet<number> {
  const levels = heard.flatMap(({ index, bssid }) =>
    rows.flatMap((row) => {
      const number = cellNumber(row[index] ?? "", decimalComma);
      return number === null || number.value > -5 ? [] : [{ signalDbm: number.value, source: bssid }];
    }),
  );
  return unheardLevels(levels);
}
