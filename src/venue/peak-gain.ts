import { antennaPeakGainDbi } from "../propagation/index.js";
import type { Antenna } from "../propagation/index.js";

/** @returns an antenna's gain where it is greatest, dBi; the profile's, which has no direction, where none is named */
export function peakGainDbi(antenna: Antenna | null, profileGainDbi: number): number {
  return antenna === null ? profileGainDbi : antennaPeakGainDbi(antenna);
}
