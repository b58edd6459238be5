/** A level outside of this is no reading of a receiver: noise in 1 kHz at one end, contact at the other. */
const LOWEST_DBM = -130;
const HIGHEST_DBM = -5;

/** What `isLevel` accepts, in words. */
export const LEVEL_EXPECTED = `a level from ${LOWEST_DBM} to ${HIGHEST_DBM} dBm`;

/**
 * Can it be the level of a received signal?
 * @example isLevel(-60); // => true
 */
export function isLevel(signalDbm: number): boolean {
  return signalDbm >= LOWEST_DBM && signalDbm <= HIGHEST_DBM;
}
