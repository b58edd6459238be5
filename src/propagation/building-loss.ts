import { ArgumentError } from "../issues/index.js";
import type { Figure } from "../radio/index.js";
import type { PathModel } from "./path-model.js";

/** Kinds of building with published indoor coefficients. */
export type Building = "residential" | "office" | "commercial";

/** One row of the building table: N, and the floor loss as first floor + each further one. */
export interface BuildingLoss {
  readonly distancePowerCoefficient: Figure;
  readonly firstFloorLossDb: Figure;
  readonly furtherFloorLossDb: Figure;
}

const FLOORS = "ITU-R P.1238 (editions up to -10), floor law of 1.8-2 GHz as ns-3 states it";

/** @returns a row whose figures come from the standard */
function row(coefficient: number, coefficientSource: string, first: number, further: number): BuildingLoss {
  return {
    distancePowerCoefficient: { value: coefficient, status: "standard", source: coefficientSource },
    firstFloorLossDb: { value: first, status: "standard", source: FLOORS },
    furtherFloorLossDb: { value: further, status: "standard", source: FLOORS },
  };
}

/**
 * Coefficients of {@link indoorPathLossDb} by kind of building. A hall without partitions is nearest to
 * commercial. No row for theatres, arenas or auditoria has been published.
 * @source ITU-R P.1238, editions up to -10, tables 2 and 3
 * @example buildingLosses.office.distancePowerCoefficient.value; // => 30
 */
export const buildingLosses: Readonly<Record<Building, BuildingLoss>> = {
  residential: row(28, "ITU-R P.1238, 1.8-2 GHz; the same 28 at 2.4 GHz from memory", 4, 4),
  office: row(30, "ITU-R P.1238, 1.8-2 GHz; the same 30 at 2.4 GHz from memory", 15, 4),
  commercial: row(
    22,
    "ITU-R P.1238, 1.8-2 GHz; 20.7 at 2.2 GHz from memory, so 22 is the careful side",
    6,
    3,
  ),
};

/**
 * Loss of the floors between two antennas: none for 0 floors, else first + (n − 1)·further.
 * @param floorCount floors that the path crosses, whole number ≥ 0
 * @returns dB
 * @throws {ArgumentError} for an unknown building or a floor count that is no whole number ≥ 0
 * @source ITU-R P.1238, as `buildingLosses` cites it
 * @validity up to as many floors as the recommendation gives; beyond them extrapolated by its formula
 * @example floorLossDb("office", 2); // => 19
 */
export function floorLossDb(building: Building, floorCount: number): number {
  const losses = lossesOf(building);
  if (!Number.isInteger(floorCount) || floorCount < 0)
    throw new ArgumentError("floorCount", "a whole number ≥ 0", floorCount);
  if (floorCount === 0) return 0;
  return losses.firstFloorLossDb.value + (floorCount - 1) * losses.furtherFloorLossDb.value;
}

/**
 * The indoor path model of a kind of building.
 * @param floorCount floors between the two ends, whole, ≥ 0
 * @throws {ArgumentError} as {@link floorLossDb}
 * @example indoorModelOf("commercial", 1); // => { kind: "indoor", distancePowerCoefficient: 22, floorLossDb: 6 }
 */
export function indoorModelOf(building: Building, floorCount: number): PathModel {
  const coefficient = lossesOf(building).distancePowerCoefficient.value;
  return {
    kind: "indoor",
    distancePowerCoefficient: coefficient,
    floorLossDb: floorLossDb(building, floorCount),
  };
}

function lossesOf(building: Building): BuildingLoss {
  if (!Object.hasOwn(buildingLosses, building))
    throw new ArgumentError("building", Object.keys(buildingLosses).join(", "), building);
  return buildingLosses[building];
}
