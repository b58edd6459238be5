import { ascending } from "d3-array";
import { sweepLevelDbm } from "../band/index.js";
import type { SweepChannelLevels, SweepLevels } from "../band/index.js";
import type { Crowd } from "./reading.js";
import type { ScanImport } from "./scan-import.js";
import type { Sweep } from "./sweep.js";

/** All power sweeps of a survey in brief. */
export interface SweepSummary {
  readonly passCount: number;
  /** Of the sweep with the most. */
  readonly binCount: number;
  readonly startMhz: number;
  readonly stopMhz: number;
  /** The widest of them. */
  readonly resolutionBandwidthMhz: number;
  /** Some of them: the width of a bin. */
  readonly resolutionBandwidthAssumed: boolean;
  readonly rowCount: number;
  readonly cellCount: number;
  readonly invalidCellCount: number;
  /** Sweeps whose levels are relative: nothing is ranked by them. */
  readonly relativeCount: number;
  readonly channels: readonly SweptChannel[];
}

/** In-channel power over all passes at the place and crowd where it is the highest; null: no pass covers it. */
export interface SweptChannel {
  readonly channel: number;
  readonly centreMhz: number;
  readonly passCount: number;
  readonly place: string;
  readonly crowd: Crowd | null;
  readonly medianDbm: number | null;
  readonly p90Dbm: number | null;
  readonly p99Dbm: number | null;
  readonly maxDbm: number | null;
}

/** @returns the sweeps that rank, those of one place and crowd as one, in the order of place and crowd */
export function sweepLevels(sweeps: readonly Sweep[]): SweepLevels[] {
  const groups = new Map<string, SweepLevels>();
  for (const { relative, place, crowd, channels } of sweeps) {
    if (relative) continue;
    const key = JSON.stringify([place, crowd]);
    const known = groups.get(key);
    const merged = known === undefined ? channels : channels.map((one) => together(one, known.channels));
    groups.set(key, { place, crowd, channels: merged });
  }
  return [...groups].sort(([a], [b]) => ascending(a, b)).map(([, levels]) => levels);
}

/** @returns all sweeps of some files in brief; null: none was read */
export function sweepSummary(sweeps: readonly Sweep[]): SweepSummary | null {
  const [first] = sweeps;
  if (first === undefined) return null;
  const levels = sweepLevels(sweeps);
  const sum = (of: (sweep: Sweep) => number): number => sweeps.reduce((total, sweep) => total + of(sweep), 0);
  return {
    passCount: sum(({ passCount }) => passCount),
    binCount: sweeps.reduce((most, { binCount }) => Math.max(most, binCount), 0),
    startMhz: sweeps.reduce((least, { startMhz }) => Math.min(least, startMhz), Infinity),
    stopMhz: sweeps.reduce((most, { stopMhz }) => Math.max(most, stopMhz), -Infinity),
    resolutionBandwidthMhz: sweeps.reduce((most, sweep) => Math.max(most, sweep.resolutionBandwidthMhz), 0),
    resolutionBandwidthAssumed: sweeps.some(({ resolutionBandwidthAssumed }) => resolutionBandwidthAssumed),
    rowCount: sum(({ usedRowCount }) => usedRowCount),
    cellCount: sum(({ cellCount }) => cellCount),
    invalidCellCount: sum(({ invalidCellCount }) => invalidCellCount),
    relativeCount: sweeps.filter(({ relative }) => relative).length,
    channels: first.channels.map((one) => sweptChannel(one, levels)),
  };
}

/** @returns the power sweeps among some files */
export function sweepsOf(imports: readonly ScanImport[]): Sweep[] {
  return imports.flatMap(({ sweep }) => (sweep === null ? [] : [sweep]));
}

function sweptChannel(
  { channel, centreMhz }: SweepChannelLevels,
  levels: readonly SweepLevels[],
): SweptChannel {
  const heard = levels.flatMap(({ place, crowd, channels }) => {
    const own = channels.find((one) => one.centreMhz === centreMhz);
    if (own === undefined || own.passCount === 0) return [];
    const [medianDbm, p90Dbm, p99Dbm, maxDbm] = [0.5, 0.1, 0.01, 0].map((share) =>
      sweepLevelDbm(own, share)!,
    );
    return [{ passCount: own.passCount, place, crowd, medianDbm, p90Dbm, p99Dbm, maxDbm }] as const;
  });
  const loudest = heard.reduce<(typeof heard)[number] | null>(
    (best, one) => (best === null || one.p99Dbm! > best.p99Dbm! ? one : best),
    null,
  );
  const silent = { passCount: 0, place: "", crowd: null };
  const none = { medianDbm: null, p90Dbm: null, p99Dbm: null, maxDbm: null };
  const {
    medianDbm = null,
    p90Dbm = null,
    p99Dbm = null,
    maxDbm = null,
    ...where
  } = loudest ?? { ...silent, ...none };
  return { channel, centreMhz, ...where, medianDbm, p90Dbm, p99Dbm, maxDbm };
}

function together(one: SweepChannelLevels, others: readonly SweepChannelLevels[]): SweepChannelLevels {
  const other = others.find(({ centreMhz }) => centreMhz === one.centreMhz);
  if (other === undefined) return one;
  const counts = new Map<number, number>();
  for (const { levelsDbm, atLevelCount } of [one, other])
    for (const [index, levelDbm] of levelsDbm.entries())
      counts.set(levelDbm, (counts.get(levelDbm) ?? 0) + atLevelCount[index]!);
  const rising = [...counts].sort(([a], [b]) => a - b);
  return {
    ...one,
    passCount: one.passCount + other.passCount,
    levelsDbm: rising.map(([levelDbm]) => levelDbm),
    atLevelCount: rising.map(([, count]) => count),
  };
}
