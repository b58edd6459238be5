import type { TextStyle } from "./pen.js";

/** Of the pictures of `survey`: one column. */
export const COLUMN_MHZ = 2;
/** Columns before the picture: a label, a blank and the axis. */
const LABEL_COUNT = 10;
const TICK_MHZ = 20;

/** What stands before a row, up to and with the axis. @example axisLabel("25%"); // => "     25% │" */
export function axisLabel(text: string): string {
  return `${text.padStart(LABEL_COUNT - 2)} │`;
}

/** The axis at the foot and its frequencies, the same under every picture of `survey`. */
export function axisLines(startMhz: number, columnCount: number, style: TextStyle): string[] {
  let line = "";
  for (let index = 0; index < columnCount; index++) {
    const mhz = startMhz + COLUMN_MHZ * index;
    if (mhz % TICK_MHZ === 0) line = line.padEnd(LABEL_COUNT + index) + String(mhz);
  }
  const foot = `${" ".repeat(LABEL_COUNT - 1)}└${"─".repeat(columnCount)}`;
  return [style.pen.faint(foot), style.pen.faint(`${line} MHz`)];
}
