import type { Sweep, SweepBucket } from "../scan/index.js";
import { SLACK, toMw } from "../units/index.js";

/** What the power sweeps tell of one MHz, at the place and crowd where it is the worst. */
export interface SweptCell {
  /** Share of passes above the threshold, 0..1. */
  readonly busyRatio: number;
  /** Level exceeded in no more than the busy share of passes, dBm. */
  readonly levelDbm: number;
}

/** One stretch of time of one MHz. */
interface Stretch {
  readonly passCount: number;
  readonly busyRatio: number;
  readonly maxDbm: number;
}

/**
 * Busy share and level of each MHz by the power sweeps in dBm: the passes of one place and crowd pooled, the
 * worst of these taken. Exact where a stretch of time holds one pass (under some two minutes of passes a
 * second); of a stretch of several the most that its mean allows, mean / threshold, so never too little.
 * @param thresholdDbm busy above this power in one MHz, compared with a slack of 1e-9 dB
 * @param busyShareRatio share of passes that may exceed `levelDbm`, 0..1
 * @returns cell i is 2400 + i … 2401 + i MHz; null where no sweep in dBm read it
 */
export function sweptCells(
  sweeps: readonly Sweep[],
  thresholdDbm: number,
  busyShareRatio: number,
): (SweptCell | null)[] {
  const groups = new Map<string, SweepBucket[]>();
  for (const { relative, place, crowd, buckets } of sweeps) {
    const key = JSON.stringify([place, crowd]);
    if (!relative) groups.set(key, [...(groups.get(key) ?? []), ...buckets]);
  }
  const cellCount = Math.max(0, ...[...groups.values()].flat().map(({ maxDbm }) => maxDbm.length));
  return Array.from({ length: cellCount }, (_, mhz) => {
    const cells = [...groups.values()].flatMap((buckets) => {
      const stretches = buckets.flatMap((bucket) => stretchOf(bucket, mhz, thresholdDbm) ?? []);
      return stretches.length === 0 ? [] : [cellOf(stretches, busyShareRatio)];
    });
    if (cells.length === 0) return null;
    return {
      busyRatio: Math.max(...cells.map(({ busyRatio }) => busyRatio)),
      levelDbm: Math.max(...cells.map(({ levelDbm }) => levelDbm)),
    };
  });
}

function stretchOf(bucket: SweepBucket, mhz: number, thresholdDbm: number): Stretch | null {
  const [meanDbm, maxDbm] = [bucket.meanDbm[mhz] ?? null, bucket.maxDbm[mhz] ?? null];
  if (meanDbm === null || maxDbm === null) return null;
  const passCount = passesIn(bucket);
  if (maxDbm <= thresholdDbm + SLACK) return { passCount, maxDbm, busyRatio: 0 };
  const mostRatio = Math.min(1, toMw(meanDbm) / toMw(thresholdDbm));
  return { passCount, maxDbm, busyRatio: Math.max(mostRatio, 1 / passCount) };
}

/** Passes of a stretch of time: as many as the channel that most of them cover has. */
export function passesIn({ channels }: SweepBucket): number {
  return Math.max(1, ...channels.map(({ passCount }) => passCount));
}

function cellOf(stretches: readonly Stretch[], busyShareRatio: number): SweptCell {
  const passCount = stretches.reduce((sum, stretch) => sum + stretch.passCount, 0);
  const busyCount = stretches.reduce((sum, stretch) => sum + stretch.passCount * stretch.busyRatio, 0);
  const falling = [...stretches].sort((a, b) => b.maxDbm - a.maxDbm);
  let aboveCount = 0;
  const level = falling.find((stretch) => {
    aboveCount += stretch.passCount;
    return aboveCount / passCount > busyShareRatio + SLACK;
  });
  return { busyRatio: busyCount / passCount, levelDbm: (level ?? falling[falling.length - 1]!).maxDbm };
}
