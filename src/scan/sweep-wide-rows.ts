import { parseNumber } from "../units/index.js";
import type { Fault } from "./fault.js";
import type { SweepCount } from "./sweep-count.js";
import { hopOf } from "./sweep-hop.js";
import type { HopSpan } from "./sweep-hop.js";
import { cellText, isMissing, SweepLevelCells, unquoted } from "./sweep-level-cells.js";
import type { KnownHop } from "./sweep-passes.js";
import { sweepTimeMs } from "./sweep-time.js";
import { binUnitHz, fits, HZ_PER, sweepUnitHz } from "./sweep-unit.js";

/** Most distinct spans of one file. */
const MOST_SPANS = 4096;
const BLANK = 0x20;

/** What stands between a row's time and its levels, as bytes, and what it means. */
interface Head {
  readonly bytes: Uint8Array;
  readonly lowHz: number;
  readonly highHz: number;
  readonly bin: number;
  readonly hops: Map<number, KnownHop>;
  /** The head that followed this one last time. */
  next: Head | null;
}

/** Reads wide rows: time, low, high and bin frequency, a sample count, levels. */
export class SweepWideRows {
  private readonly cells: SweepLevelCells;
  private readonly heads = new Map<string, Head>();
  private lastHead: Head | null = null;
  private hasRows = false;
  private readonly titles = new Set<string>();
  private reversed = new Float64Array(0);

  constructor(
    private readonly count: SweepCount,
    private readonly delimiter: number,
    private readonly wideIndex: number,
  ) {
    this.cells = new SweepLevelCells(delimiter);
  }

  /** Takes one line; at least one byte follows `endIndex`. */
  take(bytes: Uint8Array, startIndex: number, endIndex: number, line: number, isTorn: boolean): void {
    const end = this.trimmedEnd(bytes, startIndex, endIndex);
    if (end === startIndex) return;
    const headStart = this.after(bytes, startIndex, end, this.wideIndex);
    const headEnd = this.after(bytes, headStart, end, 3);
    const levelStart = this.after(bytes, headEnd, end, 1);
    const head = levelStart < end ? this.headAt(bytes, headStart, headEnd - 1) : null;
    if (head === null) return this.noRow(bytes, startIndex, end, line, isTorn);
    this.hasRows = true;
    this.count.row();
    const levelCount = this.cells.read(bytes, levelStart, end);
    const known = this.hopFor(head, levelCount, line);
    if (this.count.isStopped) return;
    if (known === null) return this.count.reject(this.ragged(head, levelCount, isTorn), line, levelCount);
    if (isTorn) this.mistrustLast(bytes, levelStart, end, levelCount);
    this.readLevels(known, head, levelCount, line, () =>
      this.timeMs(cellText(bytes, startIndex, headStart - 1)),
    );
  }

  private readLevels(
    known: KnownHop,
    head: Head,
    levelCount: number,
    line: number,
    timeMs: () => number | null,
  ): void {
    const { count, cells } = this;
    const { hop } = known;
    count.reach(hop.lowMhz, hop.lowMhz + hop.binCount * hop.binWidthMhz);
    const inBandCount = hop.toIndex - hop.fromIndex;
    if (inBandCount === 0) return count.outOfBandRow(levelCount);
    if (levelCount > hop.binCount) this.dropLast(line);
    if (cells.invalidCount > 0) count.firstInvalid ??= { text: cells.firstInvalid ?? "", line };
    count.positiveCellCount += cells.positiveCount;
    if (count.passes.begins(known)) count.passes.begin(timeMs());
    const power = head.highHz < head.lowHz ? this.turned(hop.binCount) : cells.powerMw;
    const { invalidCount, droppedCount } = count.passes.add(known, power, cells.invalidCount);
    count.usedRowCount++;
    count.usedCellCount += inBandCount - invalidCount - droppedCount;
    count.invalidCellCount += invalidCount;
    count.droppedCellCount += droppedCount;
    count.outOfBandCellCount += hop.binCount - inBandCount;
  }

  private dropLast(line: number): void {
    this.count.droppedCellCount++;
    this.count.longerRowCount++;
    this.count.firstLonger ??= { line };
  }

  /** The levels of a row that runs from its high frequency down, lowest first. */
  private turned(binCount: number): Float64Array {
    if (this.reversed.length < binCount) this.reversed = new Float64Array(binCount);
    for (let index = 0; index < binCount; index++)
      this.reversed[index] = this.cells.powerMw[binCount - 1 - index]!;
    return this.reversed;
  }

  /** A level that ends where the file was cut may lack digits: −7 of −72.35. It counts only with all decimals. */
  private mistrustLast(bytes: Uint8Array, levelStart: number, end: number, levelCount: number): void {
    if (levelCount < 2 || Number.isNaN(this.cells.powerMw[levelCount - 1]!)) return;
    const text = cellText(bytes, Math.max(levelStart, end - 64), end);
    const [before = "", last = ""] = text.split(String.fromCharCode(this.delimiter)).slice(-2);
    if (decimalCount(last) >= decimalCount(before)) return;
    this.cells.powerMw[levelCount - 1] = NaN;
    this.cells.invalidCount++;
    this.cells.firstInvalid ??= last.trim();
  }

  /** Blanks at the end, and one delimiter before them, hold no level. */
  private trimmedEnd(bytes: Uint8Array, startIndex: number, endIndex: number): number {
    let end = endIndex;
    while (end > startIndex && bytes[end - 1] === BLANK) end--;
    if (end > startIndex && bytes[end - 1] === this.delimiter) end--;
    return end;
  }

  /** @returns where the cell after some others starts; `endIndex` + 1 where there is none */
  private after(bytes: Uint8Array, startIndex: number, endIndex: number, cellCount: number): number {
    let at = startIndex;
    for (let passed = 0; passed < cellCount && at <= endIndex; at++)
      if (at === endIndex || bytes[at] === this.delimiter) passed++;
    return at;
  }

  private headAt(bytes: Uint8Array, startIndex: number, endIndex: number): Head | null {
    const guess = this.lastHead?.next ?? null;
    if (guess !== null && sameBytes(guess.bytes, bytes, startIndex, endIndex)) return (this.lastHead = guess);
    const text = cellText(bytes, startIndex, endIndex);
    const head = this.heads.get(text) ?? this.learn(text, bytes.slice(startIndex, endIndex));
    if (head !== null && this.lastHead !== null) this.lastHead.next = head;
    if (head !== null) this.lastHead = head;
    return head;
  }

  private learn(text: string, bytes: Uint8Array): Head | null {
    const words = text.split(String.fromCharCode(this.delimiter)).map((word) => unquoted(word.trim()));
    const [low, high, bin] = words.map((word) => parseNumber(word, this.delimiter !== COMMA));
    if (isMissing(low) || isMissing(high) || isMissing(bin)) return null;
    if (low < 0 || high < 0 || low === high || bin <= 0) return null;
    const unitHz = sweepUnitHz(Math.max(low, high));
    const head = { bytes, lowHz: low * unitHz, highHz: high * unitHz, bin, hops: new Map(), next: null };
    if (this.heads.size < MOST_SPANS) this.heads.set(text, head);
    return head;
  }

  /** @returns the prepared span for so many levels; null where they don't fill it */
  private hopFor(head: Head, levelCount: number, line: number): KnownHop | null {
    const met = head.hops.get(levelCount);
    if (met !== undefined) return met;
    const span = spanOf(head, levelCount);
    if (span === null) return null;
    const { passes, receiver, resolutionBandwidthMhz } = this.count;
    if (passes.hops.length >= MOST_SPANS) {
      this.count.stop(`at most ${MOST_SPANS} different frequency ranges`, line);
      return null;
    }
    const known = passes.learn(hopOf(span, receiver, resolutionBandwidthMhz ?? span.binWidthMhz));
    head.hops.set(levelCount, known);
    return known;
  }

  private ragged({ lowHz, highHz, bin }: Head, levelCount: number, isTorn: boolean): Fault {
    const unitHz = sweepUnitHz(Math.max(lowHz, highHz) / HZ_PER.hz);
    const spannedCount = Math.round(Math.abs(highHz - lowHz) / (bin * unitHz));
    return {
      code: "ragged-row",
      value: `${levelCount} levels`,
      expected: isTorn ? "a whole last row" : `as many levels as its span holds bins (${spannedCount})`,
    };
  }

  private noRow(bytes: Uint8Array, startIndex: number, end: number, line: number, isTorn: boolean): void {
    const text = cellText(bytes, startIndex, end);
    if (!this.hasRows) this.titles.add(text);
    if (!this.hasRows || text === "" || text.startsWith("#") || this.titles.has(text)) return;
    this.count.row();
    const expected = isTorn ? "a whole last row" : "time, low, high and bin frequency, samples and levels";
    this.count.reject({ code: "ragged-row", value: text, expected }, line, 0);
  }

  private timeMs(text: string): number | null {
    const { timeMs } = this.count.fill;
    const words = text.split(String.fromCharCode(this.delimiter)).map((word) => unquoted(word.trim()));
    return sweepTimeMs(words, timeMs) ?? timeMs;
  }
}

const COMMA = 0x2c;

function spanOf({ lowHz, highHz, bin }: Head, levelCount: number): HopSpan | null {
  const spanHz = Math.abs(highHz - lowHz);
  const unitHz = binUnitHz(bin, spanHz, levelCount, sweepUnitHz(Math.max(lowHz, highHz)));
  if (unitHz === null) return null;
  const binHz = bin * unitHz;
  const binCount = fits(levelCount, spanHz / binHz) === "one more" ? levelCount - 1 : levelCount;
  if (binCount === 0) return null;
  return { lowMhz: Math.min(lowHz, highHz) / HZ_PER.mhz, binWidthMhz: binHz / HZ_PER.mhz, binCount };
}

function sameBytes(known: Uint8Array, bytes: Uint8Array, startIndex: number, endIndex: number): boolean {
  if (known.length !== endIndex - startIndex) return false;
  for (let at = 0; at < known.length; at++) if (known[at] !== bytes[startIndex + at]) return false;
  return true;
}

function decimalCount(cell: string): number {
  return /[.,](\d*)\s*$/.exec(cell)?.[1]?.length ?? 0;
}
