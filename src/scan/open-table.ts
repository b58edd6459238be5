import { ChannelListTable } from "./channel-list-table.js";
import { ColumnTable } from "./column-table.js";
import type { TablePlan } from "./column-plan.js";
import type { CsvRecord } from "./csv-records.js";
import type { Fault } from "./fault.js";
import { planFingerprints } from "./fingerprint-plan.js";
import { FingerprintTable } from "./fingerprint-table.js";
import { isFingerprintHeader } from "./header-row.js";
import { RefusedTable } from "./refused-table.js";
import { sayUnread } from "./scan-csv-table.js";
import { tableFaults, unmatchedMaps, unreadHeaders } from "./table-faults.js";
import { planTable } from "./table-plan.js";
import type { TableContext, TableReader } from "./table-reader.js";
import type { SplitSample } from "./table-sample.js";

/** A table opened on a sample, and the sample's rows that it still has to read. */
export interface OpenedTable {
  readonly reader: TableReader;
  readonly rows: readonly CsvRecord[];
}

/** Opens a table that hasn't the header of a scan CSV, whatever it turns out to be by its sample. */
export function openTable(sample: SplitSample, context: TableContext): OpenedTable {
  const { header, rows, columnCount } = sample;
  if (header !== null && isFingerprintHeader(header.cells)) return openFingerprints(header, rows, context);
  const cells = rows.map((row) => row.cells);
  const plan = planTable(
    { header: header?.cells ?? null, rows: cells, columnCount },
    context.map,
    context.delimiter,
  );
  const line = header?.line ?? rows[0]?.line ?? 1;
  const faults = tableFaults(plan);
  const { columns } = plan;
  const isJoined = columns.bssid !== undefined && faults.length === 1 && faults[0]!.column === "channel";
  if (faults.length === 0 || (isJoined && context.channels.size > 0)) {
    sayPlan(plan, line, context);
    return { reader: new ColumnTable(plan, context), rows };
  }
  const isList = columns.bssid !== undefined && faults.length === 1 && faults[0]!.column === "signal_dbm";
  if (isList && rows.length > 0) return { reader: new ChannelListTable(plan, line, context.tally), rows };
  for (const fault of unmatchedMaps(plan, context.map)) sayMap(fault, line, context);
  if (isJoined) context.tally.needsChannels = true;
  return { reader: new RefusedTable(isJoined ? faults.map(withList) : faults, line), rows };
}

function openFingerprints(header: CsvRecord, rows: readonly CsvRecord[], context: TableContext): OpenedTable {
  const { map, channels, delimiter, tally } = context;
  const cells = rows.map((row) => row.cells);
  const found = planFingerprints(header.cells, cells, map, channels, delimiter);
  const positions = rows.filter((_, index) => index !== found.channelRowIndex);
  if (found.heard.every(({ channel }) => channel === null)) {
    tally.needsChannels = true;
    return { reader: new RefusedTable([NO_CHANNEL], header.line), rows: positions };
  }
  for (const note of found.plan.notes) sayAssumed(note, header.line, context);
  return { reader: new FingerprintTable(found.plan, found.heard, found.unheard, context), rows: positions };
}

const NO_CHANNEL: Fault = {
  code: "missing-column",
  column: "channel",
  expected:
    "the Wi-Fi channel of each address: a first row with the channels, or a second file that lists address and channel" +
    " (as bssid,channel), read together with this one",
};

function withList(fault: Fault): Fault {
  return {
    ...fault,
    expected: `${fault.expected}, or add a file that lists address and channel (as bssid,channel)`,
  };
}

function sayPlan(plan: TablePlan, line: number, context: TableContext): void {
  for (const note of plan.notes) sayAssumed(note, line, context);
  for (const fault of unmatchedMaps(plan, context.map)) sayMap(fault, line, context);
  const unread = unreadHeaders(plan);
  if (unread.length > 0) sayUnread(unread, line, context);
}

function sayAssumed(
  { column, expected }: TablePlan["notes"][number],
  line: number,
  { tally }: TableContext,
): void {
  tally.say({ code: "assumed", severity: "note", line, column, expected, action: "stated" });
}

function sayMap(fault: Fault, line: number, { tally }: TableContext): void {
  tally.say({ severity: "warning", line, ...fault, action: "value ignored" });
}
