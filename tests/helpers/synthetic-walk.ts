import { normalTailQuantile, seededRandom } from "../../src/numeric/index.js";

/** A walk with known parameters. */
export interface WalkSetting {
  readonly seed: number;
  readonly readingCount: number;
  readonly exponent: number;
  readonly referenceLossDb: number;
  readonly sigmaDb: number;
  /** Losses above this are not heard. */
  readonly limitDb?: number;
  /** Share of readings that are 15 dB off, either way. */
  readonly outlierRatio?: number;
}

/** Readings log-uniform from 2 to 50 m with normal scatter. */
export function syntheticWalk(setting: WalkSetting): {
  distanceM: number[];
  lossDb: number[];
  censored: boolean[];
} {
  const { readingCount, exponent, referenceLossDb, sigmaDb, limitDb = Infinity, outlierRatio = 0 } = setting;
  const random = seededRandom(setting.seed);
  const distanceM = Array.from({ length: readingCount }, () => 2 * 25 ** random());
  const truth = distanceM.map((each) => {
    const scatter = -sigmaDb * normalTailQuantile(0.5 * 2 ** -52 + random() * (1 - 2 ** -52));
    const stray = random() < outlierRatio ? (random() < 0.5 ? -15 : 15) : 0;
    return referenceLossDb + 10 * exponent * Math.log10(each) + scatter + stray;
  });
  return {
    distanceM,
    lossDb: truth.map((each) => Math.min(each, limitDb)),
    censored: truth.map((each) => each > limitDb),
  };
}
