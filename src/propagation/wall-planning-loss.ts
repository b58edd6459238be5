import { dbToRatio, ratioToDb } from "../units/index.js";
import { slabTransmission } from "./slab-transmission.js";
import type { WallIncidence, WallLayer } from "./slab-wave.js";
import { layerWave } from "./slab-wave.js";
import type { LayersQuery } from "./wall-layers.js";
import { layersTransmission, requireLayers } from "./wall-layers.js";
import type { WallTransmission } from "./wall-transmission.js";

/** The band that planning values are averaged over, [lowest, highest] MHz. */
export const PLANNING_BAND_MHZ: readonly [number, number] = [2400, 2483.5];

/** A wall's loss to plan with. */
export type WallPlanningLoss = Pick<WallTransmission, "lossDb" | "edition" | "caveats">;

/** A single slab, no frequency. */
export interface SlabPlanningQuery extends WallLayer, WallIncidence {}

/** A wall of layers, no frequency. */
export type LayersPlanningQuery = Omit<LayersQuery, "frequencyMhz">;

/**
 * A slab's loss to plan with: −10·log10 of |T|² averaged over 2400–2483.5 MHz, so that no standing wave at
 * one frequency is planned on.
 * @returns dB, the mean to 1e-6 dB
 * @throws {ArgumentError} as `slabTransmission`
 * @source ITU-R P.2040-3 slab; the averaging is this project's own choice
 * @validity as `slabTransmission`
 * @example slabPlanningLossDb({ material: "air", thicknessM: 0.1 }); // => 0
 */
export function slabPlanningLossDb(query: SlabPlanningQuery): number {
  return slabPlanningLoss(query).lossDb;
}

/**
 * {@link slabPlanningLossDb} with the edition of its figures and what was stretched.
 * @throws {ArgumentError} as `slabTransmission`
 * @example slabPlanningLoss({ material: "metal", thicknessM: 0.002 }); // => { lossDb: 100, edition: "ITU-R P.2040-3", caveats: ["opaque-capped"] }
 */
export function slabPlanningLoss(query: SlabPlanningQuery): WallPlanningLoss {
  const at = (frequencyMhz: number): WallTransmission => slabTransmission({ ...query, frequencyMhz });
  return bandMean(at, intervalsFor([query], query));
}

/**
 * The loss of a wall of layers to plan with, averaged as {@link slabPlanningLossDb}.
 * @throws {ArgumentError} as `layersTransmission`
 * @example layersPlanningLoss({ layers: [{ material: "vinyl tile", thicknessM: 0.003 }, { material: "wood", thicknessM: 0.02 }] }).edition; // => "ITU-R P.2040-4, ITU-R P.2040-3"
 */
export function layersPlanningLoss(query: LayersPlanningQuery): WallPlanningLoss {
  requireLayers(query.layers);
  const at = (frequencyMhz: number): WallTransmission => layersTransmission({ ...query, frequencyMhz });
  return bandMean(at, intervalsFor(query.layers, query));
}

/** Simpson's rule on |T|², each loss counted from the least so that no power vanishes. */
function bandMean(at: (frequencyMhz: number) => WallTransmission, intervalCount: number): WallPlanningLoss {
  const [lowMhz, highMhz] = PLANNING_BAND_MHZ;
  const samples = Array.from({ length: intervalCount + 1 }, (_, index) =>
    at(lowMhz + ((highMhz - lowMhz) * index) / intervalCount),
  );
  const leastDb = samples.reduce((least, { lossDb }) => Math.min(least, lossDb), Infinity);
  const sum = samples.reduce((total, { lossDb }, index) => {
    const weight = index === 0 || index === intervalCount ? 1 : index % 2 === 1 ? 4 : 2;
    return total + weight * dbToRatio(leastDb - lossDb);
  }, 0);
  return {
    lossDb: leastDb - ratioToDb(sum / (3 * intervalCount)),
    edition: samples[0]!.edition,
    caveats: [...new Set(samples.flatMap(({ caveats }) => caveats))],
  };
}

/** Twelve intervals for each radian by which the round trip through the wall turns from edge to edge. */
function intervalsFor(layers: readonly WallLayer[], incidence: WallIncidence): number {
  const [lowMhz, highMhz] = PLANNING_BAND_MHZ;
  const turnRad = layers.reduce((total, layer) => {
    const high = layerWave(layer, highMhz, incidence).q.re;
    return total + 2 * Math.abs(high - layerWave(layer, lowMhz, incidence).q.re);
  }, 0);
  return 2 * Math.min(MOST_PAIRS, Math.max(LEAST_PAIRS, Math.ceil(6 * turnRad)));
}

const LEAST_PAIRS = 4;
const MOST_PAIRS = 8192;
