import { mean } from "d3-array";
import { frameLoss } from "../quality/index.js";
import type { FrameLoss } from "../quality/index.js";
import type { RadioProfile } from "../radio/index.js";
import { positionSuccess } from "./position-success.js";
import type { JudgedAir } from "./position-success.js";

/** Frame loss at the typical position (the local mean) and at the edge of the stated share of positions. */
export interface ReceiverFrames {
  readonly typical: FrameLoss;
  readonly edge: FrameLoss;
}

/** What frame loss needs beside the channel. */
export interface FrameTerms {
  readonly profile: RadioProfile;
  /** Length of one Wi-Fi burst, ms. */
  readonly burstMs: number;
  /** Below the local mean, the edge of the stated share of positions, dB. */
  readonly fadeAllowanceDb: number;
}

/**
 * Frame loss on one channel or, averaged over the transmissions, on the frequencies of a hop set.
 * @param scores one channel, or each hop frequency in use
 * @see {@link planChannel}
 */
export function receiverFrames(scores: readonly JudgedAir[], terms: FrameTerms): ReceiverFrames {
  return { typical: framesAt(scores, terms, 0), edge: framesAt(scores, terms, terms.fadeAllowanceDb) };
}

function framesAt(scores: readonly JudgedAir[], { profile, burstMs }: FrameTerms, fadeDb: number): FrameLoss {
  const positions = scores.map((score) => positionSuccess(score, profile, burstMs, fadeDb));
  return frameLoss({
    successRatio: mean(positions, ({ successRatio }) => successRatio) ?? 0,
    clearAirRatio: mean(positions, ({ clearAirRatio }) => clearAirRatio) ?? 0,
    transmissionsPerFrameCount: profile.transmissionsPerFrameCount.value,
    frameRateHz: profile.frameRateHz.value,
  });
}
