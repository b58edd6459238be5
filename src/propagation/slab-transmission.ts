import { complexExpm1, complexProduct, complexQuotient, complexSum, real } from "../numeric/index.js";
import type { WallIncidence, WallLayer } from "./slab-wave.js";
import { layerWave } from "./slab-wave.js";
import type { WallTransmission } from "./wall-transmission.js";
import { wallTransmission } from "./wall-transmission.js";

/** A single slab and the wave that meets it. */
export interface SlabQuery extends WallLayer, WallIncidence {
  /** MHz, > 0. */
  readonly frequencyMhz: number;
}

/**
 * A single slab in air, standing waves included:
 * T = (1 − r²)·e^(−jq) / (1 − r²·e^(−2jq)), R = r·(1 − e^(−2jq)) / (1 − r²·e^(−2jq)), with
 * q = (2π·t/λ)·√(η − sin²θ) and r the Fresnel reflection of TE or TM. Metal is opaque: its loss is held at
 * 100 dB (assumed) and a caveat says so.
 * @throws {ArgumentError} for an unknown material or polarisation, a thickness not above 0 and up to 100 m,
 *   an angle not from 0 to below 90°, a frequency not > 0 and up to 1e9 MHz, a permittivity
 *   below 1
 * @source ITU-R P.2040-3 equations (43), (44)
 * @validity a plane wave on an even slab wider than the first Fresnel zone; the material's frequency range,
 *   outside which a caveat says so
 * @example slabTransmission({ material: "floorboard", thicknessM: 0.02, frequencyMhz: 2450 }).caveats; // => ["outside-material-range"]
 * @example slabTransmission({ material: "metal", thicknessM: 0.001, frequencyMhz: 2450 }).caveats; // => ["opaque-capped"]
 */
export function slabTransmission(query: SlabQuery): WallTransmission {
  const { frequencyMhz } = query;
  const { q, impedance } = layerWave(query, frequencyMhz, query);
  const sum = complexSum(impedance, real(1));
  const r = complexQuotient(complexSum(impedance, real(-1)), sum);
  const rSquared = complexProduct(r, r);
  const through = complexQuotient(complexProduct(real(4), impedance), complexProduct(sum, sum)); // 1 − r²
  const roundTrip = complexExpm1({ re: 2 * q.im, im: -2 * q.re }); // e^(−2jq) − 1
  const bounces = complexProduct(rSquared, roundTrip);
  const denominator = { re: through.re - bounces.re, im: through.im - bounces.im }; // 1 − r²·e^(−2jq)
  const reflection = complexQuotient(complexProduct(r, roundTrip), denominator);
  return wallTransmission([query], frequencyMhz, {
    amplitudeRatio: size(complexQuotient(through, denominator)),
    attenuationRatio: -q.im,
    reflectionRatio: size(reflection),
  });
}

/**
 * The bare loss of {@link slabTransmission}, dB: as computed outside the material's frequency range too.
 * Standing waves make it rise and fall with thickness and frequency: to plan, take `slabPlanningLossDb`.
 * @returns dB, positive = attenuation
 * @throws {ArgumentError} as {@link slabTransmission}
 * @source ITU-R P.2040-3 equations (43), (44)
 * @validity as {@link slabTransmission}; metal held at 100 dB
 * @example slabTransmissionLossDb({ material: { a: 4, b: 0, c: 0, d: 0 }, thicknessM: 0.299792458 / 4, frequencyMhz: 1000 }); // => 0
 */
export function slabTransmissionLossDb(query: SlabQuery): number {
  return slabTransmission(query).lossDb;
}

function size({ re, im }: { readonly re: number; readonly im: number }): number {
  return Math.hypot(re, im);
}
