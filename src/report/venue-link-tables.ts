import { printable } from "../issues/index.js";
import type { SystemLinks } from "../venue/index.js";
import { lengthText } from "./level-words.js";
import { dB, lossPercent, sharePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";
import type { TableColumn } from "./text-layout.js";
import type { VenueLinkReport } from "./venue-link-report.js";
import { hurtWords, limitWord, loudestWords, mendWords } from "./venue-link-words.js";
import { verdictMark } from "./verdict-mark.js";

/** A system's receivers, weakest first: what each has to spare, and what its light does. */
export function receiversTable({ receivers }: SystemLinks, { units, columnCount }: TextStyle): string[] {
  const isOneRoom = new Set(receivers.map(({ receiver }) => receiver.room)).size === 1;
  const columns: TableColumn[] = [
    { head: "#", align: "right" },
    { head: "receiver", align: "left" },
    ...(isOneRoom ? [] : [{ head: "room", align: "left" } as const]),
    { head: "distance", align: "right" },
    { head: "to spare", align: "right" },
    { head: "limit", align: "left" },
    { head: "clear air", align: "right" },
    { head: "lost*", align: "right" },
    { head: "at edge", align: "right" },
  ];
  const rows = receivers.map((one, index) => [
    `${verdictMark(one.judged.budget.workingMarginDb)} ${index + 1}`,
    clipped(printable(one.receiver.name, 60), isOneRoom ? 14 : 10),
    ...(isOneRoom ? [] : [clipped(printable(one.receiver.room, 60), 8)]),
    lengthText(one.judged.link.distanceM, units),
    dB(one.judged.budget.workingMarginDb),
    limitWord(one),
    sharePercent(one.judged.clearAirRatio),
    lossPercent(one.frames.typical.lossRatio),
    lossPercent(one.frames.edge.lossRatio),
  ]);
  return tableLines(columns, rows, columnCount);
}

/** What hurts each receiver most, and what would mend it: the three best things, the most first. */
export function mendsTable(
  { receivers }: SystemLinks,
  { words, survey }: VenueLinkReport,
  { units, columnCount }: TextStyle,
): string[] {
  const rows = receivers.map((one, index) => [
    String(index + 1),
    hurtWords(one),
    clipped(loudestWords(one, survey), 24),
    one.mends.length === 0
      ? "nothing half a dB"
      : fitting(
          one.mends.map((mend) => mendWords(mend, words.antenna, units)),
          columnCount - 52,
        ),
  ]);
  return tableLines(
    [
      { head: "#", align: "right" },
      { head: "hurts most", align: "left" },
      { head: "loudest there", align: "left" },
      { head: "would mend it", align: "left" },
    ],
    rows,
    columnCount,
  );
}

/** As many as fit; the first one in any case. */
function fitting(mends: readonly string[], columnCount: number): string {
  let count = mends.length;
  while (count > 1 && mends.slice(0, count).join("; ").length > columnCount) count--;
  return mends.slice(0, count).join("; ");
}
