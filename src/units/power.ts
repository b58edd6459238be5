/**
 * The sum of powers given in dBm, added in milliwatts.
 * @param powersDbm dBm, any length; -Infinity is no power
 * @returns dBm; -Infinity when empty
 * @example sumPowersDbm([-60, -60]); // => -56.98970004336019
 */
export function sumPowersDbm(powersDbm: Iterable<number>): number {
  let totalMw = 0;
  for (const powerDbm of powersDbm) totalMw += 10 ** (powerDbm / 10);
  return 10 * Math.log10(totalMw);
}
