import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import type { ScanTally } from "./scan-tally.js";
import type { SweepReceiver } from "./sweep.js";
import { SweepPasses } from "./sweep-passes.js";

/** What one sweep file is read into: its passes, and what became of each row and cell. */
export class SweepCount {
  readonly passes: SweepPasses;
  usedRowCount = 0;
  usedCellCount = 0;
  invalidCellCount = 0;
  outOfBandCellCount = 0;
  droppedCellCount = 0;
  rejectedCellCount = 0;
  /** Cells above 0, invalid among the others. */
  positiveCellCount = 0;
  /** Rows that held one level more than their span. */
  longerRowCount = 0;
  firstLonger: { readonly line: number } | null = null;
  firstInvalid: { readonly text: string; readonly line: number } | null = null;
  /** Outer edges of everything read, in the band or not, MHz. */
  lowestMhz = Infinity;
  highestMhz = -Infinity;
  /** The data has to stop here: a limit was met. */
  isStopped = false;
  private rowCount = 0;

  constructor(
    readonly receiver: SweepReceiver,
    readonly fill: Fill,
    readonly tally: ScanTally,
    /** As given, MHz; null: the bin's width is taken. */
    readonly resolutionBandwidthMhz: number | null,
  ) {
    this.passes = new SweepPasses(receiver);
  }

  get cellCount(): number {
    const { usedCellCount, invalidCellCount, outOfBandCellCount, droppedCellCount, rejectedCellCount } = this;
    return usedCellCount + invalidCellCount + outOfBandCellCount + droppedCellCount + rejectedCellCount;
  }

  /** A row begins. @returns its number, the header not counted */
  row(): number {
    return ++this.rowCount;
  }

  reach(lowMhz: number, highMhz: number): void {
    if (lowMhz < this.lowestMhz) this.lowestMhz = lowMhz;
    if (highMhz > this.highestMhz) this.highestMhz = highMhz;
  }

  outOfBandRow(cellCount: number): void {
    this.outOfBandCellCount += cellCount;
    this.tally.outOfBand();
  }

  reject(fault: Fault, line: number, cellCount: number): void {
    this.rejectedCellCount += cellCount;
    this.tally.reject(fault, line, this.rowCount);
  }

  stop(expected: string, line: number): void {
    this.isStopped = true;
    this.tally.say({ code: "limit", severity: "error", line, expected, action: "stopped" });
  }
}
