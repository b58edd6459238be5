import { requireFinite, requirePositive, requireRatio } from "../issues/index.js";
import { SLACK } from "../units/index.js";

/** What one transmission of a frame meets at a receiver. */
export interface TransmissionTerms {
  /** Share of time in which C/(I+N) suffices at an instant. */
  readonly clearAirRatio: number;
  /** On-share of each contention group's harmful emitters together. */
  readonly harmfulRatios: readonly number[];
  /** Length of one transmission, ms. */
  readonly packetMs: number;
  /** Length of one Wi-Fi burst, ms; 2 is assumed where nothing is known. */
  readonly burstMs: number;
  readonly receivedDbm: number;
  readonly sensitivityDbm: number;
}

/**
 * The share of transmissions that get through: s = clear air · Π exp(−τ·a / (burst·(1 − a))) over the groups'
 * harmful on-shares a. A burst lasts `burstMs`, the idle gaps are exponential with mean burst·(1 − a)/a, and a
 * transmission that starts in clear air is lost when a harmful burst begins before it ends.
 * @returns 0..1; 0 where some a is 1 or the level is below the sensitivity
 * @throws {ArgumentError} when a share is not in 0..1, a time not > 0, or a level not finite (the
 * received one may be −Infinity: nothing arrives)
 * @source renewal process with exponential gaps; the burst length and the independence of groups are assumed
 * @validity harmful emitters of different groups act independently; a long transmission among short bursts
 * @example transmissionSuccessRatio({ clearAirRatio: 1, harmfulRatios: [], packetMs: 4.5, burstMs: 2, receivedDbm: -60, sensitivityDbm: -90 }); // => 1
 */
export function transmissionSuccessRatio(terms: TransmissionTerms): number {
  const { clearAirRatio, harmfulRatios, packetMs, burstMs, receivedDbm, sensitivityDbm } = terms;
  requireRatio("clearAirRatio", clearAirRatio);
  requirePositive("packetMs", packetMs);
  requirePositive("burstMs", burstMs);
  if (receivedDbm !== -Infinity) requireFinite("receivedDbm", receivedDbm);
  requireFinite("sensitivityDbm", sensitivityDbm);
  for (const ratio of harmfulRatios) requireRatio("harmfulRatios", ratio);
  if (receivedDbm < sensitivityDbm - SLACK) return 0;
  let exponent = 0;
  for (const share of harmfulRatios) {
    if (share >= 1 - SLACK) return 0;
    exponent += (packetMs * share) / (burstMs * (1 - share));
  }
  return clearAirRatio * Math.exp(-exponent);
}
