import { requirePositive } from "../issues/index.js";

/** Exact: SI definition of the metre. */
export const SPEED_OF_LIGHT_M_PER_S = 299_792_458;

/**
 * Free-space basic transmission loss between isotropic antennas: L = 20·log10(4·π·d·f / c).
 * @param distanceM antenna separation, m, > 0
 * @param frequencyMhz carrier, MHz, > 0
 * @returns loss, dB, positive = attenuation
 * @throws {ArgumentError} when an argument is not finite and > 0
 * @source ITU-R P.525
 * @validity far field, d well above the wavelength (0.12 m at 2450 MHz); no walls, no ground
 * @example freeSpacePathLossDb(1, 2450); // => 40.23110490917403
 */
export function freeSpacePathLossDb(distanceM: number, frequencyMhz: number): number {
  requirePositive("distanceM", distanceM);
  requirePositive("frequencyMhz", frequencyMhz);
  return 20 * Math.log10((4 * Math.PI * distanceM * frequencyMhz * 1e6) / SPEED_OF_LIGHT_M_PER_S);
}
