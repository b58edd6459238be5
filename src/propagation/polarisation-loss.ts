import { ArgumentError, requireNonNegative } from "../issues/index.js";
import type { Figure } from "../radio/index.js";
import { antennaFrame } from "./antenna-frame.js";
import { cross, dot, lengthOf, unitVector } from "./antenna-vector.js";
import type { Vector3 } from "./antenna-vector.js";
import type { Antenna } from "./antenna.js";

/** Two antennas and the line of sight between them. */
export interface PolarisationPair {
  readonly transmitter: Antenna;
  readonly receiver: Antenna;
  /** From one antenna to the other, of any length. */
  readonly direction: Vector3;
  /** The most that is lost, dB, ≥ 0; {@link indoorPolarisationCapDb} if not given. */
  readonly capDb?: number | undefined;
}

/** Indoors reflections arrive turned in every direction, so crossed antennas lose no more than this. */
export const indoorPolarisationCapDb: Figure = {
  value: 10,
  status: "assumed",
  source: "multipath indoors turns the polarisation; 10 dB assumed",
};

/**
 * Loss by polarisation: −20·log10 |cos ψ|, ψ the angle between the two axes as seen along the line of sight
 * (their projections on the plane across it), at most `capDb`. A circular antenna with a linear one loses
 * half the power, 3.01 dB; two circular ones are taken as of one hand. 0 with an isotropic antenna, which
 * has no polarisation, and where an axis points along the line of sight: its gain is the null there.
 * @returns dB, ≥ 0
 * @throws {ArgumentError} for an unknown mounting or polarisation, an azimuth that is not finite, a tilt
 *   outside −90 … 90, a direction that is not finite or all 0, or a cap that is not finite and ≥ 0
 * @source C. A. Balanis, Antenna Theory, section 2.12 (polarisation loss factor; from memory)
 * @validity far field; a panel's field is taken along its own vertical in every direction
 * @example polarisationLossDb({ transmitter: { kind: "dipole" }, receiver: { kind: "dipole", mounting: "sideways" }, direction: { x: 0, y: 9, z: 0 } }); // => 10
 */
export function polarisationLossDb(pair: PolarisationPair): number {
  const { transmitter, receiver, direction, capDb = indoorPolarisationCapDb.value } = pair;
  requireNonNegative("capDb", capDb);
  const sight = unitVector("direction", direction);
  // Turned by 90° about the line of sight, both projections keep the angle between them.
  const one = cross(sight, antennaFrame(transmitter).axis);
  const other = cross(sight, antennaFrame(receiver).axis);
  return Math.min(capDb, mismatchDb(transmitter, receiver, one, other));
}

function mismatchDb(transmitter: Antenna, receiver: Antenna, one: Vector3, other: Vector3): number {
  if (transmitter.kind === "isotropic" || receiver.kind === "isotropic") return 0;
  const circularCount = Number(isCircular(transmitter)) + Number(isCircular(receiver));
  if (circularCount > 0) return circularCount === 1 ? 10 * Math.log10(2) : 0;
  // tan ψ from both products: exact 0 where the axes agree or one lies along the sight, no rounding of the
  // cosine near 1.
  const angleRad = Math.atan2(lengthOf(cross(one, other)), Math.abs(dot(one, other)));
  return 20 * Math.log10(1 / Math.cos(angleRad));
}

function isCircular(antenna: Antenna): boolean {
  if (antenna.kind !== "panel") return false;
  const { polarisation = "linear" } = antenna;
  if (!["linear", "circular"].includes(polarisation))
    throw new ArgumentError("polarisation", "linear, circular", polarisation);
  return polarisation === "circular";
}
