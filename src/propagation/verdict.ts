import { ArgumentError } from "../issues/index.js";
import { SLACK } from "../units/index.js";

/** What a working margin means, in one word. */
export type Verdict = "fails" | "thin" | "sound" | "ample";

/**
 * fails < 0 dB ≤ thin < 6 dB ≤ sound < 15 dB ≤ ample; a margin within 1e-9 dB of a limit has reached it.
 * @param workingMarginDb dB
 * @throws {ArgumentError} when the margin is NaN; ±Infinity is judged
 * @source common practice, no source for 6 and 15 dB
 * @example verdictOf(6); // => "sound"
 */
export function verdictOf(workingMarginDb: number): Verdict {
  if (Number.isNaN(workingMarginDb)) throw new ArgumentError("workingMarginDb", "a number", workingMarginDb);
  if (workingMarginDb < -SLACK) return "fails";
  if (workingMarginDb < 6 - SLACK) return "thin";
  return workingMarginDb < 15 - SLACK ? "sound" : "ample";
}
