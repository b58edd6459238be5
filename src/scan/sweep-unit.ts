/** Hz in one of a unit. */
export const HZ_PER = { hz: 1, khz: 1e3, mhz: 1e6, ghz: 1e9 } as const;

/**
 * The unit in which a frequency is written, by its size: ten and more of a unit reach from 10 MHz to 10 GHz.
 * @returns Hz in one of the unit
 * @example sweepUnitHz(2_412_000); // => 1000
 */
export function sweepUnitHz(value: number): number {
  if (value >= 1e7) return HZ_PER.hz;
  if (value >= 1e4) return HZ_PER.khz;
  return value >= 10 ? HZ_PER.mhz : HZ_PER.ghz;
}

/**
 * The unit of a bin's width: the span's own, else whichever makes the bins fill the span.
 * @returns Hz in one of the unit; null where none does
 */
export function binUnitHz(value: number, spanHz: number, levelCount: number, unitHz: number): number | null {
  const units = [unitHz, HZ_PER.hz, HZ_PER.khz, HZ_PER.mhz];
  return units.find((candidateHz) => fits(levelCount, spanHz / (value * candidateHz)) !== "no") ?? null;
}

/**
 * Do so many levels fill a span of so many bins? One more than it holds is known from sweeps that repeat the
 * last; a bin width that was rounded makes the span's own count uneven.
 */
export function fits(levelCount: number, spannedCount: number): "yes" | "one more" | "no" {
  const over = levelCount - spannedCount;
  if (over > -1 + ROUNDING && over < 1 - ROUNDING) return "yes";
  return over >= 1 - ROUNDING && over < 2 - ROUNDING ? "one more" : "no";
}

const ROUNDING = 1e-3;
