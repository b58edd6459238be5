import { feetToM } from "../units/index.js";
import type { LengthUnit } from "./pen.js";
import type { RoomFit } from "./plan-report.js";

/** A reading against the model. */
export interface PlotPoint {
  readonly distanceM: number;
  /** Measured − fitted, dB; up is more loss. */
  readonly residualDb: number;
  /** `^`: it lies there or above; `#`: an outlier. */
  readonly mark: "o" | "^" | "#";
}

/** How residuals lie in a picture: dB as far down as up, distance by its logarithm, as the model counts it. */
export interface ResidualScale {
  readonly topDb: number;
  readonly nearestM: number;
  readonly furthestM: number;
}

/** A distance that an axis names. */
export interface DistanceTick {
  /** In the unit asked for. */
  readonly label: string;
  readonly distanceM: number;
}

/** Tops of the scale, dB: half of each is whole. */
const TOPS_DB = [2, 4, 6, 10, 14, 20, 30, 40, 60, 100, 200, 400];
const TICKS = [
  0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 50, 70, 100, 150, 200, 300, 500, 1000, 3000,
];

/** @param points at least one, distances > 0 */
export function residualScale(points: readonly PlotPoint[]): ResidualScale {
  const mostDb = Math.max(...points.map(({ residualDb }) => Math.abs(residualDb)));
  const distances = points.map(({ distanceM }) => distanceM);
  return {
    topDb: TOPS_DB.find((each) => each >= mostDb) ?? Math.ceil(mostDb / 2) * 2,
    nearestM: Math.min(...distances),
    furthestM: Math.max(...distances),
  };
}

/** Where a distance lies between the nearest and the furthest by its logarithm, 0..1; 0 where they are one. */
export function logShareRatio({ nearestM, furthestM }: ResidualScale, distanceM: number): number {
  if (furthestM === nearestM) return 0;
  return Math.log(distanceM / nearestM) / Math.log(furthestM / nearestM);
}

/** Round distances from the nearest to the furthest, rising. */
export function distanceTicks({ nearestM, furthestM }: ResidualScale, unit: LengthUnit): DistanceTick[] {
  return TICKS.map((tick) => ({
    label: `${tick} ${unit}`,
    distanceM: unit === "m" ? tick : feetToM(tick),
  })).filter(({ distanceM }) => distanceM >= nearestM && distanceM <= furthestM);
}

/** The residuals that a room's path model kept. */
export function keptResiduals({ residuals }: RoomFit): PlotPoint[] {
  return residuals.map(({ distanceM, residualDb, heard }) => ({
    distanceM,
    residualDb,
    mark: heard ? "o" : "^",
  }));
}
