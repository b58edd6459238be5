/**
 * Directivity of the half-wave dipole, 4 / Cin(2π), as a ratio: 2.15 dBi.
 * @source C. A. Balanis, Antenna Theory, section 4.6 (half-wavelength dipole; from memory)
 */
export const DIPOLE_PEAK_RATIO = 4 / 2.4376533930572244;

/**
 * The half-wave dipole's power in a direction over its peak: (cos(π/2·cos θ) / sin θ)², θ from the axis.
 * @param sinRatio @param cosRatio sine and cosine of θ; both, so that nothing is lost close to the axis
 * @returns 0 on the axis, 1 across it
 */
export function dipolePatternRatio(sinRatio: number, cosRatio: number): number {
  if (sinRatio === 0) return 0;
  // cos(π/2·c) = sin(π/2·(1 − c)), and 1 − c = s² / (1 + c): no difference of near-equal numbers.
  const field = Math.sin(((Math.PI / 2) * sinRatio ** 2) / (1 + Math.abs(cosRatio))) / sinRatio;
  return field ** 2;
}
