import { brickWall, overlapDbByOffset, READ_BAND_MHZ } from "../band/index.js";
import { dbToRatio } from "../units/index.js";
import type { SweepReceiver } from "./sweep.js";

/** A stretch of equal bins, lowest first: bin k spans low + k·width to low + (k + 1)·width. */
export interface HopSpan {
  readonly lowMhz: number;
  readonly binWidthMhz: number;
  readonly binCount: number;
}

/** What one channel takes of a hop, bin by bin. */
export interface HopWeights {
  /** The least weight of any bin: what every bin puts in at least. */
  readonly floorRatio: number;
  /** The bins that put in more, from one index up to another. */
  readonly fromIndex: number;
  readonly toIndex: number;
  /** How much more, from `fromIndex` on. */
  readonly extraRatios: Float64Array;
  /** Width of the passband that the hop covers. */
  readonly coveredMhz: number;
}

/** One span of bins, prepared for the channels of a receiver. */
export interface Hop extends HopSpan {
  /** The bins whose centre lies in 2400–2500 MHz, from one index up to another. */
  readonly fromIndex: number;
  readonly toIndex: number;
  readonly weights: readonly HopWeights[];
  /** Where the bins of each whole MHz of the band start, among those of the hop; 101 entries. */
  readonly mhzStartIndexes: Int32Array;
  /** Bin spacing ÷ resolution bandwidth. */
  readonly bandwidthRatio: number;
}

const [LOW_MHZ, HIGH_MHZ] = READ_BAND_MHZ;

/** Prepares a span: its selectivity averaged over each bin, in closed form, times spacing ÷ resolution bandwidth. */
export function hopOf(span: HopSpan, receiver: SweepReceiver, resolutionBandwidthMhz: number): Hop {
  const { lowMhz, binWidthMhz, binCount } = span;
  const firstIndexFrom = (mhz: number): number =>
    Math.max(0, Math.min(binCount, Math.ceil((mhz - lowMhz) / binWidthMhz - 0.5 - 1e-6)));
  const fromIndex = firstIndexFrom(LOW_MHZ);
  const pastIndex = Math.floor((HIGH_MHZ - lowMhz) / binWidthMhz - 0.5 + 1e-6) + 1;
  const toIndex = Math.max(fromIndex, Math.min(binCount, pastIndex));
  const bandwidthRatio = binWidthMhz / resolutionBandwidthMhz;
  const overlapDb = overlapDbByOffset(brickWall(binWidthMhz), receiver.selectivity);
  const bins = { span, fromIndex, toIndex };
  const weights = receiver.channels.map(({ centreMhz }) =>
    weightsOf(
      bins,
      (index) => {
        const binCentreMhz = lowMhz + (index + 0.5) * binWidthMhz;
        return dbToRatio(overlapDb(centreMhz - binCentreMhz)) * bandwidthRatio;
      },
      [centreMhz - receiver.bandwidthMhz / 2, centreMhz + receiver.bandwidthMhz / 2],
    ),
  );
  const mhzStartIndexes = Int32Array.from({ length: HIGH_MHZ - LOW_MHZ + 1 }, (_, mhz) =>
    Math.max(fromIndex, Math.min(toIndex, firstIndexFrom(LOW_MHZ + mhz))),
  );
  mhzStartIndexes[0] = fromIndex;
  mhzStartIndexes[HIGH_MHZ - LOW_MHZ] = toIndex;
  return { ...span, fromIndex, toIndex, weights, mhzStartIndexes, bandwidthRatio };
}

interface HopBins {
  readonly span: HopSpan;
  readonly fromIndex: number;
  readonly toIndex: number;
}

function weightsOf(
  { span, fromIndex, toIndex }: HopBins,
  weightRatio: (index: number) => number,
  passbandMhz: readonly [number, number],
): HopWeights {
  const ratios = Float64Array.from({ length: toIndex - fromIndex }, (_, index) =>
    weightRatio(fromIndex + index),
  );
  const floorRatio = ratios.reduce((least, ratio) => Math.min(least, ratio), Infinity);
  const isMore = (ratio: number): boolean => ratio > floorRatio * (1 + 1e-9);
  const first = ratios.findIndex(isMore);
  let past = ratios.length;
  while (past > 0 && !isMore(ratios[past - 1]!)) past--;
  const start = Math.max(0, first);
  let coveredMhz = 0;
  for (let index = fromIndex; index < toIndex; index++) coveredMhz += coverMhz(span, index, passbandMhz);
  return {
    floorRatio: Number.isFinite(floorRatio) ? floorRatio : 0,
    fromIndex: fromIndex + start,
    toIndex: fromIndex + Math.max(start, past),
    extraRatios: ratios.slice(start, Math.max(start, past)).map((ratio) => ratio - floorRatio),
    coveredMhz,
  };
}

/** @returns the width that a bin and a passband share, MHz */
export function coverMhz(
  { lowMhz, binWidthMhz }: HopSpan,
  binIndex: number,
  [passLowMhz, passHighMhz]: readonly [lowMhz: number, highMhz: number],
): number {
  const fromMhz = Math.max(passLowMhz, lowMhz + binIndex * binWidthMhz);
  const toMhz = Math.min(passHighMhz, lowMhz + (binIndex + 1) * binWidthMhz);
  return Math.max(0, toMhz - fromMhz);
}
