import type { Place } from "./venue-room.js";
import type { TransmitterPlace } from "./venue-system.js";

/** What a transmitter stays clear of. */
export interface KeepOuts {
  /** Access points whose places are known. */
  readonly accessPoints?: readonly Place[] | undefined;
  /** Other systems' transmitters. */
  readonly transmitters?: readonly Place[] | undefined;
  /** Luminaires; a transmitter isn't put straight under one. */
  readonly luminaires?: readonly Place[] | undefined;
  /** Least height above the floor, m; 3 unless given. */
  readonly leastHeightM?: number | undefined;
}

/** A rule of antenna practice that a place breaks. */
export type KeepOutCode = "near-access-point" | "near-transmitter" | "under-luminaire" | "too-low";

/** Least distance from an access point, m (common practice, no source). */
const ACCESS_POINT_M = 3;
/** Least distance between two transmitters, m (common practice, no source). */
export const TRANSMITTERS_APART_M = 2;
/** Nearer than this on the plan, a transmitter is straight under a luminaire, m (assumed). */
const UNDER_M = 0.5;
/** Above heads, m (common practice, no source). */
export const LEAST_HEIGHT_M = 3;
const SLACK_M = 1e-9;

/**
 * The rules of antenna practice that a transmitter's place breaks.
 * @returns codes in the order of {@link KeepOutCode}; empty where it keeps them all
 * @source common practice, no source
 * @example brokenKeepOuts({ at: { x: 0, y: 0, z: 2 }, heightM: 2 }, {}); // => ["too-low"]
 */
export function brokenKeepOuts(
  { at, heightM }: Pick<TransmitterPlace, "at" | "heightM">,
  keepOuts: KeepOuts,
): KeepOutCode[] {
  const { accessPoints = [], transmitters = [], luminaires = [], leastHeightM = LEAST_HEIGHT_M } = keepOuts;
  const isNear = (other: Place, leastM: number): boolean =>
    Math.hypot(at.x - other.x, at.y - other.y, at.z - other.z) < leastM - SLACK_M;
  const broken: KeepOutCode[] = [];
  if (accessPoints.some((other) => isNear(other, ACCESS_POINT_M))) broken.push("near-access-point");
  if (transmitters.some((other) => isNear(other, TRANSMITTERS_APART_M))) broken.push("near-transmitter");
  if (luminaires.some(({ x, y, z }) => z > at.z && Math.hypot(at.x - x, at.y - y) < UNDER_M - SLACK_M))
    broken.push("under-luminaire");
  if (heightM < leastHeightM - SLACK_M) broken.push("too-low");
  return broken;
}
