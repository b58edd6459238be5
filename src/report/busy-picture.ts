import { barMark } from "./bar-mark.js";
import type { BusyCell } from "./busy-cells.js";
import { stretchesWhere } from "./busy-cells.js";
import { axisLabel, axisLines } from "./busy-axis.js";
import { BUSY_STEP_RATIO, busyColumns } from "./busy-columns.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";

const MOST_STRETCHES = 3;

/** Flat bars of busy time, a column for two MHz (the busier counts), 25 % a row; `?` where nothing was scanned. */
export function busyPicture(cells: readonly BusyCell[], style: TextStyle): string[] {
  const columns = busyColumns(cells);
  const rows = [3, 2, 1, 0].map((row) => {
    const low = row * BUSY_STEP_RATIO;
    const bar = columns.map(({ busyRatio }) => {
      if (busyRatio === null) return row === 0 ? "?" : " ";
      return barMark((busyRatio - low) / BUSY_STEP_RATIO);
    });
    const label = axisLabel(`${fixed((low + BUSY_STEP_RATIO) * 100, 0)}%`);
    return `${style.pen.faint(label)}${bar.join("")}`.trimEnd();
  });
  return [...rows, ...axisLines(cells[0]?.fromMhz ?? 2400, columns.length, style)];
}

/** Which evidence the bars rest on. */
export function busySpokenWords(cells: readonly BusyCell[]): string[] {
  const swept = stretchesWhere(cells, ({ spokenBy }) => spokenBy === "sweep");
  const open = stretchesWhere(cells, ({ spokenBy }) => spokenBy === null);
  const hasBeacons = cells.some(({ beaconBusyRatio }) => beaconBusyRatio !== null);
  const hasSweeps = cells.some(({ sweptBusyRatio }) => sweptBusyRatio !== null);
  if (!hasSweeps) return [];
  const rest = open.length === 0 ? "" : `; ? not swept: ${some(open)}`;
  if (!hasBeacons) return [`By the power sweeps alone: share of passes${rest}.`];
  return swept.length === 0
    ? ["By the beacon lists; the power sweeps are nowhere busier."]
    : [`By the power sweeps in ${some(swept)}, where they are busier; else by the beacon lists.`];
}

function some(stretches: readonly string[]): string {
  const more = stretches.length > MOST_STRETCHES ? ` and ${stretches.length - MOST_STRETCHES} more` : "";
  return `${stretches.slice(0, MOST_STRETCHES).join(", ")}${more}`;
}
