import { ArgumentError } from "../issues/index.js";

/** The lines between transmitter and receiver; a gain or loss that isn't named is 0 dB. */
export interface ReceivedTerms {
  readonly txPowerDbm: number;
  readonly txFeederLossDb?: number | undefined;
  /** In the direction of the receiver. */
  readonly txGainDbi?: number | undefined;
  readonly pathLossDb: number;
  readonly wallLossDb?: number | undefined;
  readonly enclosureLossDb?: number | undefined;
  readonly crowdLossDb?: number | undefined;
  readonly polarisationLossDb?: number | undefined;
  /** In the direction of the transmitter. */
  readonly rxGainDbi?: number | undefined;
}

/** Every line of {@link ReceivedTerms}, the unnamed ones 0. */
export type ReceivedLines = { readonly [Key in keyof ReceivedTerms]-?: number };

/**
 * Local-mean received level: power − feeder + gain − path − walls − enclosure − crowd − polarisation + gain,
 * summed as decibels of one path.
 * @returns dBm, the power averaged over small-scale fading
 * @throws {ArgumentError} when a term is NaN or +Infinity (an antenna's null may be −Infinity dBi)
 * @source the Friis transmission equation in decibels, with further losses
 * @validity far field of both antennas
 * @example receivedDbm({ txPowerDbm: 18, txGainDbi: 2, pathLossDb: 66, enclosureLossDb: 10, rxGainDbi: 2 }); // => -54
 */
export function receivedDbm(terms: ReceivedTerms): number {
  const lines = receivedLines(terms);
  return (
    lines.txPowerDbm -
    lines.txFeederLossDb +
    lines.txGainDbi -
    lines.pathLossDb -
    lines.wallLossDb -
    lines.enclosureLossDb -
    lines.crowdLossDb -
    lines.polarisationLossDb +
    lines.rxGainDbi
  );
}

/**
 * The terms with every unnamed gain and loss written as 0.
 * @throws {ArgumentError} as {@link receivedDbm}
 */
export function receivedLines(terms: ReceivedTerms): ReceivedLines {
  const lines: ReceivedLines = {
    txPowerDbm: terms.txPowerDbm,
    txFeederLossDb: terms.txFeederLossDb ?? 0,
    txGainDbi: terms.txGainDbi ?? 0,
    pathLossDb: terms.pathLossDb,
    wallLossDb: terms.wallLossDb ?? 0,
    enclosureLossDb: terms.enclosureLossDb ?? 0,
    crowdLossDb: terms.crowdLossDb ?? 0,
    polarisationLossDb: terms.polarisationLossDb ?? 0,
    rxGainDbi: terms.rxGainDbi ?? 0,
  };
  for (const [name, value] of Object.entries(lines)) {
    const isNull = value === -Infinity && name.endsWith("Dbi");
    if (!Number.isFinite(value) && !isNull) throw new ArgumentError(name, "a finite number", value);
  }
  return lines;
}
