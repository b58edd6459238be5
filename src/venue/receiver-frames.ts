import { mean } from "d3-array";
import { frameLoss, transmissionSuccessRatio } from "../quality/index.js";
import type { FrameLoss } from "../quality/index.js";
import type { RadioProfile } from "../radio/index.js";
import { clearAirRatio, harmfulShares } from "../scorer/index.js";
import type { ChannelScore } from "../scorer/index.js";

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
 */
export function receiverFrames(scores: readonly ChannelScore[], terms: FrameTerms): ReceiverFrames {
  return { typical: framesAt(scores, terms, 0), edge: framesAt(scores, terms, terms.fadeAllowanceDb) };
}

function framesAt(
  scores: readonly ChannelScore[],
  { profile, burstMs }: FrameTerms,
  fadeDb: number,
): FrameLoss {
  const positions = scores.map(({ distribution, wantedDbm }) => {
    const receivedDbm = wantedDbm - fadeDb;
    const ceilingDbm = receivedDbm - profile.requiredCiDb.value;
    const clearAir = clearAirRatio(distribution, ceilingDbm);
    const success = transmissionSuccessRatio({
      clearAirRatio: clearAir,
      harmfulRatios: harmfulShares(distribution, ceilingDbm),
      packetMs: profile.packetMs.value,
      burstMs,
      receivedDbm,
      sensitivityDbm: profile.sensitivityDbm.value,
    });
    return { clearAir, success };
  });
  return frameLoss({
    successRatio: mean(positions, ({ success }) => success) ?? 0,
    clearAirRatio: mean(positions, ({ clearAir }) => clearAir) ?? 0,
    transmissionsPerFrameCount: profile.transmissionsPerFrameCount.value,
    frameRateHz: profile.frameRateHz.value,
  });
}
