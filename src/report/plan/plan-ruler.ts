import { mToFeet } from "../../units/index.js";
import { fixed } from "../number-format.js";
import type { LengthUnit, TextStyle } from "../pen.js";
import { pointAt, SCALE_COLUMNS } from "./plan-scale.js";
import type { PlanScale } from "./plan-scale.js";

const LABEL_ROWS = 4;

/** The height on the plan of every fourth row, from the bottom up. */
export function rowLabel(scale: PlanScale, rowIndex: number, unit: LengthUnit): string {
  const fromBottom = scale.rowCount - 1 - rowIndex;
  return fromBottom % LABEL_ROWS === 0
    ? lengthLabel(pointAt(scale, { columnIndex: 0, rowIndex }).y, unit)
    : "";
}

const LABEL_COLUMNS = 10;

/** Under a plan: where every tenth column stands, and how long ten columns are. */
export function scaleLines(scale: PlanScale, { units, columnCount }: TextStyle): string[] {
  let labels = " ".repeat(SCALE_COLUMNS);
  for (let column = 0; column < scale.columnCount; column += LABEL_COLUMNS) {
    const label = lengthLabel(pointAt(scale, { columnIndex: column, rowIndex: 0 }).x, units);
    if (SCALE_COLUMNS + column + label.length > columnCount) break;
    labels = `${labels.padEnd(SCALE_COLUMNS + column)}${label}`;
  }
  const bar = `${"├".padEnd(LABEL_COLUMNS, "─")}┤`;
  const length = lengthLabel(LABEL_COLUMNS * scale.columnM, units);
  return [labels, `${" ".repeat(SCALE_COLUMNS)}${bar} ${length} ${units}, x to the right, y upwards`];
}

function lengthLabel(lengthM: number, unit: LengthUnit): string {
  const length = unit === "ft" ? mToFeet(lengthM) : lengthM;
  return fixed(length, Math.abs(length - Math.round(length)) < 0.005 ? 0 : 1);
}
