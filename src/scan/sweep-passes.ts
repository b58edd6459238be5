import { PICTURE_MHZ_COUNT, SweepBuckets } from "./sweep-buckets.js";
import type { SweepGather } from "./sweep-buckets.js";
import { coverMhz } from "./sweep-hop.js";
import type { Hop, HopSpan } from "./sweep-hop.js";
import type { SweepReceiver } from "./sweep.js";

/** A hop, and what it shares with those met before it. */
export interface KnownHop {
  readonly hop: Hop;
  /** The pass in which it was last read. */
  passIndex: number;
  /** Hops that cover half of it or more, or it of them: both can't belong to one pass. */
  readonly rivals: readonly KnownHop[];
  /** Hops that cover some of its bins. */
  readonly neighbours: readonly {
    readonly known: KnownHop;
    readonly fromIndex: number;
    readonly toIndex: number;
  }[];
}

/** A pass may miss this share of a passband and still cover it: rounding of bin widths. */
const UNCOVERED_RATIO = 1e-3;

/**
 * Puts hops together to passes. A pass ends when a range already covered comes again, wherever in the band
 * it began and whichever way it runs; time stamps don't end it.
 */
export class SweepPasses {
  readonly hops: KnownHop[] = [];
  passCount = 0;
  firstMs: number | null = null;
  lastMs: number | null = null;
  readonly buckets: SweepBuckets;
  private readonly sumsMw: Float64Array;
  private readonly coveredMhz: Float64Array;
  private gather: SweepGather | null = null;
  private patched = new Float64Array(0);

  constructor(private readonly receiver: SweepReceiver) {
    this.buckets = new SweepBuckets(receiver.channels.length);
    this.sumsMw = new Float64Array(receiver.channels.length);
    this.coveredMhz = new Float64Array(receiver.channels.length);
  }

  learn(hop: Hop): KnownHop {
    const shares = this.hops.map((known) => ({ known, sharedMhz: sharedMhz(hop, known.hop) }));
    const isRival = ({ known, sharedMhz: shared }: (typeof shares)[number]): boolean =>
      shared >= Math.min(widthMhz(hop), widthMhz(known.hop)) / 2;
    const learnt: KnownHop = {
      hop,
      passIndex: -1,
      rivals: shares.filter(isRival).map(({ known }) => known),
      neighbours: shares
        .filter((share) => share.sharedMhz > hop.binWidthMhz / 2 && !isRival(share))
        .map(({ known }) => ({ known, ...binsWithin(hop, known.hop) })),
    };
    for (const { known } of shares.filter(isRival)) (known.rivals as KnownHop[]).push(learnt);
    for (const { known } of shares.filter((share) => share.sharedMhz > 0 && !isRival(share))) {
      const bins = binsWithin(known.hop, hop);
      if (bins.toIndex > bins.fromIndex)
        (known.neighbours as { known: KnownHop; fromIndex: number; toIndex: number }[]).push({
          known: learnt,
          ...bins,
        });
    }
    this.hops.push(learnt);
    return learnt;
  }

  /** Would this hop begin a new pass? */
  begins({ passIndex, rivals }: KnownHop): boolean {
    if (this.gather === null || passIndex === this.passCount) return true;
    for (const rival of rivals) if (rival.passIndex === this.passCount) return true;
    return false;
  }

  /** Ends the pass that is open, and opens the next. */
  begin(timeMs: number | null): void {
    this.end();
    this.passCount++;
    this.gather = this.buckets.at(timeMs);
    if (timeMs === null) return;
    this.firstMs = Math.min(this.firstMs ?? Infinity, timeMs);
    this.lastMs = Math.max(this.lastMs ?? -Infinity, timeMs);
  }

  /**
   * Adds a hop to the open pass.
   * @param powerMw by bin; NaN is a hole
   * @param holeCount holes, where they are known to be none: 0
   * @returns bins in the band that were holes, and bins that another hop of this pass had covered
   */
  add(
    known: KnownHop,
    powerMw: Float64Array,
    holeCount: number,
  ): { invalidCount: number; droppedCount: number } {
    const { hop } = known;
    known.passIndex = this.passCount;
    const covered = known.neighbours.filter((other) => other.known.passIndex === this.passCount);
    const patch = holeCount > 0 || covered.length > 0 ? this.patch(known, powerMw, covered) : null;
    const power = patch?.powerMw ?? powerMw;
    const totalMw = this.picture(hop, power);
    for (let index = 0; index < hop.weights.length; index++) {
      const { floorRatio, fromIndex, extraRatios, coveredMhz } = hop.weights[index]!;
      let sumMw = floorRatio * totalMw;
      for (let at = 0; at < extraRatios.length; at++) sumMw += extraRatios[at]! * power[fromIndex + at]!;
      this.sumsMw[index] = this.sumsMw[index]! + sumMw;
      this.coveredMhz[index] = this.coveredMhz[index]! + coveredMhz;
    }
    return patch ?? NO_HOLES;
  }

  end(): void {
    if (this.gather === null) return;
    const neededMhz = this.receiver.bandwidthMhz * (1 - UNCOVERED_RATIO);
    for (let index = 0; index < this.sumsMw.length; index++)
      if (this.coveredMhz[index]! >= neededMhz) this.gather.histogram.add(index, this.sumsMw[index]!);
    this.sumsMw.fill(0);
    this.coveredMhz.fill(0);
    this.gather = null;
  }

  /** The hop with holes and bins covered twice left out, and the passbands less so much. */
  private patch(
    { hop }: KnownHop,
    powerMw: Float64Array,
    covered: KnownHop["neighbours"],
  ): { powerMw: Float64Array; invalidCount: number; droppedCount: number } {
    if (this.patched.length < hop.binCount) this.patched = new Float64Array(hop.binCount);
    let [invalidCount, droppedCount] = [0, 0];
    for (let bin = hop.fromIndex; bin < hop.toIndex; bin++) {
      const isDropped = covered.some(({ fromIndex, toIndex }) => bin >= fromIndex && bin < toIndex);
      const isHole = Number.isNaN(powerMw[bin]!);
      this.patched[bin] = isDropped || isHole ? 0 : powerMw[bin]!;
      if (isDropped) droppedCount++;
      else if (isHole) invalidCount++;
      if (isDropped || isHole) this.uncover(hop, bin);
    }
    return { powerMw: this.patched, invalidCount, droppedCount };
  }

  private uncover(hop: Hop, bin: number): void {
    const { channels, bandwidthMhz } = this.receiver;
    for (let index = 0; index < channels.length; index++) {
      const { centreMhz } = channels[index]!;
      const passband = [centreMhz - bandwidthMhz / 2, centreMhz + bandwidthMhz / 2] as const;
      this.coveredMhz[index] = this.coveredMhz[index]! - coverMhz(hop, bin, passband);
    }
  }

  /** @returns the hop's power, its MHz noted for the picture */
  private picture(hop: Hop, powerMw: Float64Array): number {
    const { mhzStartIndexes, bandwidthRatio, binWidthMhz } = hop;
    const { sumMw, maxMw, readCounts } = this.gather!;
    let totalMw = 0;
    let from = mhzStartIndexes[0]!;
    for (let mhz = 0; mhz < PICTURE_MHZ_COUNT; mhz++) {
      const to = mhzStartIndexes[mhz + 1]!;
      if (to === from) continue;
      let cellMw = 0;
      for (let bin = from; bin < to; bin++) cellMw += powerMw[bin]!;
      totalMw += cellMw;
      const densityMw = (cellMw * bandwidthRatio) / ((to - from) * binWidthMhz);
      sumMw[mhz] = sumMw[mhz]! + densityMw;
      if (densityMw > maxMw[mhz]!) maxMw[mhz] = densityMw;
      readCounts[mhz] = readCounts[mhz]! + 1;
      from = to;
    }
    return totalMw;
  }
}

const NO_HOLES = { invalidCount: 0, droppedCount: 0 };

function widthMhz({ binWidthMhz, binCount }: HopSpan): number {
  return binWidthMhz * binCount;
}

function highMhz(span: HopSpan): number {
  return span.lowMhz + widthMhz(span);
}

function sharedMhz(a: HopSpan, b: HopSpan): number {
  return Math.max(0, Math.min(highMhz(a), highMhz(b)) - Math.max(a.lowMhz, b.lowMhz));
}

/** The bins of one span whose centre lies within another. */
function binsWithin(span: HopSpan, other: HopSpan): { fromIndex: number; toIndex: number } {
  const indexFrom = (mhz: number): number =>
    Math.max(0, Math.min(span.binCount, Math.ceil((mhz - span.lowMhz) / span.binWidthMhz - 0.5)));
  return { fromIndex: indexFrom(other.lowMhz), toIndex: indexFrom(highMhz(other)) };
}
