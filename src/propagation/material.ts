import type { Figure } from "../radio/index.js";

/**
 * The four coefficients of a building material in ITU-R P.2040, f in GHz: relative permittivity
 * ε′ = a·f^b, conductivity σ = c·f^d in S/m.
 */
export interface MaterialCoefficients {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** A building material with its origin. */
export interface Material {
  readonly name: string;
  /** Edition of the recommendation that the coefficients come from. */
  readonly edition: string;
  readonly coefficients: Figure<MaterialCoefficients>;
  /** Frequencies that the coefficients were fitted over, [lowest, highest] MHz; null: not known. */
  readonly rangeMhz: readonly [number, number] | null;
  /** A conductor: what really gets past goes round its edges, so its loss is capped. */
  readonly opaque: boolean;
}

/**
 * What a wall's loss was stretched beyond, or held at.
 * - `outside-material-range`: a material's coefficients were not fitted at this frequency; the loss stands as computed
 * - `opaque-capped`: metal; the loss is held at {@link OPAQUE_LOSS_DB}
 */
export type WallCaveat = "outside-material-range" | "opaque-capped";

/**
 * The loss at which a wall with metal in it is held: the slab formula gives thousands of dB, while gaps,
 * edges and other ways round let more through than that. Assumed: no source.
 */
export const OPAQUE_LOSS_DB = 100;

/** What a result says of coefficients that the caller gave. */
export const OWN_COEFFICIENTS = "own coefficients";
