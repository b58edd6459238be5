import { ArgumentError } from "../issues/index.js";
import type { Complex } from "../numeric/index.js";
import { complexExpm1, complexProduct, complexQuotient, complexSum } from "../numeric/index.js";
import type { LayerWave, WallIncidence, WallLayer } from "./slab-wave.js";
import { layerWave } from "./slab-wave.js";
import type { WallTransmission } from "./wall-transmission.js";
import { wallTransmission } from "./wall-transmission.js";

/** A wall of layers, in the order that the wave meets them, and the wave. */
export interface LayersQuery extends WallIncidence {
  /** 1 to 16; a cavity is a layer of `air`. */
  readonly layers: readonly WallLayer[];
  /** MHz, > 0. */
  readonly frequencyMhz: number;
}

/**
 * A wall of several layers in air, by the transfer matrix: each layer is
 * [cos q, jZ·sin q; j·sin q/Z, cos q], and of the product [A, B; C, D] T = 2/(A + B + C + D),
 * R = (A + B − C − D)/(A + B + C + D), impedances over that of the air. One layer is `slabTransmission`.
 * @throws {ArgumentError} for a number of layers not from 1 to 16, and as `slabTransmission`
 * @source ITU-R P.2040-3 section 2.2.2 (multilayer slab); M. Born, E. Wolf, Principles of Optics, section 1.6
 * @validity as `slabTransmission`; flat, parallel layers without studs or ties
 * @example layersTransmission({ layers: [{ material: "air", thicknessM: 1 }], frequencyMhz: 2450 }).lossDb; // => 0
 */
export function layersTransmission(query: LayersQuery): WallTransmission {
  const { layers, frequencyMhz } = query;
  requireLayers(layers);
  const waves = layers.map((layer) => layerWave(layer, frequencyMhz, query));
  const [a, b, c, d] = waves.map(scaledMatrix).reduce(matrixProduct);
  const front = complexSum(a, b);
  const back = complexSum(c, d);
  const sum = complexSum(front, back);
  const reflection = complexQuotient({ re: front.re - back.re, im: front.im - back.im }, sum);
  return wallTransmission(layers, frequencyMhz, {
    amplitudeRatio: 2 / Math.hypot(sum.re, sum.im),
    attenuationRatio: waves.reduce((total, { q }) => total - q.im, 0),
    reflectionRatio: Math.hypot(reflection.re, reflection.im),
  });
}

/** @throws {ArgumentError} unless there are 1 to 16 layers */
export function requireLayers(layers: readonly WallLayer[]): void {
  const count = Array.isArray(layers) ? layers.length : 0;
  if (count < 1 || count > MOST_LAYERS)
    throw new ArgumentError("layers", `1 to ${MOST_LAYERS} layers`, count);
}

const MOST_LAYERS = 16;

type Matrix = readonly [a: Complex, b: Complex, c: Complex, d: Complex];

/** The layer's matrix times e^(−jq), which never overflows: cos q and j·sin q become (1 ± e^(−2jq))/2. */
function scaledMatrix({ q, impedance }: LayerWave): Matrix {
  const roundTrip = complexExpm1({ re: 2 * q.im, im: -2 * q.re });
  const cosine = { re: 1 + roundTrip.re / 2, im: roundTrip.im / 2 };
  const sine = { re: -roundTrip.re / 2, im: -roundTrip.im / 2 };
  return [cosine, complexProduct(impedance, sine), complexQuotient(sine, impedance), cosine];
}

function matrixProduct(one: Matrix, other: Matrix): Matrix {
  const cell = (i: 0 | 2, j: 0 | 1): Complex =>
    complexSum(complexProduct(one[i], other[j]), complexProduct(one[i + 1]!, other[j + 2]!));
  return [cell(0, 0), cell(0, 1), cell(2, 0), cell(2, 1)];
}
