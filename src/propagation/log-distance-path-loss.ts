import { requireFinite, requirePositive } from "../issues/index.js";

/** Arguments of {@link logDistancePathLossDb}. */
export interface LogDistancePath {
  /** Antenna separation, m, > 0. */
  readonly distanceM: number;
  /** n: the loss grows by 10·n dB per tenfold distance; 2 is free space. */
  readonly exponent: number;
  /** L₀: loss at the reference distance, dB; it carries the frequency. */
  readonly referenceLossDb: number;
  /** d₀, m, > 0; 1 m if not given. */
  readonly referenceDistanceM?: number | undefined;
}

/**
 * Log-distance loss: L = L₀ + 10·n·log10(d/d₀), at every distance: not held at L₀ below d₀.
 * @returns loss, dB, positive = attenuation
 * @throws {ArgumentError} when a distance is not finite and > 0 or another figure is not finite
 * @source T. S. Rappaport, Wireless Communications, ch. 4 (textbook form)
 * @validity the distances and the room that exponent and reference loss were fitted in
 * @example logDistancePathLossDb({ distanceM: 10, exponent: 2.5, referenceLossDb: 40 }); // => 65
 */
export function logDistancePathLossDb(path: LogDistancePath): number {
  const { distanceM, exponent, referenceLossDb, referenceDistanceM = 1 } = path;
  requirePositive("distanceM", distanceM);
  requireFinite("exponent", exponent);
  requireFinite("referenceLossDb", referenceLossDb);
  requirePositive("referenceDistanceM", referenceDistanceM);
  return referenceLossDb + 10 * exponent * Math.log10(distanceM / referenceDistanceM);
}
