import { ArgumentError } from "../issues/index.js";
import { ratioToDb } from "../units/index.js";
import { collinearHalfLengthRad, collinearPatternRatio } from "./antenna-collinear.js";
import { DIPOLE_PEAK_RATIO, dipolePatternRatio } from "./antenna-dipole.js";
import { antennaFrame } from "./antenna-frame.js";
import type { AntennaFrame } from "./antenna-frame.js";
import { panelLobe, panelPatternRatio } from "./antenna-panel.js";
import { cross, dot, lengthOf, unitVector } from "./antenna-vector.js";
import type { Vector3 } from "./antenna-vector.js";
import type { Antenna } from "./antenna.js";

/** Power in a direction (of length 1) over the peak, 0 … 1. */
type Pattern = (towards: Vector3) => number;

/**
 * An antenna's gain towards a direction in three dimensions.
 * @param direction from the antenna to the other end, of any length
 * @returns dBi; −Infinity in a true null, such as along a rod
 * @throws {ArgumentError} for an unknown kind or mounting, a figure out of its range (see {@link Antenna}),
 *   or a direction that is not finite or all 0
 * @source dipole: C. A. Balanis, Antenna Theory, section 4.6; collinear and panel: derived, see
 *   {@link collinearBeamwidthDeg} and {@link PanelAntenna}
 * @validity far field and free space around the antenna; on metal or in a canopy a pattern is another, and
 *   indoors reflections fill a null in part
 * @example antennaGainDbi({ kind: "dipole" }, { x: 0, y: 0, z: -4 }); // => -Infinity
 */
export function antennaGainDbi(antenna: Antenna, direction: Vector3): number {
  return gainTowards(antenna)(direction);
}

/**
 * {@link antennaGainDbi} with the antenna's own figures worked out once, for many directions.
 * @throws {ArgumentError} as {@link antennaGainDbi}, in part when the direction comes
 * @example gainTowards({ kind: "panel", gainDbi: 8, azimuthBeamwidthDeg: 70, elevationBeamwidthDeg: 60 })({ x: 5, y: 0, z: 0 }); // => 8
 */
export function gainTowards(antenna: Antenna): (direction: Vector3) => number {
  const peakDbi = antennaPeakGainDbi(antenna);
  const pattern = patternOf(antenna, antennaFrame(antenna));
  return (direction) => peakDbi + ratioToDb(pattern(unitVector("direction", direction)));
}

/**
 * The most that an antenna gains in any direction.
 * @returns dBi
 * @throws {ArgumentError} for an unknown kind
 * @source the antenna's own figure; half-wave dipole: textbook, 1.64
 * @validity no feeder, no body nearby
 * @example antennaPeakGainDbi({ kind: "isotropic" }); // => 0
 */
export function antennaPeakGainDbi(antenna: Antenna): number {
  switch (antenna.kind) {
    case "isotropic":
      return 0;
    case "dipole":
      return ratioToDb(DIPOLE_PEAK_RATIO);
    case "collinear":
    case "panel":
      return antenna.gainDbi;
    default:
      return unknownKind(antenna);
  }
}

/**
 * The share of the power fed that an antenna's pattern radiates: the gain averaged over the sphere. 1 for
 * the lossless isotropic, dipole and collinear; for a panel what gain, beamwidths and floor come to: below 1
 * the rest is loss within it, above 1 (to 1 dB at most) its data sheet's figures are rounded.
 * @returns share of a sphere's mean power, 1 where the pattern holds its gain
 * @throws {ArgumentError} as {@link antennaGainDbi}
 * @source integral of the pattern over the sphere
 * @validity numeric, to the step of its integration
 * @example antennaRadiatedRatio({ kind: "collinear", gainDbi: 8 }); // => 1
 */
export function antennaRadiatedRatio(antenna: Antenna): number {
  patternOf(antenna, antennaFrame(antenna)); // refuses what has no gain
  return antenna.kind === "panel" ? panelLobe(antenna).radiatedRatio : 1;
}

function patternOf(antenna: Antenna, { axis, boresight, side }: AntennaFrame): Pattern {
  switch (antenna.kind) {
    case "isotropic":
      return () => 1;
    case "dipole":
      return (towards) => dipolePatternRatio(lengthOf(cross(axis, towards)), dot(axis, towards));
    case "collinear": {
      const halfLengthRad = collinearHalfLengthRad(antenna.gainDbi);
      return (towards) =>
        collinearPatternRatio(lengthOf(cross(axis, towards)), dot(axis, towards), halfLengthRad);
    }
    case "panel": {
      const lobe = panelLobe(antenna);
      return (towards) =>
        panelPatternRatio(lobe, dot(boresight, towards), dot(side, towards), dot(axis, towards));
    }
    default:
      return unknownKind(antenna);
  }
}

function unknownKind(antenna: never): never {
  throw new ArgumentError("kind", "isotropic, dipole, collinear, panel", (antenna as { kind: unknown }).kind);
}
