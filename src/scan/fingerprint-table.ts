import { placeOnChannel } from "./channel-placement.js";
import { ColumnCells, plannedIndexes } from "./column-cells.js";
import type { TablePlan } from "./column-plan.js";
import { columnParsers } from "./column-parsers.js";
import type { ColumnParsers } from "./column-parsers.js";
import { styledDbm } from "./column-style.js";
import type { CsvRecord } from "./csv-records.js";
import type { Fault } from "./fault.js";
import type { HeardColumn } from "./fingerprint-channels.js";
import { isBlankSign } from "./column-number.js";
import { isLevel, LEVEL_EXPECTED } from "./level-range.js";
import type { Reading } from "./reading.js";
import type { ColumnIndexes } from "./scan-csv-columns.js";
import { raggedRow } from "./column-table.js";
import type { TableContext, TableReader } from "./table-reader.js";
import { isUnheardSign, unheardLevels } from "./unheard-levels.js";

/**
 * Reads a table with one column for each address and one row for each position: every heard cell is an
 * observation, and the unit of the row accounting; a cell that stands for "not heard" is none.
 */
export class FingerprintTable implements TableReader {
  private readonly parsers: ColumnParsers;
  private readonly indexes: ColumnIndexes;
  private readonly firstIndex: number;
  private rowCount = 0;

  /**
   * @param plan of the columns that are no address's, and of how levels are written
   * @param unheard levels that stand for "not heard" as far as a sample tells
   */
  constructor(
    private readonly plan: TablePlan,
    private readonly heard: readonly HeardColumn[],
    private readonly unheard: ReadonlySet<number>,
    private readonly context: TableContext,
  ) {
    this.parsers = columnParsers(plan);
    this.indexes = plannedIndexes(plan);
    this.firstIndex = context.tally.readings.length;
  }

  isOdd(cells: readonly string[]): boolean {
    return (
      cells.length !== this.plan.headers.length ||
      this.heard.every(({ index }) => this.valueOf(cells, index) === null)
    );
  }

  read({ cells, line }: CsvRecord, record: number): void {
    const { tally } = this.context;
    const columnCount = this.plan.headers.length;
    const isRagged =
      cells.length < columnCount || cells.slice(columnCount).some((cell) => cell.trim() !== "");
    if (isRagged) return tally.reject(raggedRow(cells.length, columnCount), line, record);
    this.rowCount++;
    const row = new ColumnCells(cells, this.plan, this.indexes, this.parsers, this.context.channels);
    const base = this.positionOf(row, line);
    for (const column of this.heard) this.readCell(cells, column, base, row.fault, record);
  }

  end(): void {
    const { tally } = this.context;
    const own = tally.readings.slice(this.firstIndex);
    const late = unheardLevels(own.map(({ signalDbm, bssid }) => ({ signalDbm, source: bssid ?? "" })));
    if (late.size > 0)
      tally.readings = tally.readings.filter(
        ({ signalDbm }, index) => index < this.firstIndex || !late.has(signalDbm),
      );
    const fills = [...this.unheard, ...late].sort((a, b) => a - b);
    const said =
      fills.length === 0 ? "" : `; ${fills.join(" and ")} repeats, apart from all levels: taken as not heard`;
    const expected = `one column for each address: every heard cell counts as a row${said}`;
    tally.say({ code: "assumed", severity: "note", expected, action: "stated" });
  }

  /** What all cells of a row share. A position without name, coordinates or time is known by its number. */
  private positionOf(
    row: ColumnCells,
    line: number,
  ): Omit<
    Reading,
    "bssid" | "channel" | "centreMhz" | "widthMhz" | "centreAssumed" | "signalDbm" | "signalAssumed"
  > {
    const { fill } = this.context;
    const timeMs = row.word(
      "time",
      "a time, written as in the rest of the column, or blank",
      this.parsers.time,
    );
    const crowd = row.word("crowd", "empty, part, full or blank", this.parsers.crowd);
    const numbered = timeMs === null ? `position ${this.rowCount}` : "";
    return {
      source: fill.source,
      line,
      timeMs: timeMs ?? fill.timeMs,
      place: this.parsers.place(row.text("place")) || fill.place || numbered,
      crowd: crowd ?? fill.crowd,
      ssid: "",
      airtimeRatio: null,
      stationCount: null,
      standard: "unknown",
      ageMs: null,
    };
  }

  private readCell(
    cells: readonly string[],
    { index, bssid, channel }: HeardColumn,
    base: ReturnType<FingerprintTable["positionOf"]>,
    rowFault: Fault | null,
    record: number,
  ): void {
    const { tally } = this.context;
    const text = cells[index] ?? "";
    const value = this.valueOf(cells, index);
    if (isBlankSign(text) || (value !== null && this.isUnheard(value))) return;
    const reject = (fault: Fault): void => tally.reject(fault, base.line, record);
    if (rowFault !== null) return reject(rowFault);
    const column = this.plan.headers[index]!;
    if (channel === null)
      return reject({ code: "missing-cell", column: bssid, expected: "a Wi-Fi channel for this address" });
    if (channel > 14) return tally.outOfBand();
    const signalDbm = value === null ? null : styledDbm(value, this.plan.levelStyle);
    if (signalDbm === null || !isLevel(signalDbm))
      return reject({ code: "bad-cell", column, value: text, expected: LEVEL_EXPECTED });
    const placement = placeOnChannel(channel, null, 20);
    if (placement === null)
      return reject({
        code: "bad-cell",
        column,
        value: String(channel),
        expected: "a Wi-Fi channel from 1 to 14",
      });
    tally.use({ ...base, bssid, ...placement, signalDbm, signalAssumed: this.plan.levelStyle === "quality" });
  }

  private valueOf(cells: readonly string[], index: number): number | null {
    return this.parsers.unitNumber(cells[index] ?? "")?.value ?? null;
  }

  /** A quality of 100 is heard well; as a level it stands for not heard. */
  private isUnheard(value: number): boolean {
    if (this.unheard.has(value)) return true;
    if (this.plan.levelStyle === "dbm") return isUnheardSign(value);
    return isUnheardSign(value) && (value <= 0 || value > 100);
  }
}
