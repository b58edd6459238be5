import { dbToRatio, ratioToDb } from "../units/index.js";
import type { Material, WallCaveat } from "./material.js";
import { OPAQUE_LOSS_DB } from "./material.js";
import { findMaterial } from "./material-find.js";
import type { WallLayer } from "./slab-wave.js";

/** What a wall lets through at one frequency. */
export interface WallTransmission {
  /** −10·log10 of the transmitted share of power, dB, ≥ 0. */
  readonly lossDb: number;
  /** |T|², 0..1. */
  readonly transmittedRatio: number;
  /** |R|², 0..1; what is neither transmitted nor reflected is absorbed. */
  readonly reflectedRatio: number;
  /** Where the material's figures come from, e.g. "ITU-R P.2040-3"; several joined by commas. */
  readonly edition: string;
  readonly caveats: readonly WallCaveat[];
}

/**
 * The result of a wall whose transmission is amplitude·e^(−nepers), its loss held at 0 dB below (rounding;
 * no wall gains) and at {@link OPAQUE_LOSS_DB} above where metal is in it.
 * @param wave amplitudeRatio: |T| without the layers' attenuation; attenuationRatio: that attenuation in
 *   nepers, kept apart as e^(−nepers) may be 0 in floating point; reflectionRatio: |R|
 */
export function wallTransmission(
  layers: readonly WallLayer[],
  frequencyMhz: number,
  wave: {
    readonly amplitudeRatio: number;
    readonly attenuationRatio: number;
    readonly reflectionRatio: number;
  },
): WallTransmission {
  const found = layers.map(({ material }) => findMaterial(material));
  const wholeLossDb = 2 * (wave.attenuationRatio * ratioToDb(Math.E) - ratioToDb(wave.amplitudeRatio));
  const isCapped = wholeLossDb > OPAQUE_LOSS_DB && found.some(({ opaque }) => opaque);
  const lossDb = isCapped ? OPAQUE_LOSS_DB : Math.max(0, wholeLossDb);
  const caveats: WallCaveat[] = [];
  if (found.some(({ rangeMhz }) => isOutside(rangeMhz, frequencyMhz))) caveats.push("outside-material-range");
  if (isCapped) caveats.push("opaque-capped");
  return {
    lossDb,
    transmittedRatio: dbToRatio(-lossDb),
    reflectedRatio: Math.min(1, wave.reflectionRatio ** 2),
    edition: [...new Set(found.map(({ edition }) => edition))].join(", "),
    caveats,
  };
}

function isOutside(rangeMhz: Material["rangeMhz"], frequencyMhz: number): boolean {
  return rangeMhz !== null && (frequencyMhz < rangeMhz[0] || frequencyMhz > rangeMhz[1]);
}
