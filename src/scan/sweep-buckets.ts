import { READ_BAND_MHZ } from "../band/index.js";
import { toDbm } from "../units/index.js";
import type { SweepBucket, SweepReceiver } from "./sweep.js";
import { SweepHistogram } from "./sweep-histogram.js";

/** Width of the picture's columns is one MHz. */
export const PICTURE_MHZ_COUNT = READ_BAND_MHZ[1] - READ_BAND_MHZ[0];
/** Stretches of time are merged in pairs when there are more. */
const MOST_BUCKETS = 128;
const FIRST_LENGTH_MS = 1000;

/** What is gathered in one stretch of time. */
export class SweepGather {
  readonly histogram: SweepHistogram;
  readonly sumMw = new Float64Array(PICTURE_MHZ_COUNT);
  readonly maxMw = new Float64Array(PICTURE_MHZ_COUNT);
  readonly readCounts = new Uint32Array(PICTURE_MHZ_COUNT);

  constructor(readonly channelCount: number) {
    this.histogram = new SweepHistogram(channelCount);
  }

  merge(other: SweepGather): this {
    this.histogram.merge(other.histogram);
    for (let mhz = 0; mhz < PICTURE_MHZ_COUNT; mhz++) {
      this.sumMw[mhz] = this.sumMw[mhz]! + other.sumMw[mhz]!;
      this.maxMw[mhz] = Math.max(this.maxMw[mhz]!, other.maxMw[mhz]!);
      this.readCounts[mhz] = this.readCounts[mhz]! + other.readCounts[mhz]!;
    }
    return this;
  }
}

/** Stretches of time of one length, as many as needed up to a limit; then twice as long, and half as many. */
export class SweepBuckets {
  private lengthMs = FIRST_LENGTH_MS;
  private gathered = new Map<number | null, SweepGather>();

  constructor(private readonly channelCount: number) {}

  /** @returns the stretch that a time falls into; null: without a time */
  at(timeMs: number | null): SweepGather {
    const key = timeMs === null ? null : Math.floor(timeMs / this.lengthMs);
    const known = this.gathered.get(key);
    if (known !== undefined) return known;
    const made = new SweepGather(this.channelCount);
    this.gathered.set(key, made);
    if (this.gathered.size <= MOST_BUCKETS) return made;
    while (this.gathered.size > MOST_BUCKETS) this.mergePairs();
    return this.at(timeMs);
  }

  whole(): SweepGather {
    const whole = new SweepGather(this.channelCount);
    for (const gather of this.gathered.values()) whole.merge(gather);
    return whole;
  }

  buckets(receiver: SweepReceiver): SweepBucket[] {
    const order = ([a]: [number | null, unknown], [b]: [number | null, unknown]): number =>
      (a ?? -Infinity) - (b ?? -Infinity);
    return [...this.gathered].sort(order).map(([key, { histogram, sumMw, maxMw, readCounts }]) => ({
      startMs: key === null ? null : key * this.lengthMs,
      lengthMs: this.lengthMs,
      channels: histogram.levels(receiver),
      meanDbm: Array.from(readCounts, (count, mhz) => (count === 0 ? null : toDbm(sumMw[mhz]! / count))),
      maxDbm: Array.from(readCounts, (count, mhz) => (count === 0 ? null : toDbm(maxMw[mhz]!))),
    }));
  }

  private mergePairs(): void {
    const merged = new Map<number | null, SweepGather>();
    for (const [key, gather] of this.gathered) {
      const wider = key === null ? null : Math.floor(key / 2);
      const known = merged.get(wider);
      if (known === undefined) merged.set(wider, gather);
      else known.merge(gather);
    }
    this.gathered = merged;
    this.lengthMs *= 2;
  }
}
