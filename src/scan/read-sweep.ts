import type { ScanImport } from "./scan-import.js";
import { LONGEST_RECORD_COUNT } from "./scan-limits.js";
import { ScanTally } from "./scan-tally.js";
import type { Sweep } from "./sweep.js";
import { SweepCount } from "./sweep-count.js";
import { saySweep } from "./sweep-issues.js";
import type { SweepLayout } from "./sweep-layout.js";
import { SweepLines } from "./sweep-lines.js";
import type { SweepSetting } from "./sweep-setting.js";
import { SweepLongRows } from "./sweep-long-rows.js";
import { sweepBins } from "./sweep-bins.js";
import { SweepWideRows } from "./sweep-wide-rows.js";

const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;

/** More of the levels than this above 0, and they are no dBm. */
const RELATIVE_RATIO = 1e-3;

/** Reads a power sweep in one pass over its bytes, in memory that does not grow with it. */
export async function readSweep(
  chunks: AsyncIterable<Uint8Array>,
  layout: SweepLayout,
  { fill, receiver, resolutionBandwidthMhz }: SweepSetting,
): Promise<ScanImport> {
  const tally = new ScanTally(fill.source);
  const count = new SweepCount(receiver, fill, tally, resolutionBandwidthMhz);
  const delimiter = layout.delimiter.charCodeAt(0);
  const long = layout.long === null ? null : new SweepLongRows(count, delimiter, layout.long);
  const rows = long ?? new SweepWideRows(count, delimiter, layout.wideIndex ?? 0);
  await readLines(chunks, layout, count, rows);
  long?.finish();
  count.passes.end();
  const sweep = sweepOf(count, layout, long);
  saySweep(count, layout, sweep);
  return {
    source: fill.source,
    format: "power-sweep",
    hasAges: false,
    readings: [],
    sweep: count.usedRowCount === 0 ? null : sweep,
    rowCount: count.usedRowCount + tally.rejectedCount + tally.outOfBandCount,
    rejectedCount: tally.rejectedCount,
    outOfBandCount: tally.outOfBandCount,
    issues: tally.issues(),
  };
}

/** Gives the rows their lines, until the input ends or a limit is met. */
async function readLines(
  chunks: AsyncIterable<Uint8Array>,
  { endsWithReturn }: SweepLayout,
  count: SweepCount,
  rows: SweepLongRows | SweepWideRows,
): Promise<void> {
  let line = 0;
  const lines = new SweepLines(
    endsWithReturn ? CARRIAGE_RETURN : LINE_FEED,
    (bytes, startIndex, endIndex, isTorn) => {
      line++;
      if (!count.isStopped) rows.take(bytes, startIndex, endIndex, line, isTorn);
    },
  );
  for await (const chunk of chunks) {
    if (count.isStopped) break;
    lines.push(chunk);
    if (lines.isTooLong) count.stop(`a line of at most ${LONGEST_RECORD_COUNT} bytes`, line + 1);
  }
  lines.finish();
}

function sweepOf(count: SweepCount, layout: SweepLayout, long: SweepLongRows | null): Sweep {
  const { passes, fill, receiver, positiveCellCount, usedCellCount } = count;
  const bins = sweepBins(passes.hops, long?.isMet ?? null);
  return {
    layout: layout.long === null ? "wide" : "long",
    place: fill.place,
    crowd: fill.crowd,
    usedRowCount: count.usedRowCount,
    cellCount: count.cellCount,
    usedCellCount,
    invalidCellCount: count.invalidCellCount,
    outOfBandCellCount: count.outOfBandCellCount,
    droppedCellCount: count.droppedCellCount,
    rejectedCellCount: count.rejectedCellCount,
    relative: positiveCellCount > RELATIVE_RATIO * (usedCellCount + positiveCellCount),
    passCount: passes.passCount,
    ...bins,
    resolutionBandwidthMhz: count.resolutionBandwidthMhz ?? bins.binWidthMhz,
    resolutionBandwidthAssumed: count.resolutionBandwidthMhz === null,
    firstMs: passes.firstMs,
    lastMs: passes.lastMs,
    channels: passes.buckets.whole().histogram.levels(receiver),
    buckets: passes.buckets.buckets(receiver),
  };
}
