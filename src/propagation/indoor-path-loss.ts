import { requireFinite, requireNonNegative, requirePositive } from "../issues/index.js";

/** Arguments of {@link indoorPathLossDb}. */
export interface IndoorPath {
  /** Antenna separation, m, > 0. */
  readonly distanceM: number;
  /** Carrier, MHz, > 0. */
  readonly frequencyMhz: number;
  /** N: dB per tenfold distance; 20 is free space. See {@link buildingLosses}. */
  readonly distancePowerCoefficient: number;
  /** Lf(n): loss of all floors between the antennas, dB, ≥ 0; 0 on the same floor. */
  readonly floorLossDb: number;
}

/**
 * Indoor basic transmission loss: L = 20·log10(f/MHz) + N·log10(d/m) + Lf(n) − 28.
 * @returns the median over positions, dB; with N = 22 it lies below free space up to 1.7 m
 * @throws {ArgumentError} when distance or frequency is not finite and > 0, N is not finite, or the floor
 *   loss is not finite and ≥ 0
 * @source ITU-R P.1238 (the form of editions up to −10), read as ns-3 states it
 * @validity d > 1 m, one building, 0.9–100 GHz; N is measured, so it holds for its kind of building
 * @example indoorPathLossDb({ distanceM: 1, frequencyMhz: 1000, distancePowerCoefficient: 22, floorLossDb: 0 }); // => 32
 */
export function indoorPathLossDb(path: IndoorPath): number {
  const { distanceM, frequencyMhz, distancePowerCoefficient, floorLossDb } = path;
  requirePositive("distanceM", distanceM);
  requirePositive("frequencyMhz", frequencyMhz);
  requireFinite("distancePowerCoefficient", distancePowerCoefficient);
  requireNonNegative("floorLossDb", floorLossDb);
  return 20 * Math.log10(frequencyMhz) + distancePowerCoefficient * Math.log10(distanceM) + floorLossDb - 28;
}
