import { ArgumentError } from "../issues/index.js";
import { antennaGainDbi, antennaPeakGainDbi, gainTowards } from "./antenna-gain.js";
import { lengthOf, requireVector, vectorFrom } from "./antenna-vector.js";
import type { Vector3 } from "./antenna-vector.js";
import type { Antenna } from "./antenna.js";
import { polarisationLossDb } from "./polarisation-loss.js";

/** Two antennas and where they are. */
export interface AntennaPair {
  readonly transmitter: Antenna;
  readonly receiver: Antenna;
  /** The transmitter's place, in metres. */
  readonly transmitterAtM: Vector3;
  /** The receiver's place, in metres. */
  readonly receiverAtM: Vector3;
  /** As in {@link polarisationLossDb}. */
  readonly polarisationCapDb?: number | undefined;
}

/** What two antennas bring to a link: lines of `ReceivedTerms`, and which of them has its null there. */
export interface AntennaTerms {
  readonly txGainDbi: number;
  readonly rxGainDbi: number;
  readonly polarisationLossDb: number;
  /** The receiver lies within a null of the transmitter's antenna. */
  readonly txNull: boolean;
  /** The transmitter lies within a null of the receiver's antenna. */
  readonly rxNull: boolean;
}

/** A direction lies within a null when the gain there is more than this below the peak. */
export const NULL_DEPTH_DB = 10;

/**
 * Whether a direction lies within a null of the antenna: more than 10 dB below its peak.
 * @returns does the direction lie in a null?
 * @throws {ArgumentError} as {@link antennaGainDbi}
 * @example inAntennaNull({ kind: "dipole" }, { x: 1, y: 0, z: 3 }); // => true
 */
export function inAntennaNull(antenna: Antenna, direction: Vector3): boolean {
  return antennaGainDbi(antenna, direction) < antennaPeakGainDbi(antenna) - NULL_DEPTH_DB;
}

/**
 * Gains towards each other, polarisation loss and nulls of two antennas at their places.
 * @throws {ArgumentError} as {@link antennaGainDbi} and {@link polarisationLossDb}, or when both antennas
 *   are at one place
 * @example const above = antennaTerms({ transmitter: { kind: "dipole" }, transmitterAtM: { x: 0, y: 0, z: 2 },
 *   receiver: { kind: "dipole" }, receiverAtM: { x: 0, y: 0, z: 6 } });
 * above; // => { txGainDbi: -Infinity, rxGainDbi: -Infinity, polarisationLossDb: 0, txNull: true, rxNull: true }
 */
export function antennaTerms(pair: AntennaPair): AntennaTerms {
  return antennaTermsFrom(pair)(pair.transmitterAtM);
}

/**
 * {@link antennaTerms} with the antennas' own figures worked out once, for many places of the transmitter.
 * @throws {ArgumentError} as {@link antennaTerms}, in part when the place comes
 */
export function antennaTermsFrom(pair: AntennaPair): (transmitterAtM: Vector3) => AntennaTerms {
  const { transmitter, receiver, receiverAtM, polarisationCapDb: capDb } = pair;
  requireVector("receiverAtM", receiverAtM);
  const txGain = gainTowards(transmitter);
  const rxGain = gainTowards(receiver);
  const txNullDbi = antennaPeakGainDbi(transmitter) - NULL_DEPTH_DB;
  const rxNullDbi = antennaPeakGainDbi(receiver) - NULL_DEPTH_DB;
  return (transmitterAtM) => {
    requireVector("transmitterAtM", transmitterAtM);
    const direction = vectorFrom(transmitterAtM, receiverAtM);
    if (lengthOf(direction) === 0)
      throw new ArgumentError("receiverAtM", "another place than transmitterAtM", "the same place");
    const txGainDbi = txGain(direction);
    const rxGainDbi = rxGain(vectorFrom(receiverAtM, transmitterAtM));
    return {
      txGainDbi,
      rxGainDbi,
      polarisationLossDb: polarisationLossDb({ transmitter, receiver, direction, capDb }),
      txNull: txGainDbi < txNullDbi,
      rxNull: rxGainDbi < rxNullDbi,
    };
  };
}
