import { READ_BAND_MHZ } from "../band/index.js";
import type { Sweep } from "./sweep.js";
import type { SweepCount } from "./sweep-count.js";
import type { SweepLayout } from "./sweep-layout.js";
import { HZ_PER } from "./sweep-unit.js";

const BAND = `${READ_BAND_MHZ[0]}–${READ_BAND_MHZ[1]} MHz`;

/** Says what a sweep's reader of it has to know: what was assumed, dropped or not believed. */
export function saySweep(count: SweepCount, layout: SweepLayout, sweep: Sweep): void {
  if (count.usedRowCount === 0) return sayNothingUsed(count);
  sayUnits(count, layout);
  sayCells(count, sweep);
  const { tally } = count;
  const stated = { code: "assumed", severity: "note", action: "stated" } as const;
  if (sweep.resolutionBandwidthAssumed && !sweep.relative)
    tally.say({
      ...stated,
      expected: `resolution bandwidth assumed: ${khz(sweep.resolutionBandwidthMhz)} kHz, the ${sweep.layout === "wide" ? "bin's width" : "spacing of the frequencies"} (--rbw-khz)`,
    });
  const uncovered = sweep.channels.filter(({ passCount }) => passCount === 0).map(({ channel }) => channel);
  if (uncovered.length === 0 || sweep.relative) return;
  tally.say({
    code: "not-judged",
    severity: "warning",
    expected: `no pass covers the whole passband of radio ch ${uncovered.join(", ")}: the sweep says nothing of ${uncovered.length === 1 ? "it" : "them"}`,
    action: "stated",
  });
}

function sayNothingUsed({ tally, lowestMhz, highestMhz }: SweepCount): void {
  const isElsewhere = tally.outOfBandCount > 0;
  const value = isElsewhere
    ? `a sweep of ${mhz(lowestMhz)}–${mhz(highestMhz)} MHz`
    : `a sweep of which ${tally.rejectedCount} rows were rejected`;
  const expected = isElsewhere ? `a power sweep of the 2.4 GHz band, ${BAND}` : "at least one usable row";
  tally.say({ code: "no-usable-row", severity: "error", value, expected, action: "stopped" });
}

function sayUnits({ tally }: SweepCount, { long }: SweepLayout): void {
  if (long === null || long.headerUnitHz === null || long.headerUnitHz === long.unitHz) return;
  tally.say({
    code: "contradiction",
    severity: "note",
    expected: `frequencies read in ${unitName(long.unitHz)}, as their size shows, though the header says ${unitName(long.headerUnitHz)}`,
    action: "stated",
  });
}

function sayCells(count: SweepCount, sweep: Sweep): void {
  const { tally, firstInvalid, longerRowCount, firstLonger } = count;
  if (firstLonger !== null)
    tally.say({
      code: "ragged-row",
      severity: "note",
      line: firstLonger.line,
      value: "one level more",
      expected: "as many levels as the row's span holds: the last is dropped",
      action: "value ignored",
      count: longerRowCount,
    });
  if (sweep.relative)
    return tally.say({
      code: "not-judged",
      severity: "warning",
      expected: "levels above 0: relative, not dBm; nothing is ranked by this sweep",
      action: "stated",
    });
  if (firstInvalid === null || sweep.invalidCellCount === 0) return;
  tally.say({
    code: "bad-cell",
    severity: "warning",
    line: firstInvalid.line,
    value: firstInvalid.text,
    expected: "a level in dBm, −200 to 0",
    action: "value ignored",
    count: sweep.invalidCellCount,
  });
}

function mhz(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function khz(valueMhz: number): string {
  return String(Math.round(valueMhz * 1e6) / 1e3);
}

function unitName(unitHz: number): string {
  const names: Readonly<Record<number, string>> = {
    [HZ_PER.hz]: "Hz",
    [HZ_PER.khz]: "kHz",
    [HZ_PER.mhz]: "MHz",
    [HZ_PER.ghz]: "GHz",
  };
  return names[unitHz] ?? "Hz";
}
