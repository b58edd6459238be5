import { requirePositive, requireRatio } from "../issues/index.js";

/**
 * The share of frames lost when each is sent m times: p = (1 − s)^m.
 * @param successRatio share of single transmissions that get through, 0..1
 * @param transmissionsPerFrameCount m; 1: no repeat
 * @returns 0..1
 * @throws {ArgumentError} when the ratio is not in 0..1 or the count not > 0
 * @source the definition: all of m independent transmissions are lost
 * @validity repeats are independent only if they lie further apart than a Wi-Fi burst lasts
 * @example frameLossRatio(0.9, 2); // => 0.01
 */
export function frameLossRatio(successRatio: number, transmissionsPerFrameCount: number): number {
  requireRatio("successRatio", successRatio);
  requirePositive("transmissionsPerFrameCount", transmissionsPerFrameCount);
  return (1 - successRatio) ** transmissionsPerFrameCount;
}

/** Frames lost at one position. */
export interface FrameLoss {
  readonly lossRatio: number;
  readonly lostPerMinute: number;
  /** Share of time in which C/(I+N) suffices at an instant; frames last longer. */
  readonly clearAirRatio: number;
}

/**
 * Loss ratio and lost frames a minute.
 * @param terms frameRateHz: frames a second; the rest as `frameLossRatio`
 * @example frameLoss({ successRatio: 1, clearAirRatio: 1, transmissionsPerFrameCount: 1, frameRateHz: 44 }).lostPerMinute; // => 0
 */
export function frameLoss(terms: {
  readonly successRatio: number;
  readonly clearAirRatio: number;
  readonly transmissionsPerFrameCount: number;
  readonly frameRateHz: number;
}): FrameLoss {
  requirePositive("frameRateHz", terms.frameRateHz);
  const lossRatio = frameLossRatio(terms.successRatio, terms.transmissionsPerFrameCount);
  return { lossRatio, lostPerMinute: lossRatio * terms.frameRateHz * 60, clearAirRatio: terms.clearAirRatio };
}
