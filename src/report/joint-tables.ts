import { printable } from "../issues/index.js";
import type { PlannedSystem, SystemCoupling } from "../venue/index.js";
import { dB, fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { leastDb } from "./rooms-glance.js";
import type { RoomsReport } from "./rooms-report.js";
import { shortName } from "./rooms-words.js";
import { clipped, tableLines } from "./text-layout.js";
import { verdictMark } from "./verdict-mark.js";

/** Rows that text shows; JSON has them all. */
const MOST_COUPLINGS = 20;

/** Every system on its channel, and what it would have alone and with each on its own best; figures in dB. */
export function jointTable({ plan }: RoomsReport, { columnCount }: TextStyle): string[] {
  const rows = plan.systems.map((one) => [
    clipped(printable(one.system.name, 60), 12),
    channelCell(one),
    markedFigure(leastDb(one)),
    clipped(printable(one.lostReceivers[0] ?? one.receivers[0]!.receiver, 60), 10),
    onCell(one.alone.channel, one.alone.workingMarginDb),
    fixed(one.naive.workingMarginDb, 1),
    one.fallback.channel === null ? "none" : onCell(one.fallback.channel, one.fallback.workingMarginDb),
  ]);
  return tableLines(
    [
      { head: "system", align: "left" },
      { head: "radio ch", align: "left" },
      { head: "to spare", align: "right" },
      { head: "weakest", align: "left" },
      { head: "alone", align: "right" },
      { head: "if apart", align: "right" },
      { head: "fallback", align: "right" },
    ],
    rows,
    columnCount,
  );
}

function channelCell({ channel, centreMhz, isSettled, isCandidate }: PlannedSystem): string {
  const marks = `${isSettled ? "=" : ""}${isCandidate ? "?" : ""}`;
  return channel === null ? `hops${marks}` : `${channel} (${centreMhz} MHz)${marks}`;
}

function markedFigure(workingMarginDb: number): string {
  return `${verdictMark(workingMarginDb)} ${fixed(workingMarginDb, 1)}`;
}

function onCell(channel: number | null, workingMarginDb: number | null): string {
  const margin = fixed(workingMarginDb, 1);
  return channel === null ? margin : `ch ${channel} ${margin}`;
}

/** Who hears whom in the plan, the dearest first. */
export function couplingTable(couplings: readonly SystemCoupling[], { columnCount }: TextStyle): string[] {
  const rows = couplings
    .slice(0, MOST_COUPLINGS)
    .map((one) => [
      shortName(one.into),
      shortName(one.from),
      shortName(one.receiver),
      `${fixed(one.sameChannelDbm, 0)} dBm`,
      one.inChannelDbm === null ? "nothing" : `${fixed(one.inChannelDbm, 0)} dBm`,
      one.carrierToOtherDb === null ? "" : dB(one.carrierToOtherDb),
      one.costDb < 0.05 ? "under 0.1 dB" : dB(one.costDb),
    ]);
  const lines = tableLines(
    [
      { head: "heard by", align: "left" },
      { head: "from", align: "left" },
      { head: "most at", align: "left" },
      { head: "same ch", align: "right" },
      { head: "in the plan", align: "right" },
      { head: "C/I", align: "right" },
      { head: "costs", align: "right" },
    ],
    rows,
    columnCount,
  );
  const hiddenCount = couplings.length - rows.length;
  return hiddenCount > 0 ? [...lines, `(and ${hiddenCount} more: --json has them all)`] : lines;
}
