import { requireNonNegative } from "../issues/index.js";
import type { IndoorPlace, IndoorSight } from "./indoor-abg-table.js";
import { indoorAbgRow } from "./indoor-abg-table.js";

/** Loss in the open between two antennas. */
export interface FreeSpaceModel {
  readonly kind: "free-space";
}

/** ITU-R P.1238, editions up to -10; the fields are those of `indoorPathLossDb`. */
export interface IndoorModel {
  readonly kind: "indoor";
  readonly distancePowerCoefficient: number;
  /** dB; 0 if not given. */
  readonly floorLossDb?: number | undefined;
}

/** ITU-R P.1238-11 by place and sight; the fields are those of `indoorAbgPathLossDb`. */
export interface IndoorAbgModel {
  readonly kind: "indoor-abg";
  readonly place: IndoorPlace;
  readonly sight: IndoorSight;
}

/** Exponent and reference loss, e.g. fitted on site; the fields are those of `logDistancePathLossDb`. */
export interface LogDistanceModel {
  readonly kind: "log-distance";
  readonly exponent: number;
  readonly referenceLossDb: number;
  /** m; 1 if not given. */
  readonly referenceDistanceM?: number | undefined;
  /** Standard deviation of the shadowing about the model, dB, ≥ 0, where it is known; not in the loss. */
  readonly sigmaDb?: number | undefined;
  /** [shortest, longest] m that the figures were fitted over, where it is known. */
  readonly distanceRangeM?: readonly [number, number] | undefined;
}

/** How loss grows with distance. */
export type PathModel = FreeSpaceModel | IndoorModel | IndoorAbgModel | LogDistanceModel;

/**
 * The reference receiver's model: indoor with N = 22 on the same floor, an open hall.
 * @source ITU-R P.1238, commercial, 1.8-2 GHz
 */
export const referencePathModel: IndoorModel = {
  kind: "indoor",
  distancePowerCoefficient: 22,
  floorLossDb: 0,
};

/**
 * The model in words, with its figures.
 * @returns words for a report
 * @example pathModelWords({ kind: "indoor", distancePowerCoefficient: 22 }); // => "indoor (ITU-R P.1238), N = 22, same floor"
 */
export function pathModelWords(model: PathModel): string {
  switch (model.kind) {
    case "free-space":
      return "free space (ITU-R P.525)";
    case "indoor": {
      const floors = model.floorLossDb ?? 0;
      const where = floors === 0 ? "same floor" : `${floors} dB of floors`;
      return `indoor (ITU-R P.1238), N = ${model.distancePowerCoefficient}, ${where}`;
    }
    case "indoor-abg": {
      const { sigmaDb } = indoorAbgRow(model.place, model.sight);
      return `indoor (ITU-R P.1238-11), ${model.place} ${model.sight}, sigma ${sigmaDb} dB`;
    }
    case "log-distance": {
      const { exponent, referenceLossDb, referenceDistanceM = 1, sigmaDb, distanceRangeM } = model;
      const sigma = sigmaDb === undefined ? "" : `, sigma ${tidy(sigmaDb)} dB`;
      const fitted = distanceRangeM === undefined ? "" : `, fitted ${distanceRangeM.map(tidy).join("–")} m`;
      return `log-distance, exponent ${tidy(exponent)}, ${tidy(referenceLossDb)} dB at ${referenceDistanceM} m${sigma}${fitted}`;
    }
  }
}

/** A fitted figure has more places than anyone reads. */
function tidy(value: number): number {
  return Number(value.toFixed(2));
}

/**
 * Shadowing about the model: the standard deviation of the local mean from place to place, dB. It is never
 * part of the loss, nor of a fade allowance whose law isn't log-normal or composite.
 * @returns null where the model has none of its own
 * @throws {ArgumentError} for an unknown place or sight, a σ that is not finite and ≥ 0
 * @example pathModelSigmaDb({ kind: "indoor-abg", place: "office", sight: "NLoS" }); // => 5.04
 * @example pathModelSigmaDb({ kind: "free-space" }); // => null
 */
export function pathModelSigmaDb(model: PathModel): number | null {
  if (model.kind === "indoor-abg") return indoorAbgRow(model.place, model.sight).sigmaDb;
  if (model.kind !== "log-distance" || model.sigmaDb === undefined) return null;
  requireNonNegative("sigmaDb", model.sigmaDb);
  return model.sigmaDb;
}
