import { READ_BAND_MHZ } from "../band/index.js";
import { parseNumber } from "../units/index.js";
import type { SweepCount } from "./sweep-count.js";
import { hopOf } from "./sweep-hop.js";
import { cellText, plainNumber, SweepLevelCells, unquoted } from "./sweep-level-cells.js";
import type { LongColumns } from "./sweep-long-columns.js";
import type { KnownHop } from "./sweep-passes.js";
import { isTimeText, sweepTimeMs } from "./sweep-time.js";
import { HZ_PER } from "./sweep-unit.js";

/** Most frequencies of the band. */
const MOST_BINS = 200_001;
const [LOW_MHZ, HIGH_MHZ] = READ_BAND_MHZ;
const COMMA = 0x2c;

/** Reads long rows: a time or none, a frequency, a level. The band is one even grid of bins centred on them. */
export class SweepLongRows {
  /** Frequencies met in the band. */
  readonly isMet: Uint8Array;
  private readonly known: KnownHop;
  private readonly cells: SweepLevelCells;
  private readonly powerMw: Float64Array;
  /** The pass in which a bin was last read; the first is 1. */
  private readonly readIn: Uint32Array;
  private openPass = 0;
  private readonly startsIndexes: Int32Array;
  private readonly titles = new Set<string>();
  private hasRows = false;
  private decimalCount = -1;

  constructor(
    private readonly count: SweepCount,
    private readonly delimiter: number,
    readonly columns: LongColumns,
  ) {
    const { originMhz, spacingMhz } = columns;
    const firstStep = Math.ceil((LOW_MHZ - originMhz) / spacingMhz - 1e-6);
    const binCount = Math.floor((HIGH_MHZ - originMhz) / spacingMhz + 1e-6) - firstStep + 1;
    if (binCount > MOST_BINS) count.stop(`frequencies at least ${100 / (MOST_BINS - 1)} MHz apart`, 1);
    const span = {
      lowMhz: originMhz + (firstStep - 0.5) * spacingMhz,
      binWidthMhz: spacingMhz,
      binCount: Math.max(1, Math.min(binCount, MOST_BINS)),
    };
    const { receiver, resolutionBandwidthMhz } = count;
    this.known = count.passes.learn(hopOf(span, receiver, resolutionBandwidthMhz ?? spacingMhz));
    this.cells = new SweepLevelCells(delimiter);
    this.powerMw = new Float64Array(span.binCount).fill(NaN);
    this.readIn = new Uint32Array(span.binCount);
    this.isMet = new Uint8Array(span.binCount);
    this.startsIndexes = new Int32Array(columns.cellCount + 1);
  }

  get lowMhz(): number {
    return this.known.hop.lowMhz;
  }

  /** Takes one line; at least one byte follows `endIndex`. */
  take(bytes: Uint8Array, startIndex: number, endIndex: number, line: number, isTorn: boolean): void {
    const cellCount = this.cut(bytes, startIndex, endIndex);
    const { columns, count } = this;
    const frequency = cellCount === columns.cellCount ? this.numberAt(bytes, columns.frequencyIndex) : null;
    if (frequency === null || !(frequency > 0)) return this.noRow(bytes, startIndex, endIndex, line);
    this.hasRows = true;
    count.row();
    const frequencyMhz = (frequency * columns.unitHz) / HZ_PER.mhz;
    count.reach(frequencyMhz - columns.spacingMhz / 2, frequencyMhz + columns.spacingMhz / 2);
    const bin = Math.round((frequencyMhz - this.known.hop.lowMhz) / columns.spacingMhz - 0.5);
    if (!(bin >= 0 && bin < this.powerMw.length)) return count.outOfBandRow(1);
    if (this.openPass === 0 || this.readIn[bin] === this.openPass) this.begin(bytes);
    this.readIn[bin] = this.openPass;
    this.isMet[bin] = 1;
    this.powerMw[bin] = this.levelAt(bytes, line, isTorn);
    count.usedRowCount++;
  }

  /** Ends the last pass. */
  finish(): void {
    if (this.openPass > 0) this.count.passes.add(this.known, this.powerMw, 1);
  }

  private begin(bytes: Uint8Array): void {
    this.finish();
    this.powerMw.fill(NaN);
    const { timeCellIndex } = this.columns;
    const { fill, passes } = this.count;
    const words = timeCellIndex.map((index) => this.textAt(bytes, index));
    passes.begin(words.length === 0 ? fill.timeMs : (sweepTimeMs(words, fill.timeMs) ?? fill.timeMs));
    this.openPass++;
  }

  private levelAt(bytes: Uint8Array, line: number, isTorn: boolean): number {
    const { cells, count } = this;
    const index = this.columns.levelIndex;
    const [start, end] = [this.startsIndexes[index]!, this.startsIndexes[index + 1]! - 1];
    const cellCount = cells.read(bytes, start, end);
    const isCut = isTorn && index === this.columns.cellCount - 1 && this.isShort(cellText(bytes, start, end));
    const powerMw = cellCount === 1 && !isCut ? cells.powerMw[0]! : NaN;
    if (powerMw === powerMw) {
      if (this.decimalCount < 0) this.decimalCount = decimals(cellText(bytes, start, end));
      count.usedCellCount++;
      return powerMw;
    }
    count.invalidCellCount++;
    count.positiveCellCount += cells.positiveCount;
    count.firstInvalid ??= { text: cellText(bytes, start, end), line };
    return NaN;
  }

  /** A level that ends where the file was cut may lack digits. */
  private isShort(text: string): boolean {
    return decimals(text) < this.decimalCount;
  }

  /** Notes where each cell starts. @returns how many there are */
  private cut(bytes: Uint8Array, startIndex: number, endIndex: number): number {
    const starts = this.startsIndexes;
    starts[0] = startIndex;
    let cellCount = 1;
    for (let at = startIndex; at < endIndex; at++)
      if (bytes[at] === this.delimiter) {
        if (cellCount >= starts.length) return cellCount + 1;
        starts[cellCount++] = at + 1;
      }
    if (cellCount < starts.length) starts[cellCount] = endIndex + 1;
    return cellCount;
  }

  private numberAt(bytes: Uint8Array, index: number): number | null {
    const [start, end] = [this.startsIndexes[index]!, this.startsIndexes[index + 1]! - 1];
    const plain = plainNumber(bytes, start, end);
    return plain ?? parseNumber(this.textAt(bytes, index), this.delimiter !== COMMA);
  }

  private textAt(bytes: Uint8Array, index: number): string {
    return unquoted(cellText(bytes, this.startsIndexes[index]!, this.startsIndexes[index + 1]! - 1));
  }

  private noRow(bytes: Uint8Array, startIndex: number, endIndex: number, line: number): void {
    const text = cellText(bytes, startIndex, endIndex);
    const isBlank = text.replaceAll(String.fromCharCode(this.delimiter), "").trim() === "";
    if (isBlank || text.startsWith("#") || this.titles.has(text)) return;
    if (!this.hasRows && !isTimeText(text.split(String.fromCharCode(this.delimiter))[0]!.trim())) {
      this.titles.add(text);
      return;
    }
    this.count.row();
    const expected = `${this.columns.cellCount} cells, a frequency and a level among them`;
    this.count.reject({ code: "ragged-row", value: text, expected }, line, 0);
  }
}

function decimals(cell: string): number {
  return /[.,](\d*)\s*"?$/.exec(cell)?.[1]?.length ?? 0;
}
