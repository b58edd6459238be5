import { ArgumentError } from "../issues/index.js";
import { bisect, findRoot, trapezoid } from "../numeric/index.js";
import { dbToRatio } from "../units/index.js";

const LEAST_GAIN_DBI = 1.77;
const MOST_GAIN_DBI = 20;

/**
 * Directivity of a line of in-phase current, even along its length: the limit of many short elements end to
 * end. With X = π·length/wavelength and t = cos θ (θ from the rod) its field is sin θ · sin(X·t)/(X·t), so
 * D = 2 / ∫₋₁¹ (1 − t²)·(sin(X·t)/(X·t))² dt. From the short dipole's 1.5 it tends to 2·length/wavelength.
 * @param halfLengthRad X, ≥ 0
 * @returns ratio
 * @example lineSourceDirectivityRatio(0); // => 1.5
 */
export function lineSourceDirectivityRatio(halfLengthRad: number): number {
  // t = tanh u: the integrand then dies away as exp(−4u) and the trapezoidal rule converges exponentially.
  const half = trapezoid(
    (u) => {
      const t = Math.tanh(u);
      return (1 - t * t) ** 2 * sinc(halfLengthRad * t) ** 2;
    },
    0,
    10,
    80 + Math.ceil(12 * halfLengthRad),
  );
  return 1 / half;
}

/**
 * The length of rod that a gain asks for: the X at which `lineSourceDirectivityRatio` is the gain.
 * @throws {ArgumentError} when the gain lies outside 1.77 … 20 dBi
 */
export function collinearHalfLengthRad(gainDbi: number): number {
  if (!(gainDbi >= LEAST_GAIN_DBI && gainDbi <= MOST_GAIN_DBI))
    throw new ArgumentError(
      "gainDbi",
      `a number from ${LEAST_GAIN_DBI} to ${MOST_GAIN_DBI} for a collinear`,
      gainDbi,
    );
  const gainRatio = dbToRatio(gainDbi);
  return findRoot((x) => lineSourceDirectivityRatio(x) - gainRatio, 0, 2 * gainRatio, 1e-12);
}

/**
 * A collinear's power in a direction over its peak: (sin θ · sin(X·cos θ)/(X·cos θ))².
 * @returns 0 on the axis, 1 across it; zeros between the side lobes too, 13 dB and more below the peak
 */
export function collinearPatternRatio(sinRatio: number, cosRatio: number, halfLengthRad: number): number {
  return (sinRatio * sinc(halfLengthRad * cosRatio)) ** 2;
}

/**
 * The elevation beamwidth that goes with a collinear's gain: between the directions of half power, of the
 * line source that has just this gain without loss. Roughly 101.5 / (gain as a ratio), in degrees.
 * @param gainDbi of the antenna, dBi
 * @returns elevation beamwidth at half power, degrees
 * @throws {ArgumentError} when the gain lies outside 1.77 … 20 dBi
 * @source derived: see `lineSourceDirectivityRatio`
 * @validity rods with all elements fed alike; a real rod's side lobes and the gaps between them depend on
 *   its make
 * @example Math.round(collinearBeamwidthDeg(9)); // => 13
 */
export function collinearBeamwidthDeg(gainDbi: number): number {
  const halfLengthRad = collinearHalfLengthRad(gainDbi);
  // No side lobe reaches half of the peak: one crossing.
  const excess = (t: number): number => collinearPatternRatio(Math.sqrt(1 - t * t), t, halfLengthRad) - 1 / 2;
  return (2 * Math.asin(bisect(excess, 0, 1, 1e-14)) * 180) / Math.PI;
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(x) / x;
}
