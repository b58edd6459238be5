import { barMark } from "./bar-mark.js";
import type { BusyCell } from "./busy-cells.js";
import { stretchesWhere } from "./busy-cells.js";
import { axisLabel, axisLines, COLUMN_MHZ } from "./busy-axis.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";

const MOST_STRETCHES = 3;

/** Flat bars of busy time, a column for two MHz (the busier counts), 25 % a row; `?` where nothing was scanned. */
export function busyPicture(cells: readonly BusyCell[], style: TextStyle): string[] {
  const columns = Array.from({ length: Math.ceil(cells.length / COLUMN_MHZ) }, (_, index) =>
    busiest(cells.slice(COLUMN_MHZ * index, COLUMN_MHZ * (index + 1))),
  );
  const rows = [0.75, 0.5, 0.25, 0].map((low) => {
    const bar = columns.map((ratio) => {
      if (ratio === null) return low === 0 ? "?" : " ";
      return barMark((ratio - low) / 0.25);
    });
    const label = axisLabel(`${fixed((low + 0.25) * 100, 0)}%`);
    return `${style.pen.faint(label)}${bar.join("")}`.trimEnd();
  });
  return [...rows, ...axisLines(cells[0]?.fromMhz ?? 2400, columns.length, style)];
}

function busiest(cells: readonly BusyCell[]): number | null {
  const known = cells.map(({ busyRatio }) => busyRatio).filter((ratio) => ratio !== null);
  return known.length === 0 ? null : Math.max(...known);
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
