import type { IssueCode } from "../issues/index.js";
import { LEVEL_EXPECTED, parseIsoTime } from "../scan/index.js";
import type { Vector3 } from "../propagation/index.js";
import { parseNumber } from "../units/index.js";
import { isBlankCell, lengthCellM, levelCell, qualityCell, yesNoCell } from "./reading-cell.js";
import type { LevelCell } from "./reading-cell.js";
import type { ReadingColumn } from "./reading-columns.js";
import type { ReadingTable } from "./reading-table.js";
import type { CutRow, WalkReading } from "./walk-reading.js";

/** Why a row is rejected whole. */
export interface RowFault {
  readonly code: IssueCode;
  readonly column: ReadingColumn;
  readonly expected: string;
}

/** @returns the reading of a row; or the first thing that is wrong with it: then none of it is used */
export function readingRow(row: CutRow, table: ReadingTable, decimalComma: boolean): WalkReading | RowFault {
  const cells = new RowCells(row, table, decimalComma);
  const heard = cells.level();
  const at = cells.position();
  const reading = {
    line: row.line,
    timeMs: cells.read("time", "a time as ISO 8601 writes it, or blank", parseIsoTime),
    receiver: cells.name("receiver"),
    transmitter: cells.name("transmitter"),
    distanceM: cells.length(
      "distance_m",
      "a distance above 0 and up to 10 km",
      (m) => m > 0 && m <= FURTHEST_M,
    ),
    at,
    ...heard,
    stage: cells.name("stage"),
    wallCount: cells.read("wall_count", "a whole number of walls", (text) => {
      const count = parseNumber(text, decimalComma);
      return count !== null && Number.isInteger(count) && count >= 0 && count <= 100 ? count : null;
    }),
  };
  if (reading.receiver === null && reading.distanceM === null && at === null)
    cells.reject(
      "missing-cell",
      table.indexes.has("receiver") ? "receiver" : "distance_m",
      "where it was read",
    );
  return cells.fault ?? reading;
}

const FURTHEST_M = 10_000;

/** What of a row tells the level. */
type HeardCells = Pick<WalkReading, "isHeard" | "receivedDbm" | "isLevelAssumed" | "floorDbm">;

class RowCells {
  fault: RowFault | null = null;
  constructor(
    private readonly row: CutRow,
    private readonly table: ReadingTable,
    private readonly decimalComma: boolean,
  ) {}

  reject(code: IssueCode, column: ReadingColumn, expected: string): void {
    this.fault ??= { code, column, expected };
  }

  text(column: ReadingColumn): string {
    return this.row.cells[this.table.indexes.get(column) ?? -1] ?? "";
  }

  name(column: ReadingColumn): string | null {
    const text = this.text(column).trim();
    return text === "" ? null : text;
  }

  /** @returns null where blank, or (a fault) `parse` can make nothing of it */
  read<T>(column: ReadingColumn, expected: string, parse: (text: string) => T | null): T | null {
    const text = this.text(column);
    if (isBlankCell(text)) return null;
    const value = parse(text);
    if (value === null) this.reject("bad-cell", column, expected);
    return value;
  }

  length(column: ReadingColumn, expected: string, accepts: (lengthM: number) => boolean): number | null {
    const unit = this.table.units.get(column) ?? "m";
    return this.read(column, expected, (text) => {
      const lengthM = lengthCellM(text, unit, this.decimalComma);
      return lengthM !== null && accepts(lengthM) ? lengthM : null;
    });
  }

  position(): Vector3 | null {
    const along = (axis: "x" | "y" | "z"): number | null =>
      this.length(axis, "a coordinate", (m) => Math.abs(m) <= FURTHEST_M);
    const [x, y, z] = [along("x"), along("y"), along("z")];
    if (x === null && y === null) return null;
    if (x === null || y === null) this.reject("missing-cell", x === null ? "x" : "y", "both x and y");
    return { x: x ?? 0, y: y ?? 0, z: z ?? 0 };
  }

  level(): HeardCells {
    const floor = this.read("floor_dbm", LEVEL_EXPECTED, (text) => {
      const cell = levelCell(text, this.decimalComma);
      return cell.kind === "level" ? cell.levelDbm : null;
    });
    const saysHeard = yesNoCell(this.text("heard"));
    if (saysHeard === undefined) this.reject("bad-cell", "heard", "yes, no or blank");
    const level = levelCell(this.text("received_dbm"), this.decimalComma);
    const quality = qualityCell(this.text("quality"), this.decimalComma);
    if (level.kind === "bad") this.reject("bad-cell", "received_dbm", `${LEVEL_EXPECTED}, or "not heard"`);
    if (quality.kind === "bad") this.reject("bad-cell", "quality", "a share from 0 to 100 %");
    return this.heard(level.kind === "blank" ? quality : level, level.kind === "blank", saysHeard, floor);
  }

  /** A "no" outranks whatever fill value stands beside it. */
  private heard(
    cell: LevelCell,
    isLevelAssumed: boolean,
    saysHeard: boolean | null | undefined,
    ownFloorDbm: number | null,
  ): HeardCells {
    const column = this.table.indexes.has("received_dbm") ? "received_dbm" : "quality";
    if (saysHeard === false || (cell.kind === "not-heard" && saysHeard !== true)) {
      const floorDbm = ownFloorDbm ?? (cell.kind === "not-heard" ? cell.floorDbm : null);
      return { isHeard: false, receivedDbm: null, isLevelAssumed: false, floorDbm };
    }
    if (cell.kind === "not-heard") this.reject("contradiction", column, "a level, for the row says heard");
    if (cell.kind === "blank")
      this.reject("missing-cell", column, 'a level in dBm; "not heard" where there was none');
    const receivedDbm = cell.kind === "level" ? cell.levelDbm : null;
    return { isHeard: true, receivedDbm, isLevelAssumed, floorDbm: ownFloorDbm };
  }
}
