import type { OccupancyCell, SpokenBy } from "../scorer/index.js";
import { SLACK } from "../units/index.js";
import type { SweptCell } from "./busy-swept.js";

/** One MHz of the band by all that was scanned. */
export interface BusyCell {
  readonly fromMhz: number;
  readonly toMhz: number;
  /** Power exceeded for no more than the busy share of time, dBm; null where nothing covers the cell. */
  readonly levelDbm: number | null;
  /** Share of time in which the cell holds more than the threshold; null where nothing covers it. */
  readonly busyRatio: number | null;
  /** Which gave the busy share: where both cover the cell, the higher. */
  readonly spokenBy: SpokenBy;
  readonly beaconBusyRatio: number | null;
  readonly sweptBusyRatio: number | null;
}

/**
 * Beacon lists and power sweeps in one: where both cover a MHz, the busier and the louder count.
 * @param hasBeacons was any beacon list read: without one, its silence means nothing
 * @param swept cell i is 2400 + i … 2401 + i MHz
 */
export function busyCells(
  occupancy: readonly OccupancyCell[],
  hasBeacons: boolean,
  swept: readonly (SweptCell | null)[],
): BusyCell[] {
  return occupancy.map(({ fromMhz, toMhz, levelDbm, busyRatio }) => {
    const sweep = swept[fromMhz - BAND_START_MHZ] ?? null;
    const beaconBusyRatio = hasBeacons ? busyRatio : null;
    const sweptBusyRatio = sweep?.busyRatio ?? null;
    const levelsDbm = [...(hasBeacons ? [levelDbm] : []), ...(sweep === null ? [] : [sweep.levelDbm])];
    const isSwept = (sweptBusyRatio ?? -1) > (beaconBusyRatio ?? -1);
    return {
      fromMhz,
      toMhz,
      levelDbm: levelsDbm.length === 0 ? null : Math.max(...levelsDbm),
      busyRatio: isSwept ? sweptBusyRatio : beaconBusyRatio,
      spokenBy: isSwept ? "sweep" : hasBeacons ? "beacons" : null,
      beaconBusyRatio,
      sweptBusyRatio,
    };
  });
}

const BAND_START_MHZ = 2400;

/** Mean busy share of the cells that something covers; null where nothing does. */
export function meanBusyRatio(cells: readonly BusyCell[]): number | null {
  const known = cells.map(({ busyRatio }) => busyRatio).filter((ratio) => ratio !== null);
  return known.length === 0 ? null : known.reduce((sum, ratio) => sum + ratio, 0) / known.length;
}

/** A stretch of the band. */
export interface BusyStretch {
  readonly fromMhz: number;
  readonly toMhz: number;
  /** Of its busiest MHz. */
  readonly busyRatio: number;
}

/**
 * The 5 MHz within the radio's channels that are spoilt the least of the time, of equals those with the
 * lowest level, then the lowest in frequency; null where nothing covers them.
 */
export function quietestStretch(
  cells: readonly BusyCell[],
  [lowMhz, highMhz]: readonly [lowMhz: number, highMhz: number],
): BusyStretch | null {
  const used = cells.filter(({ fromMhz, toMhz }) => toMhz > lowMhz && fromMhz < highMhz);
  const width = Math.min(5, used.length);
  let best: (BusyStretch & { levelDbm: number }) | null = null;
  for (let start = 0; start + width <= used.length && width > 0; start++) {
    const stretch = stretchOf(used.slice(start, start + width));
    if (stretch !== null && (best === null || isQuieter(stretch, best))) best = stretch;
  }
  if (best === null) return null;
  const { fromMhz, toMhz, busyRatio } = best;
  return { fromMhz, toMhz, busyRatio };
}

function stretchOf(cells: readonly BusyCell[]): (BusyStretch & { levelDbm: number }) | null {
  if (cells.some(({ busyRatio, levelDbm }) => busyRatio === null || levelDbm === null)) return null;
  return {
    fromMhz: cells[0]!.fromMhz,
    toMhz: cells[cells.length - 1]!.toMhz,
    busyRatio: Math.max(...cells.map(({ busyRatio }) => busyRatio!)),
    levelDbm: Math.max(...cells.map(({ levelDbm }) => levelDbm!)),
  };
}

interface Quiet {
  readonly busyRatio: number;
  readonly levelDbm: number;
}

function isQuieter(a: Quiet, b: Quiet): boolean {
  if (Math.abs(a.busyRatio - b.busyRatio) > SLACK) return a.busyRatio < b.busyRatio;
  return a.levelDbm < b.levelDbm - SLACK;
}

/** Runs of neighbouring cells of which one thing is true, as `2476–2480 MHz`. */
export function stretchesWhere(cells: readonly BusyCell[], holds: (cell: BusyCell) => boolean): string[] {
  const runs: { fromMhz: number; toMhz: number }[] = [];
  for (const cell of cells) {
    if (!holds(cell)) continue;
    const last = runs[runs.length - 1];
    if (last !== undefined && last.toMhz === cell.fromMhz) last.toMhz = cell.toMhz;
    else runs.push({ fromMhz: cell.fromMhz, toMhz: cell.toMhz });
  }
  return runs.map(({ fromMhz, toMhz }) => `${fromMhz}–${toMhz} MHz`);
}
