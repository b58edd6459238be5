import { studentTTailQuantile } from "../numeric/index.js";

/** A reading that the others speak against. */
export interface FitOutlier {
  /** Of the reading, from 0. */
  readonly readingIndex: number;
  /** `not-heard`: where the model expects it well above the receiver's floor. */
  readonly kind: "more-loss" | "less-loss" | "not-heard";
  /** Measured − expected by the robust fit, dB; of one not heard the least that it can be. */
  readonly residualDb: number;
  /** The size from which on a reading is named, dB. */
  readonly limitDb: number;
}

/**
 * Readings so far off the robust fit that not one in twenty clean walks of this size would have one: beyond σ
 * times the Student quantile of 0.05/(2·n). One not heard is named when it must be that far above.
 * @param residualsDb of the robust fit, dB, one for each reading
 * @source Bonferroni's bound for the largest of n residuals (R. D. Cook, S. Weisberg, Residuals and Influence, 1982)
 */
export function fitOutliers(
  residualsDb: readonly number[],
  censored: readonly boolean[],
  sigmaDb: number,
  freedomCount: number,
): FitOutlier[] {
  const tailRatio = Math.max(WALK_RATIO / (2 * residualsDb.length), 1e-9);
  const limitDb = sigmaDb * studentTTailQuantile(tailRatio, freedomCount);
  return residualsDb.flatMap((residualDb, readingIndex) => {
    const isCensored = censored[readingIndex] === true;
    if (!(isCensored ? residualDb > limitDb : Math.abs(residualDb) > limitDb)) return [];
    const kind = isCensored ? "not-heard" : residualDb > 0 ? "more-loss" : "less-loss";
    return [{ readingIndex, kind, residualDb, limitDb } as const];
  });
}

const WALK_RATIO = 0.05;
