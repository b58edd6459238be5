import { ArgumentError, requireNonNegative } from "../issues/index.js";
import type { WallCaveat } from "./material.js";
import type { WallIncidence, WallLayer } from "./slab-wave.js";
import type { WallPlanningLoss } from "./wall-planning-loss.js";
import { layersPlanningLoss, slabPlanningLoss } from "./wall-planning-loss.js";

/** A wall of which only the loss is known, dB, ≥ 0; it counts the same at every angle. */
export interface KnownWall {
  readonly lossDb: number;
}

/** A wall of layers. */
export interface LayeredWall {
  readonly layers: readonly WallLayer[];
}

/** A wall that the straight line between two antennas crosses, and how it is met. */
export type WallCrossing = (KnownWall | WallLayer | LayeredWall) & WallIncidence;

/** The loss of all walls on a path. */
export interface WallLoss {
  /** dB, ≥ 0; 0 without a wall. */
  readonly lossDb: number;
  /** One for each crossing, in the order given. */
  readonly crossings: readonly WallPlanningLoss[];
  /** Those of any crossing, each once. */
  readonly caveats: readonly WallCaveat[];
}

/**
 * The walls that a path crosses, each at its own angle: the sum of their planning losses (2400–2483.5 MHz).
 * @throws {ArgumentError} when a crossing isn't exactly one of a loss, a material and layers,
 *   when its loss is not finite and ≥ 0, and as `slabTransmission` or `layersTransmission`
 * @source multi-wall model; ITU-R P.2040-3 for each wall
 * @validity no echoes between walls, nothing round their edges or through openings
 * @example wallLoss([{ lossDb: 3 }, { material: "air", thicknessM: 0.1, incidenceDeg: 40 }]).crossings.length; // => 2
 */
export function wallLoss(crossings: readonly WallCrossing[]): WallLoss {
  const losses = crossings.map(crossingLoss);
  return {
    lossDb: losses.reduce((total, { lossDb }) => total + lossDb, 0),
    crossings: losses,
    caveats: [...new Set(losses.flatMap(({ caveats }) => caveats))],
  };
}

/**
 * The bare sum of {@link wallLoss}, dB.
 * @returns dB, all crossings together
 * @throws {ArgumentError} as {@link wallLoss}
 * @source ITU-R P.2040 slab by slab, or the loss given
 * @validity as `wallLoss` says in its caveats
 * @example wallLossDb([{ lossDb: 3 }, { lossDb: 4.5, incidenceDeg: 60 }]); // => 7.5
 */
export function wallLossDb(crossings: readonly WallCrossing[]): number {
  return wallLoss(crossings).lossDb;
}

function crossingLoss(crossing: WallCrossing, index: number): WallPlanningLoss {
  const ways = ["lossDb", "material", "layers"].filter(
    (key) => (crossing as unknown as Record<string, unknown>)[key] !== undefined,
  );
  if (ways.length !== 1)
    throw new ArgumentError(
      `crossings[${index}]`,
      "one of lossDb, material with thicknessM, or layers",
      ways.join(" and ") || "none",
    );
  if ("layers" in crossing && ways[0] === "layers") return layersPlanningLoss(crossing);
  if ("material" in crossing && ways[0] === "material") return slabPlanningLoss(crossing);
  const { lossDb } = crossing as KnownWall;
  requireNonNegative(`crossings[${index}].lossDb`, lossDb);
  return { lossDb, edition: "loss given in dB", caveats: [] };
}
