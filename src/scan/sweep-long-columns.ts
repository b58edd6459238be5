import { parseNumber } from "../units/index.js";
import { isTimeText } from "./sweep-time.js";
import { HZ_PER, sweepUnitHz } from "./sweep-unit.js";

/** Which cell of a long row is what. */
export interface LongColumns {
  readonly cellCount: number;
  /** None, one, or a date and a clock time. */
  readonly timeCellIndex: readonly number[];
  readonly frequencyIndex: number;
  readonly levelIndex: number;
  /** Hz in one of the unit that the content shows. */
  readonly unitHz: number;
  /** Hz in one of the unit that the header names; null where it names none. */
  readonly headerUnitHz: number | null;
  /** A frequency of the grid, and the spacing of the frequencies. */
  readonly originMhz: number;
  readonly spacingMhz: number;
}

const NO_LEVEL = /^(?:|[+-]?(?:nan|inf|infinity)|[+-]?1\.#[a-z]+|n\/?a|null|-+)$/i;
const LOWEST_HZ = 1e8;
const HIGHEST_HZ = 1e10;
const MOST_LEVEL_DB = 300;
const MOST_CELLS = 5;
const FEWEST_ROWS = 2;

type Row = readonly string[];

/** @returns the columns of long rows, judged by content; null where the rows are no long sweep */
export function longColumns(rows: readonly Row[], decimalComma: boolean): LongColumns | null {
  const isData = (cells: Row): boolean =>
    cells.length >= 2 &&
    cells.length <= MOST_CELLS &&
    cells.every(
      (cell) => isTimeText(cell) || NO_LEVEL.test(cell) || parseNumber(cell, decimalComma) !== null,
    ) &&
    cells.filter((cell) => parseNumber(cell, decimalComma) !== null).length >= 1;
  const firstIndex = rows.findIndex(isData);
  if (firstIndex === -1) return null;
  const cellCount = rows[firstIndex]!.length;
  const data = rows.filter((cells) => cells.length === cellCount && isData(cells));
  if (data.length < FEWEST_ROWS || data.length * 2 < rows.length - firstIndex) return null;
  const columns = Array.from({ length: cellCount }, (_, index) =>
    data.map((cells) => parseNumber(cells[index]!, decimalComma)),
  );
  const frequencyIndex = frequencyColumn(columns, rows[firstIndex - 1] ?? []);
  if (frequencyIndex === null) return null;
  const levelIndex = levelColumn(columns, frequencyIndex, data);
  const timeIndexes = [...columns.keys()].filter((index) => index !== frequencyIndex && index !== levelIndex);
  if (levelIndex === null || timeIndexes.length > 2) return null;
  const stamps = timeIndexes.map((index) => data.map((cells) => cells[index]!));
  if (!stamps.every((cells) => cells.every(isTimeText))) return null;
  const read = columns[frequencyIndex]!.filter((value) => value !== null);
  const unitHz = sweepUnitHz(middle(read));
  const grid = gridOf(read.map((value) => (value * unitHz) / HZ_PER.mhz));
  if (grid === null) return null;
  const header = rows[firstIndex - 1]?.[frequencyIndex] ?? "";
  return {
    cellCount,
    timeCellIndex: timeIndexes,
    frequencyIndex,
    levelIndex,
    unitHz,
    headerUnitHz: unitNamed(header),
    ...grid,
  };
}

/** The column that holds frequencies of radio, rather in the 2.4 GHz band than elsewhere, and changes. */
function frequencyColumn(columns: readonly (readonly (number | null)[])[], header: Row): number | null {
  const may = [...columns.keys()].filter((index) => {
    const read = columns[index]!.filter((value) => value !== null);
    const inRange = read.filter((value) => {
      const hz = value * sweepUnitHz(value);
      return hz >= LOWEST_HZ && hz <= HIGHEST_HZ;
    });
    return new Set(read).size >= 2 && inRange.length >= 0.9 * columns[index]!.length;
  });
  const inBand = (index: number): boolean => {
    const value = middle(columns[index]!.filter((one) => one !== null));
    const mhz = (value * sweepUnitHz(value)) / HZ_PER.mhz;
    return mhz >= 2300 && mhz <= 2600;
  };
  const merit = (index: number): number => {
    const read = columns[index]!.filter((value) => value !== null);
    // A clock only rises, and rises less often than a frequency changes.
    const isClock = read.every((value, row) => row === 0 || value >= read[row - 1]!);
    const isNamed = FREQUENCY_WORD.test(header[index] ?? "");
    return (
      (isNamed ? 8 : 0) + (inBand(index) ? 4 : 0) + (isClock ? 0 : 2) + new Set(read).size / (read.length + 1)
    );
  };
  return may.reduce<number | null>(
    (best, index) => (best === null || merit(index) > merit(best) ? index : best),
    null,
  );
}

const FREQUENCY_WORD = /freq|fr[ée]q|hz/i;

/** The column of levels: mostly negative; else the last that is left and no clock. */
function levelColumn(
  columns: readonly (readonly (number | null)[])[],
  frequencyIndex: number,
  data: readonly Row[],
): number | null {
  const may = [...columns.keys()].filter(
    (index) =>
      index !== frequencyIndex &&
      columns[index]!.some((value) => value !== null) &&
      data.every((cells, row) => {
        const value = columns[index]![row] ?? null;
        return value === null ? NO_LEVEL.test(cells[index]!) : value <= MOST_LEVEL_DB;
      }),
  );
  const negative = may.find((index) => {
    const read = columns[index]!.filter((value) => value !== null);
    return read.filter((value) => value < 0).length * 2 > read.length;
  });
  return negative ?? may[may.length - 1] ?? null;
}

/** The even grid that frequencies stand on: its spacing is the middle of the steps between neighbours. */
function gridOf(frequenciesMhz: readonly number[]): { originMhz: number; spacingMhz: number } | null {
  const rising = [...new Set(frequenciesMhz)].sort((a, b) => a - b);
  const steps = rising.slice(1).map((mhz, index) => mhz - rising[index]!);
  const [originMhz, lastMhz] = [rising[0], rising[rising.length - 1]];
  if (originMhz === undefined || lastMhz === undefined || steps.length === 0) return null;
  const stepMhz = middle(steps);
  const exactMhz = (lastMhz - originMhz) / Math.round((lastMhz - originMhz) / stepMhz);
  return { originMhz, spacingMhz: Math.round(exactMhz * 1e9) / 1e9 };
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}

function unitNamed(header: string): number | null {
  const word = /(?:^|[^a-z])([kmg]?hz)(?:$|[^a-z])/i.exec(header)?.[1]?.toLowerCase();
  return word === undefined ? null : HZ_PER[word as keyof typeof HZ_PER];
}
