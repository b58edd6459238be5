import { ColumnCells, plannedIndexes } from "./column-cells.js";
import { columnParsers } from "./column-parsers.js";
import type { ColumnParsers } from "./column-parsers.js";
import type { TablePlan } from "./column-plan.js";
import type { CsvRecord } from "./csv-records.js";
import { wifiChannelAtMhz } from "./channel-placement.js";
import type { ScanTally } from "./scan-tally.js";
import { tableFaults } from "./table-faults.js";
import type { TableReader } from "./table-reader.js";

const NO_CHANNELS: ReadonlyMap<string, number> = new Map();

/** Reads a table of addresses and their channels, without levels: no readings, but where another file's belong. */
export class ChannelListTable implements TableReader {
  private readonly parsers: ColumnParsers;

  constructor(
    private readonly plan: TablePlan,
    private readonly line: number,
    private readonly tally: ScanTally,
  ) {
    this.parsers = columnParsers(plan);
  }

  isOdd(cells: readonly string[]): boolean {
    return this.parsers.bssid(cells[this.plan.columns.bssid!] ?? "") === null;
  }

  read({ cells }: CsvRecord): void {
    const row = new ColumnCells(cells, this.plan, plannedIndexes(this.plan), this.parsers, NO_CHANNELS);
    const bssid = this.parsers.bssid(row.text("bssid"));
    const channel = listedChannel(row);
    if (bssid !== null && channel !== null && !this.tally.channels.has(bssid))
      this.tally.channels.set(bssid, channel);
  }

  end(): void {
    const { tally } = this;
    if (tally.readings.length > 0) return;
    for (const fault of tableFaults(this.plan))
      tally.say({ severity: "error", line: this.line, ...fault, action: "stopped" });
  }
}

/** @returns a Wi-Fi channel; above 14 for one outside 2400–2500 MHz */
function listedChannel(row: ColumnCells): number | null {
  const channel = row.peekNumber("channel");
  if (channel !== null) return Number.isInteger(channel) && channel > 0 ? channel : null;
  const centreMhz = row.peekNumber("centre_mhz");
  return centreMhz === null ? null : channelAtMhz(centreMhz);
}

/** The 20 MHz channel at a centre; outside 2400–2500 MHz some number above 14. */
export function channelAtMhz(centreMhz: number): number | null {
  if (centreMhz >= 2400 && centreMhz <= 2500) return wifiChannelAtMhz(centreMhz);
  return centreMhz > 5000 ? Math.round((centreMhz - 5000) / 5) + 14 : null;
}
