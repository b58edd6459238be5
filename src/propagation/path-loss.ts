import { ArgumentError } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import type { Caveat } from "./caveat.js";
import { FITTED_UP_TO_M } from "./caveat.js";
import { freeSpacePathLossDb, SPEED_OF_LIGHT_M_PER_S } from "./free-space-path-loss.js";
import { indoorAbgPathLossDb } from "./indoor-abg-path-loss.js";
import { indoorAbgRow } from "./indoor-abg-table.js";
import { indoorPathLossDb } from "./indoor-path-loss.js";
import { logDistancePathLossDb } from "./log-distance-path-loss.js";
import type { PathModel } from "./path-model.js";
import { pathModelSigmaDb, pathModelWords } from "./path-model.js";

/** Where and at what frequency a loss is asked for. */
export interface PathPoint {
  /** 3-D antenna separation, m, > 0. */
  readonly distanceM: number;
  /** MHz, > 0. */
  readonly frequencyMhz: number;
}

/** A loss with what it rests on. */
export interface PathLoss {
  /** dB, positive = attenuation. */
  readonly lossDb: number;
  /** The model in words. */
  readonly model: string;
  /** Shadowing about the loss, dB, not part of it; null where the model has none of its own. */
  readonly sigmaDb: number | null;
  /** What was stretched; nothing is clamped. */
  readonly caveats: readonly Caveat[];
}

/**
 * Path loss by any model, with the caveats that the point asks for.
 * @throws {ArgumentError} for an unknown kind of model and as the model's own function does
 * @validity 1 m (or the model's reference distance) to 100 m, and the range of an α-β-γ row; outside it a
 *   caveat says so, and wherever a model gives less loss than free space
 * @example pathLoss({ kind: "log-distance", exponent: 3, referenceLossDb: 40 }, { distanceM: 10, frequencyMhz: 2450 }).lossDb; // => 70
 * @example pathLoss({ kind: "free-space" }, { distanceM: 200, frequencyMhz: 2450 }).caveats; // => ["beyond-fitted-distance"]
 */
export function pathLoss(model: PathModel, point: PathPoint): PathLoss {
  const lossDb = pathLossDb(model, point);
  const aboveFreeSpaceDb = lossDb - freeSpacePathLossDb(point.distanceM, point.frequencyMhz);
  return {
    lossDb,
    model: pathModelWords(model),
    sigmaDb: pathModelSigmaDb(model),
    caveats: caveatsOf(model, point, aboveFreeSpaceDb),
  };
}

/**
 * The bare loss of {@link pathLoss}, dB.
 * @returns dB, positive = attenuation
 * @throws {ArgumentError} for an unknown kind of model and as the model's own function does
 * @source the model's: ITU-R P.525, P.1238, or a model fitted on site
 * @validity as `pathLoss` says in its caveats
 * @example pathLossDb({ kind: "log-distance", exponent: 3, referenceLossDb: 40 }, { distanceM: 10, frequencyMhz: 2450 }); // => 70
 */
export function pathLossDb(model: PathModel, point: PathPoint): number {
  switch (model.kind) {
    case "free-space":
      return freeSpacePathLossDb(point.distanceM, point.frequencyMhz);
    case "indoor":
      return indoorPathLossDb({
        distanceM: point.distanceM,
        frequencyMhz: point.frequencyMhz,
        distancePowerCoefficient: model.distancePowerCoefficient,
        floorLossDb: model.floorLossDb ?? 0,
      });
    case "indoor-abg":
      return indoorAbgPathLossDb({ ...point, place: model.place, sight: model.sight });
    case "log-distance":
      return logDistancePathLossDb({
        distanceM: point.distanceM,
        exponent: model.exponent,
        referenceLossDb: model.referenceLossDb,
        referenceDistanceM: model.referenceDistanceM,
      });
    default:
      throw new ArgumentError(
        "model.kind",
        "free-space, indoor, indoor-abg or log-distance",
        (model as { kind: unknown }).kind,
      );
  }
}

/** Free space needs no fit: its far field and the 100 m of the project's rows and reaches still count. */
function caveatsOf(model: PathModel, point: PathPoint, aboveFreeSpaceDb: number): Caveat[] {
  const { distanceM, frequencyMhz } = point;
  const wavelengthM = SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6);
  const referenceM = model.kind === "log-distance" ? (model.referenceDistanceM ?? 1) : 1;
  const caveats: Caveat[] = [];
  if (distanceM < NEAR_FIELD_WAVELENGTHS * wavelengthM) caveats.push("near-field");
  if (distanceM < referenceM) caveats.push("below-reference-distance");
  if (distanceM > FITTED_UP_TO_M) caveats.push("beyond-fitted-distance");
  if (aboveFreeSpaceDb < -SLACK) caveats.push("below-free-space");
  if (isOutsideFit(model, point)) caveats.push("outside-model-range");
  return caveats;
}

function isOutsideFit(model: PathModel, { distanceM, frequencyMhz }: PathPoint): boolean {
  if (model.kind === "log-distance")
    return model.distanceRangeM !== undefined && !isWithin(distanceM, model.distanceRangeM);
  if (model.kind !== "indoor-abg") return false;
  const { distanceRangeM, frequencyRangeMhz } = indoorAbgRow(model.place, model.sight);
  return !isWithin(distanceM, distanceRangeM) || !isWithin(frequencyMhz, frequencyRangeMhz);
}

function isWithin(value: number, [least, most]: readonly [number, number]): boolean {
  return value >= least - SLACK && value <= most + SLACK;
}

// ns-3's propagation documentation: the far-field form holds beyond about three wavelengths.
const NEAR_FIELD_WAVELENGTHS = 3;
