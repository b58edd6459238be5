import { ArgumentError, requirePositive } from "../issues/index.js";
import type { Complex } from "../numeric/index.js";
import { complexProduct, complexQuotient, complexSqrt, complexSum, real } from "../numeric/index.js";
import { SPEED_OF_LIGHT_M_PER_S } from "./free-space-path-loss.js";
import type { MaterialCoefficients } from "./material.js";
import { materialPermittivity } from "./material-permittivity.js";

/**
 * The electric field's direction: `TE` at right angles to the plane of incidence, `TM` within it. A vertical
 * antenna that looks along the floor at a vertical wall is TE, through a floor or ceiling it is TM.
 */
export type SlabPolarisation = "TE" | "TM" | "te" | "tm";

/** How the wave meets a wall. */
export interface WallIncidence {
  /** Angle between the path and the wall's normal, 0 ≤ … < 90; 0 (square on) if not given. */
  readonly incidenceDeg?: number | undefined;
  /** TE if not given: vertical antennas and vertical walls, and the greater loss. */
  readonly polarisation?: SlabPolarisation | undefined;
}

/** One layer of a wall. */
export interface WallLayer {
  /** A name of ITU-R P.2040-3 or its four coefficients. */
  readonly material: string | MaterialCoefficients;
  /** m, > 0, at most 100. */
  readonly thicknessM: number;
}

/** A layer as the wave sees it. */
export interface LayerWave {
  /** q: phase across the layer, rad; its imaginary part (≤ 0) is the attenuation in nepers. */
  readonly q: Complex;
  /** Z: wave impedance of the layer over that of the air, both across the wall. */
  readonly impedance: Complex;
}

/**
 * The layer's phase q = (2π·t/λ)·√(η − sin²θ) and impedance Z, which is cosθ/√(η − sin²θ) for TE and
 * √(η − sin²θ)/(η·cosθ) for TM; (Z − 1)/(Z + 1) is the Fresnel reflection off its face.
 * @throws {ArgumentError} as `materialPermittivity`; for a thickness, a frequency, an angle or a polarisation out of
 *   bounds
 * @source ITU-R P.2040-3 section 2.2.2
 */
export function layerWave(layer: WallLayer, frequencyMhz: number, incidence: WallIncidence): LayerWave {
  const { incidenceDeg = 0, polarisation = "TE" } = incidence;
  requireThickness(layer.thicknessM);
  if (!(incidenceDeg >= 0 && incidenceDeg < 90))
    throw new ArgumentError("incidenceDeg", "an angle of at least 0 and below 90", incidenceDeg);
  if (frequencyMhz > HIGHEST_MHZ)
    throw new ArgumentError("frequencyMhz", `at most ${HIGHEST_MHZ}`, frequencyMhz);
  const permittivity = materialPermittivity(layer.material, frequencyMhz);
  const angleRad = (incidenceDeg * Math.PI) / 180;
  const cosine = real(Math.cos(angleRad));
  const root = complexSqrt(complexSum(permittivity, real(-(Math.sin(angleRad) ** 2))));
  const wavelengthM = SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6);
  return {
    q: complexProduct(real((2 * Math.PI * layer.thicknessM) / wavelengthM), root),
    impedance: isTransverseMagnetic(polarisation)
      ? complexQuotient(root, complexProduct(permittivity, cosine))
      : complexQuotient(cosine, root),
  };
}

function requireThickness(thicknessM: number): void {
  requirePositive("thicknessM", thicknessM);
  if (thicknessM > THICKEST_M) throw new ArgumentError("thicknessM", `at most ${THICKEST_M} m`, thicknessM);
}

const THICKEST_M = 100;
const HIGHEST_MHZ = 1e9;

function isTransverseMagnetic(polarisation: string): boolean {
  const word = String(polarisation).toUpperCase();
  if (word !== "TE" && word !== "TM") throw new ArgumentError("polarisation", "TE or TM", polarisation);
  return word === "TM";
}
