import { requirePositive } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { antennaTermsFrom } from "./antenna-terms.js";
import type { AntennaPair } from "./antenna-terms.js";
import { cosOfDeg, lengthOf, sinOfDeg, vectorFrom } from "./antenna-vector.js";
import type { Vector3 } from "./antenna-vector.js";

/** What moving a transmitter aside brings. */
export interface MoveAside {
  /** The best way to go on the plan: 0° is +x, 90° is +y. Null when `too-close`. */
  readonly azimuthDeg: number | null;
  /** Level after the move over level before, dB, negative when every way is worse; null with a reason. */
  readonly helpDb: number | null;
  /** Both gains less the polarisation loss after the move, dB; null when `too-close`. */
  readonly afterDb: number | null;
  /** `in-true-null`: there was no level before. `too-close`: every way ends within 0.5 m of the receiver. */
  readonly reason: "in-true-null" | "too-close" | null;
}

/** Closer than this, m, two antennas are not in each other's far field (assumed; four wavelengths). */
const CLOSEST_M = 0.5;
const WAYS_DEG = Array.from({ length: 16 }, (_, index) => index * 22.5);

/**
 * How much moving the transmitter aside on the level helps one receiver: the change of both gains, of the
 * polarisation loss and of the free-space spreading, by the best of sixteen ways. The antenna keeps its
 * mounting. Walls are not looked at, and no way is counted that ends within 0.5 m of the receiver.
 * @param moveM how far, m, > 0; 1 if not given
 * @returns `helpDb` is null where the level before was nothing: any number would be infinite there
 * @throws {ArgumentError} as {@link antennaTerms}, or when `moveM` is not finite and > 0
 * @example const rod = { kind: "dipole" };
 * const under = { transmitter: rod, receiver: rod, transmitterAtM: { x: 0, y: 0, z: 2 }, receiverAtM: { x: 0, y: 0, z: 6 } };
 * moveAside(under).reason; // => "in-true-null"
 */
export function moveAside(pair: AntennaPair, moveM = 1): MoveAside {
  requirePositive("moveM", moveM);
  const levelsAt = levelsOf(pair);
  const before = levelsAt(pair.transmitterAtM);
  const ways = WAYS_DEG.map((azimuthDeg) => ({ azimuthDeg, placeM: moved(pair, moveM, azimuthDeg) }))
    .filter(({ placeM }) => lengthOf(vectorFrom(placeM, pair.receiverAtM)) >= CLOSEST_M)
    .map(({ azimuthDeg, placeM }) => ({ azimuthDeg, ...levelsAt(placeM) }));
  if (ways.length === 0) return { azimuthDeg: null, helpDb: null, afterDb: null, reason: "too-close" };
  const best = ways.reduce((one, other) => (other.levelDb > one.levelDb + SLACK ? other : one));
  const found = { azimuthDeg: best.azimuthDeg, afterDb: best.gainsDb };
  if (before.levelDb === -Infinity) return { ...found, helpDb: null, reason: "in-true-null" };
  return { ...found, helpDb: best.levelDb - before.levelDb, reason: null };
}

function moved({ transmitterAtM: { x, y, z } }: AntennaPair, moveM: number, azimuthDeg: number): Vector3 {
  return { x: x + moveM * cosOfDeg(azimuthDeg), y: y + moveM * sinOfDeg(azimuthDeg), z };
}

/** Both gains less the polarisation loss, and the same less the spreading, with the transmitter at a place. */
interface Levels {
  readonly gainsDb: number;
  readonly levelDb: number;
}

function levelsOf(pair: AntennaPair): (transmitterAtM: Vector3) => Levels {
  const termsAt = antennaTermsFrom(pair);
  return (transmitterAtM) => {
    const terms = termsAt(transmitterAtM);
    const gainsDb = terms.txGainDbi + terms.rxGainDbi - terms.polarisationLossDb;
    const distanceM = lengthOf(vectorFrom(transmitterAtM, pair.receiverAtM));
    return { gainsDb, levelDb: gainsDb - 20 * Math.log10(distanceM) };
  };
}
