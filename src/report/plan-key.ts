import type { TextStyle } from "./pen.js";
import { fixed } from "./number-format.js";
import { clipped, columnsOf } from "./text-layout.js";
import { verdictMark } from "./verdict-mark.js";
import { printable } from "../issues/index.js";

/** A receiver of a plan's list. */
export interface PlanReceiver {
  readonly name: string;
  /** dB; null where there is none to state. */
  readonly workingMarginDb: number | null;
}

const BETWEEN = 3;

/**
 * The receivers of a plan under it, numbered from 1 in their order, each with its verdict's mark and what it has
 * to spare in dB, in as many columns as fit; read downwards.
 */
export function planKey(receivers: readonly PlanReceiver[], { columnCount }: TextStyle): string[] {
  const cells = receivers.map(({ name, workingMarginDb }, index) => {
    const mark = workingMarginDb === null ? "-" : verdictMark(workingMarginDb);
    const figure = fixed(workingMarginDb, 1).padStart(5);
    return `${String(index + 1).padStart(2)} ${mark} ${figure} ${clipped(printable(name, 60), 24)}`;
  });
  const width = Math.max(0, ...cells.map(columnsOf)) + BETWEEN;
  const perLine = Math.max(1, Math.floor((columnCount + BETWEEN) / width));
  const lineCount = Math.ceil(cells.length / perLine);
  return Array.from({ length: lineCount }, (_, line) =>
    cells
      .filter((_, index) => index % lineCount === line)
      .map((cell) => cell + " ".repeat(width - columnsOf(cell)))
      .join("")
      .trimEnd(),
  );
}
