import { COLUMN_MHZ } from "./busy-columns.js";
import { frequencyTicksMhz } from "./frequency-ticks.js";
import type { TextStyle } from "./pen.js";

/** Columns before the picture: a label, a blank and the axis. */
const LABEL_COUNT = 10;

/** What stands before a row, up to and with the axis. @example axisLabel("25%"); // => "     25% │" */
export function axisLabel(text: string): string {
  return `${text.padStart(LABEL_COUNT - 2)} │`;
}

/** The axis at the foot and its frequencies, the same under every picture of `survey`. */
export function axisLines(startMhz: number, columnCount: number, style: TextStyle): string[] {
  let line = "";
  for (const mhz of frequencyTicksMhz(startMhz, startMhz + COLUMN_MHZ * (columnCount - 1)))
    line = line.padEnd(LABEL_COUNT + Math.round((mhz - startMhz) / COLUMN_MHZ)) + String(mhz);
  const foot = `${" ".repeat(LABEL_COUNT - 1)}└${"─".repeat(columnCount)}`;
  return [style.pen.faint(foot), style.pen.faint(`${line} MHz`)];
}
