import type { Verdict } from "../propagation/index.js";
import { SLACK } from "../units/index.js";

/** Verdicts with their marks, so that none hangs on colour; the worst first. */
const VERDICTS: readonly (readonly [verdict: Verdict, mark: string])[] = [
  ["fails", "x"],
  ["thin", "!"],
  ["sound", "o"],
  ["ample", "*"],
];

/** Working margins at which the verdict changes, dB: those of `verdictOf`. */
export const VERDICT_LIMITS_DB: readonly number[] = [0, 6, 15];

/** @returns how many verdict limits a working margin has reached, 0 (fails) to 3 (ample) */
export function limitsReachedCount(workingMarginDb: number): number {
  return VERDICT_LIMITS_DB.filter((limitDb) => workingMarginDb >= limitDb - SLACK).length;
}

/** The mark of a working margin. @example verdictMark(7.2); // => "o" */
export function verdictMark(workingMarginDb: number): string {
  return VERDICTS[limitsReachedCount(workingMarginDb)]![1];
}

/** The verdict of a working margin, as `verdictOf` gives it. @example verdictWord(7.2); // => "sound" */
export function verdictWord(workingMarginDb: number): Verdict {
  return VERDICTS[limitsReachedCount(workingMarginDb)]![0];
}
