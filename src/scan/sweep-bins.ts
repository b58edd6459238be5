import type { KnownHop } from "./sweep-passes.js";

/** The bins of a sweep inside 2400–2500 MHz. */
export interface SweepBins {
  readonly binCount: number;
  readonly startMhz: number;
  readonly stopMhz: number;
  readonly binWidthMhz: number;
}

/**
 * Counts the distinct bins of a sweep's hops, and their outer edges.
 * @param isMet of the one hop of long rows, which bins were ever read; null: all of them
 */
export function sweepBins(hops: readonly KnownHop[], isMet: Uint8Array | null): SweepBins {
  let binCount = 0;
  let [startMhz, stopMhz] = [Infinity, -Infinity];
  const counted = new Set<KnownHop>();
  for (const known of hops) {
    const { hop, rivals, neighbours } = known;
    if (rivals.some((rival) => counted.has(rival))) continue;
    counted.add(known);
    const again = neighbours.filter((other) => counted.has(other.known));
    for (let bin = hop.fromIndex; bin < hop.toIndex; bin++) {
      if (isMet !== null && isMet[bin] === 0) continue;
      if (again.some(({ fromIndex, toIndex }) => bin >= fromIndex && bin < toIndex)) continue;
      binCount++;
      startMhz = Math.min(startMhz, hop.lowMhz + bin * hop.binWidthMhz);
      stopMhz = Math.max(stopMhz, hop.lowMhz + (bin + 1) * hop.binWidthMhz);
    }
  }
  const binWidthMhz = hops.find(({ hop }) => hop.toIndex > hop.fromIndex)?.hop.binWidthMhz ?? 0;
  return { binCount, startMhz: finite(startMhz), stopMhz: finite(stopMhz), binWidthMhz };
}

function finite(mhz: number): number {
  return Number.isFinite(mhz) ? mhz : 0;
}
