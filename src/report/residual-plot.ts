import { feetToM } from "../units/index.js";
import type { LengthUnit } from "./pen.js";

/** A reading against the model. */
export interface PlotPoint {
  readonly distanceM: number;
  /** Measured − fitted, dB; up is more loss. */
  readonly residualDb: number;
  /** `^`: it lies there or above. */
  readonly mark: "o" | "^" | "#";
}

const ROWS_EACH_SIDE = 6;
/** Tops of the scale, dB: half of each is whole. */
const TOPS_DB = [2, 4, 6, 10, 14, 20, 30, 40, 60, 100, 200, 400];
const TICKS = [
  0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 50, 70, 100, 150, 200, 300, 500, 1000, 3000,
];
const SCALE_COLUMNS = 7;
/** Where marks meet, the one that says most stands. */
const RANKS = "^o#";

/**
 * Residuals as lines of text: distance across (by its logarithm, as the model counts it), dB up, a line at zero.
 * @param points at least one, distances > 0
 */
export function residualPlot(points: readonly PlotPoint[], unit: LengthUnit, columnCount: number): string[] {
  const width = columnCount - SCALE_COLUMNS;
  const columnOf = distanceScale(points, width);
  const mostDb = Math.max(...points.map(({ residualDb }) => Math.abs(residualDb)));
  const topDb = TOPS_DB.find((each) => each >= mostDb) ?? Math.ceil(mostDb / 2) * 2;
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
    ticks(points, unit, columnOf, width),
  ];
}

function distanceScale(points: readonly PlotPoint[], width: number): (distanceM: number) => number {
  const logs = points.map(({ distanceM }) => Math.log(distanceM));
  const [low, high] = [Math.min(...logs), Math.max(...logs)];
  return (distanceM) =>
    high === low ? 0 : Math.round(((Math.log(distanceM) - low) / (high - low)) * (width - 1));
}

function scaled(row: number, topDb: number, line: string): string {
  const steps = ROWS_EACH_SIDE - row;
  const levelDb = (topDb * steps) / ROWS_EACH_SIDE;
  const label = steps % (ROWS_EACH_SIDE / 2) === 0 ? `${levelDb > 0 ? "+" : ""}${levelDb}` : "";
  return `${label.padStart(SCALE_COLUMNS - 2)} |${line}`;
}

/** Distances beneath their columns, as many as have room. */
function ticks(
  points: readonly PlotPoint[],
  unit: LengthUnit,
  columnOf: (distanceM: number) => number,
  width: number,
): string {
  const distances = points.map(({ distanceM }) => distanceM);
  const [nearestM, furthestM] = [Math.min(...distances), Math.max(...distances)];
  let line = "";
  for (const tick of TICKS) {
    const tickM = unit === "m" ? tick : feetToM(tick);
    if (tickM < nearestM || tickM > furthestM) continue;
    const text = `${tick} ${unit}`;
    const start = Math.min(columnOf(tickM), width - text.length);
    if (line === "" || start > line.length + 1) line = line.padEnd(start) + text;
  }
  return `${" ".repeat(SCALE_COLUMNS)}${line}`;
}
