/** No receiver gives levels below this, dBm: a lower figure stands for "nothing". */
export const LOWEST_SWEEP_DBM = -200;

const TABLE_COUNT = 100 * -LOWEST_SWEEP_DBM + 1;
/** `powers[i]` = 10^(−i/1000): the power of −i/100 dBm in mW; made when the first sweep asks for it. */
let powers: Float64Array | null = null;
const NEPERS_PER_DB = Math.LN10 / 10;

/** @returns the table of 10^(L/10) by hundredths of a dB below 0 dBm, down to −200 dBm */
export function powersByHundredth(): Float64Array {
  return (powers ??= Float64Array.from({ length: TABLE_COUNT }, (_, index) => 10 ** (-index / 1000)));
}

/**
 * 10^(L/10) by table and, for what lies between its steps, a series: right to 1e-11.
 * @param levelDbm −200 … 0
 * @returns mW; NaN for a level outside
 * @example sweepPowerMw(-30); // => 0.001
 */
export function sweepPowerMw(levelDbm: number): number {
  if (!(levelDbm >= LOWEST_SWEEP_DBM && levelDbm <= 0)) return NaN;
  const hundredths = Math.floor(-levelDbm * 100);
  const x = (-levelDbm - hundredths / 100) * -NEPERS_PER_DB;
  return powersByHundredth()[hundredths]! * (1 + x * (1 + (x / 2) * (1 + x / 3)));
}
