import type { DatedMargin } from "../commissioning/index.js";
import { fixed } from "./number-format.js";

/** Dates that a picture shows; earlier ones are counted. */
const MOST_DATES = 24;
const LABEL_COLUMNS = 21;

/**
 * Margins by date as steps from a line at 0 dB: to its left the channel would have failed.
 * @param series by date, at least one
 */
export function marginSeries(series: readonly DatedMargin[], columnCount: number): string[] {
  const shown = series.slice(-MOST_DATES);
  const margins = shown.map(({ marginDb }) => marginDb);
  const [lowDb, highDb] = [Math.min(0, ...margins), Math.max(0, ...margins, 1)];
  const width = Math.min(columnCount - LABEL_COLUMNS, 50);
  const leftCount = Math.round((-lowDb / (highDb - lowDb)) * width);
  const stepDb = (highDb - lowDb) / width;
  const earlier = series.length - shown.length;
  return [
    ...(earlier > 0 ? [`(and ${earlier} earlier)`] : []),
    ...shown.map(({ date, marginDb }) => {
      const steps = Math.round(Math.abs(marginDb) / stepDb);
      const left =
        marginDb < 0 ? "x".repeat(Math.min(steps, leftCount)).padStart(leftCount) : " ".repeat(leftCount);
      const right = marginDb < 0 ? "" : "=".repeat(Math.min(steps, width - leftCount));
      return `${date.padEnd(10)} ${fixed(marginDb, 1).padStart(6)} dB ${left}|${right}`.trimEnd();
    }),
  ];
}
