import { requireFinite, requirePositive } from "../issues/index.js";
import type { RadioProfile } from "./profile.js";

/** Thermal noise density, dBm/Hz: k·T at 290 K, rounded as the trade does (−173.975 unrounded). */
export const THERMAL_NOISE_DBM_PER_HZ = -174;

/**
 * Receiver noise in its bandwidth: −174 dBm/Hz + 10·log10(bandwidth in Hz) + noise figure.
 * @param receiver bandwidthMhz noise bandwidth, MHz, > 0; noiseFigureDb dB
 * @returns dBm, referred to the antenna connector
 * @throws {ArgumentError} when the bandwidth is not finite and > 0 or the noise figure is not finite
 * @source k·T₀ with T₀ = 290 K (IEEE definition of noise figure)
 * @example noiseFloorDbm({ bandwidthMhz: 1, noiseFigureDb: 10 }); // => -104
 */
export function noiseFloorDbm(receiver: {
  readonly bandwidthMhz: number;
  readonly noiseFigureDb: number;
}): number {
  requirePositive("bandwidthMhz", receiver.bandwidthMhz);
  requireFinite("noiseFigureDb", receiver.noiseFigureDb);
  return THERMAL_NOISE_DBM_PER_HZ + 10 * Math.log10(receiver.bandwidthMhz * 1e6) + receiver.noiseFigureDb;
}

/**
 * Noise floor of a profile's receiver.
 * @returns noise power in the receiver, dBm
 * @example profileNoiseFloorDbm(findProfile("raster-13")); // => -104
 */
export function profileNoiseFloorDbm(profile: RadioProfile): number {
  return noiseFloorDbm({
    bandwidthMhz: profile.bandwidthMhz.value,
    noiseFigureDb: profile.noiseFigureDb.value,
  });
}
