import type { LengthUnit } from "./pen.js";
import { distanceTicks, logShareRatio, residualScale } from "./residual-scale.js";
import type { PlotPoint, ResidualScale } from "./residual-scale.js";

export type { PlotPoint } from "./residual-scale.js";

const ROWS_EACH_SIDE = 6;
const SCALE_COLUMNS = 7;
/** Where marks meet, the one that says most stands. */
const RANKS = "^o#";

/**
 * Residuals as lines of text: distance across (by its logarithm, as the model counts it), dB up, a line at zero.
 * @param points at least one, distances > 0
 */
export function residualPlot(points: readonly PlotPoint[], unit: LengthUnit, columnCount: number): string[] {
  const width = columnCount - SCALE_COLUMNS;
  const scale = residualScale(points);
  const { topDb } = scale;
  const columnOf = (distanceM: number): number => Math.round(logShareRatio(scale, distanceM) * (width - 1));
  const cells = Array.from({ length: 2 * ROWS_EACH_SIDE + 1 }, (_, row) =>
    Array.from({ length: width }, (): string => (row === ROWS_EACH_SIDE ? "-" : " ")),
  );
  for (const { distanceM, residualDb, mark } of points) {
    const row = cells[ROWS_EACH_SIDE - Math.round((residualDb / topDb) * ROWS_EACH_SIDE)]!;
    const column = columnOf(distanceM);
    if (RANKS.indexOf(mark) > RANKS.indexOf(row[column]!)) row[column] = mark;
  }
  return [
    ...cells.map((row, index) => scaled(index, topDb, row.join("").trimEnd())),
    `${" ".repeat(SCALE_COLUMNS - 1)}+${"-".repeat(width)}`,
    ticks(scale, unit, columnOf, width),
  ];
}

function scaled(row: number, topDb: number, line: string): string {
  const steps = ROWS_EACH_SIDE - row;
  const levelDb = (topDb * steps) / ROWS_EACH_SIDE;
  const label = steps % (ROWS_EACH_SIDE / 2) === 0 ? `${levelDb > 0 ? "+" : ""}${levelDb}` : "";
  return `${label.padStart(SCALE_COLUMNS - 2)} |${line}`;
}

/** Distances beneath their columns, as many as have room. */
function ticks(
  scale: ResidualScale,
  unit: LengthUnit,
  columnOf: (distanceM: number) => number,
  width: number,
): string {
  let line = "";
  for (const { label, distanceM } of distanceTicks(scale, unit)) {
    const start = Math.min(columnOf(distanceM), width - label.length);
    if (line === "" || start > line.length + 1) line = line.padEnd(start) + label;
  }
  return `${" ".repeat(SCALE_COLUMNS)}${line}`;
}
