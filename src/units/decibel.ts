/**
 * @param powerMw power, mW, ≥ 0. @returns dBm; -Infinity for no power.
 * @example toDbm(100); // => 20
 */
export function toDbm(powerMw: number): number {
  return 10 * Math.log10(powerMw);
}

/**
 * @param powerDbm power, dBm; -Infinity is no power. @returns mW
 * @example toMw(20); // => 100
 */
export function toMw(powerDbm: number): number {
  return 10 ** (powerDbm / 10);
}

/**
 * @param powerRatio ratio of two powers, ≥ 0. @returns dB; -Infinity for 0.
 * @example ratioToDb(100); // => 20
 */
export function ratioToDb(powerRatio: number): number {
  return 10 * Math.log10(powerRatio);
}

/**
 * @param gainDb dB. @returns the ratio of powers
 * @example dbToRatio(20); // => 100
 */
export function dbToRatio(gainDb: number): number {
  return 10 ** (gainDb / 10);
}

/** Probabilities and decibels are compared with this slack everywhere. */
export const SLACK = 1e-9;
