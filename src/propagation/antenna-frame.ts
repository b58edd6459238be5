import { ArgumentError, requireFinite } from "../issues/index.js";
import { cosOfDeg, cross, sinOfDeg } from "./antenna-vector.js";
import type { Vector3 } from "./antenna-vector.js";
import type { Antenna, AntennaMount, Mounting } from "./antenna.js";

/** Three directions at right angles, each of length 1, that move with the antenna. */
export interface AntennaFrame {
  /** Along a rod, or along a panel's own vertical: what a linear antenna's field lies along. */
  readonly axis: Vector3;
  /** Where a panel faces; for a rod one of the directions across it. */
  readonly boresight: Vector3;
  /** Across both. */
  readonly side: Vector3;
}

const MOUNTINGS: readonly Mounting[] = ["upright", "sideways", "hanging"];

/**
 * The directions that an antenna's mounting gives it (see {@link Mounting}).
 * @throws {ArgumentError} for an unknown mounting, an azimuth that is not finite, or a tilt outside −90 … 90
 * @example antennaFrame({ kind: "dipole", mounting: "sideways" }).axis; // => { x: 1, y: 0, z: 0 }
 */
export function antennaFrame(antenna: Antenna): AntennaFrame {
  const mount = requiredMount(antenna);
  const { axis, boresight } = antenna.kind === "panel" ? panelFrame(mount) : rodFrame(mount);
  return { axis, boresight, side: cross(axis, boresight) };
}

function requiredMount(
  mount: AntennaMount,
): Required<{ [Key in keyof AntennaMount]: NonNullable<AntennaMount[Key]> }> {
  const { mounting = "upright", azimuthDeg = 0, tiltDeg = 0 } = mount;
  if (!MOUNTINGS.includes(mounting)) throw new ArgumentError("mounting", MOUNTINGS.join(", "), mounting);
  requireFinite("azimuthDeg", azimuthDeg);
  if (!(tiltDeg >= -90 && tiltDeg <= 90))
    throw new ArgumentError("tiltDeg", "a number from -90 to 90", tiltDeg);
  return { mounting, azimuthDeg, tiltDeg };
}

type RequiredMount = ReturnType<typeof requiredMount>;

function rodFrame({
  mounting,
  azimuthDeg,
  tiltDeg,
}: RequiredMount): Pick<AntennaFrame, "axis" | "boresight"> {
  const leanDeg = 90 * MOUNTINGS.indexOf(mounting) + tiltDeg;
  return { axis: directionOf(azimuthDeg, 90 - leanDeg), boresight: directionOf(azimuthDeg, -leanDeg) };
}

function panelFrame({
  mounting,
  azimuthDeg,
  tiltDeg,
}: RequiredMount): Pick<AntennaFrame, "axis" | "boresight"> {
  const boresight = directionOf(azimuthDeg, -tiltDeg);
  const vertical = directionOf(azimuthDeg, 90 - tiltDeg);
  if (mounting === "upright") return { axis: vertical, boresight };
  if (mounting === "sideways") return { axis: cross(vertical, boresight), boresight };
  return { axis: { x: -vertical.x, y: -vertical.y, z: -vertical.z }, boresight };
}

function directionOf(azimuthDeg: number, elevationDeg: number): Vector3 {
  const outward = cosOfDeg(elevationDeg);
  return {
    x: outward * cosOfDeg(azimuthDeg),
    y: outward * sinOfDeg(azimuthDeg),
    z: sinOfDeg(elevationDeg),
  };
}
