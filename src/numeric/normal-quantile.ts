import { ArgumentError } from "../issues/index.js";
import { normalTail } from "./normal-tail.js";

/**
 * Standard normal quantile: the x that is exceeded with probability `tailRatio`, Q(x) = tailRatio.
 * A rational first guess (error below 4.5e-4), then Halley's step on Q three times: full double accuracy.
 * @param tailRatio probability above x, 0 < tailRatio < 1
 * @returns x in standard deviations; the quantile of p is the negative of this at p
 * @throws {ArgumentError} when tailRatio is not between 0 and 1
 * @source first guess: Abramowitz and Stegun 26.2.23, coefficients from memory (a wrong digit would only
 *   slow the iteration down)
 * @example normalTailQuantile(0.5); // => 0
 */
export function normalTailQuantile(tailRatio: number): number {
  if (!(tailRatio > 0 && tailRatio < 1))
    throw new ArgumentError("tailRatio", "a number above 0 and below 1", tailRatio);
  if (tailRatio === 0.5) return 0;
  if (tailRatio > 0.5) return -normalTailQuantile(1 - tailRatio);
  let x = firstGuess(tailRatio);
  for (let step = 0; step < 3; step++) {
    const tail = normalTail(x);
    const density = Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    const newton = (tail - tailRatio) / density;
    x += newton / (1 - 0.5 * x * newton);
  }
  return x;
}

function firstGuess(tailRatio: number): number {
  const t = Math.sqrt(-2 * Math.log(tailRatio));
  const upper = 2.515517 + t * (0.802853 + t * 0.010328);
  const lower = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - upper / lower;
}
