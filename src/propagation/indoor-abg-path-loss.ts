import { requirePositive } from "../issues/index.js";
import type { IndoorPlace, IndoorSight } from "./indoor-abg-table.js";
import { indoorAbgRow } from "./indoor-abg-table.js";

/** Arguments of {@link indoorAbgPathLossDb}. */
export interface IndoorAbgPath {
  readonly place: IndoorPlace;
  readonly sight: IndoorSight;
  /** Antenna separation, m, > 0. */
  readonly distanceM: number;
  /** Carrier, MHz, > 0. */
  readonly frequencyMhz: number;
}

/**
 * Indoor basic transmission loss, both antennas on one floor:
 * L = 10·α·log10(d/m) + β + 10·γ·log10(f/GHz). Frequency counts in GHz: at 1 m and 2.45 GHz in an office
 * that is 42.5 dB, free space being 40.2 dB.
 * @returns the median over positions, dB, as computed at every distance: not held at free space, below which
 *   corridors and industrial halls in sight lie at 2.45 GHz (waveguiding); `pathLoss` says so where it happens
 * @throws {ArgumentError} for an unknown place or sight, a distance or frequency not finite and > 0
 * @source ITU-R P.1238-11 (2021) equation (1) and Table 2
 * @validity the row's distances and frequencies, see `indoorAbgRows`; outside them `pathLoss` adds a caveat
 * @example indoorAbgPathLossDb({ place: "corridor", sight: "LoS", distanceM: 10, frequencyMhz: 1000 }); // => 44.42
 */
export function indoorAbgPathLossDb(path: IndoorAbgPath): number {
  const { place, sight, distanceM, frequencyMhz } = path;
  const { alpha, betaDb, gamma } = indoorAbgRow(place, sight);
  requirePositive("distanceM", distanceM);
  requirePositive("frequencyMhz", frequencyMhz);
  return 10 * alpha * Math.log10(distanceM) + betaDb + 10 * gamma * Math.log10(frequencyMhz / 1000);
}
