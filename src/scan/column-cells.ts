import { wifiChannelCentreMhz } from "../band/index.js";
import { joinedTime } from "./column-time.js";
import { wifiChannelAtMhz } from "./channel-placement.js";
import { secondarySide, sizedMhz } from "./column-number.js";
import type { ColumnParsers } from "./column-parsers.js";
import type { TablePlan } from "./column-plan.js";
import { styledDbm, styledRatio } from "./column-style.js";
import type { Fault } from "./fault.js";
import type { ColumnMeaning } from "./header-words.js";
import { ScanCsvCells } from "./scan-csv-cell.js";
import { SCAN_CSV_COLUMNS } from "./scan-csv-columns.js";
import type { ColumnIndexes, ScanCsvColumn } from "./scan-csv-columns.js";

/** Widths by the number that some lists give in their place: 0 is 20 MHz, 1 is 40. */
const WIDTH_CODES_MHZ: readonly number[] = [20, 40, 80, 160, 160];

/** Where the columns of a planned table stand, as a row of a scan CSV is read. */
export function plannedIndexes({ columns }: TablePlan): ColumnIndexes {
  const indexes = Object.fromEntries(SCAN_CSV_COLUMNS.map((column) => [column, columns[column] ?? -1]));
  const centre = columns.centre_mhz ?? columns.frequency;
  return { ...indexes, centre_mhz: centre ?? -1 } as unknown as ColumnIndexes;
}

/** The cells of one row of a foreign table, as a row of a scan CSV would have them. */
export class ColumnCells extends ScanCsvCells {
  constructor(
    private readonly row: readonly string[],
    private readonly plan: TablePlan,
    indexes: ColumnIndexes,
    override readonly parsers: ColumnParsers,
    private readonly channels: ReadonlyMap<string, number>,
  ) {
    super(row, indexes, parsers);
  }

  override get signalAssumed(): boolean {
    return this.isQuality();
  }

  /** @returns a cell by meaning; empty where the table has no such column */
  cell(meaning: ColumnMeaning): string {
    const index = this.plan.columns[meaning];
    return index === undefined ? "" : (this.row[index] ?? "");
  }

  override text(column: ScanCsvColumn): string {
    if (column === "place" && this.plan.columns.place === undefined) return this.position();
    if (column === "time" && this.plan.columns.time === undefined)
      return joinedTime(this.cell("date"), this.cell("clock"));
    if (column === "channel" && this.plan.columns.channel === undefined) return this.foundChannel();
    return super.text(column);
  }

  override isBlank(column: ScanCsvColumn): boolean {
    const text = this.text(column);
    if (column === "centre_mhz" && (this.parsers.isBlank(text) || this.parsers.number(text) === 0))
      return this.centreMhz() === null;
    if (column === "width_mhz" && this.side() !== null) return false;
    return this.parsers.isBlank(text) || (column === "bssid" && this.parsers.isMasked(text));
  }

  override peekNumber(column: ScanCsvColumn): number | null {
    const number = this.parsers.unitNumber(this.text(column));
    if (column === "width_mhz") return this.widthMhz();
    if (column === "centre_mhz") return this.centreMhz();
    if (number === null) return null;
    if (column === "signal_dbm") return this.levelDbm(number.value, number.unit);
    return column === "airtime_ratio" ? styledRatio(number.value, this.plan.airtimeStyle) : number.value;
  }

  override reject(code: Fault["code"], column: ScanCsvColumn, expected: string): void {
    if (this.fault !== null) return;
    super.reject(code, column, expected);
    this.fault = { ...this.fault!, column: this.headerOf(column) };
  }

  private headerOf(column: ScanCsvColumn): string {
    const { columns, headers } = this.plan;
    const index = columns[column] ?? (column === "centre_mhz" ? columns.frequency : undefined);
    const header = index === undefined ? "" : headers[index]!.trim();
    return header === "" ? column : header;
  }

  private levelDbm(value: number, unit: string): number | null {
    if (unit === "dbm" || (unit !== "%" && value < 0 && value > -131)) return value;
    return styledDbm(value, unit === "%" ? "quality" : this.plan.levelStyle);
  }

  private isQuality(): boolean {
    const number = this.parsers.unitNumber(this.text("signal_dbm"));
    if (number === null || number.unit === "dbm") return false;
    return number.unit === "%" || (this.plan.levelStyle === "quality" && number.value >= 0);
  }

  /** The channel's of a frequency beside a centre, or of the list that came with another file. */
  private foundChannel(): string {
    const { columns } = this.plan;
    if (columns.frequency !== undefined) {
      if (columns.centre_mhz === undefined) return "";
      const value = this.parsers.number(this.cell("frequency"));
      const channel = value === null ? null : wifiChannelAtMhz(sizedMhz(value));
      return channel === null ? this.cell("frequency") : String(channel);
    }
    if (columns.centre_mhz !== undefined) return "";
    const bssid = this.parsers.bssid(this.text("bssid"));
    return String((bssid === null ? undefined : this.channels.get(bssid)) ?? "");
  }

  private centreMhz(): number | null {
    const value = this.parsers.number(super.text("centre_mhz"));
    if (value !== null && value > 0) return sizedMhz(value);
    const side = this.side();
    const primaryMhz = wifiChannelCentreMhz(this.peekNumber("channel") ?? 0);
    if (side === null || primaryMhz === null) return null;
    return primaryMhz + (side === "+" ? 10 : -10);
  }

  /** The side of the secondary channel of 40 MHz, where the width or the channel names it. */
  private side(): string | null {
    const side = /^\s*(?:ht)?40\s*(?:mhz)?\s*([+-])\s*$/i.exec(super.text("width_mhz"))?.[1];
    return side ?? secondarySide(super.text("channel"));
  }

  private widthMhz(): number | null {
    if (this.parsers.isBlank(super.text("width_mhz")) && this.side() !== null) return 40;
    const match = /^\s*(?:v?ht|he|eht)?\s*(\d+)\s*(?:mhz)?\s*[+-]?\s*(?:\([^()]*\)\s*)?$/i.exec(
      super.text("width_mhz"),
    );
    if (match === null) return null;
    const value = Number(match[1]);
    return WIDTH_CODES_MHZ[value] ?? value;
  }

  /** Where there is no name of a place: its coordinates. */
  private position(): string {
    const [x, y] = [this.cell("x").trim(), this.cell("y").trim()];
    return x === "" && y === "" ? "" : `x ${x || "?"}, y ${y || "?"}`;
  }
}
