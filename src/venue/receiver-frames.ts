import { mean } from "d3-array";
import { frameLoss, transmissionSuccessRatio } from "../quality/index.js";
import type { FrameLoss } from "../quality/index.js";
import type { RadioProfile } from "../radio/index.js";
import { clearAirRatio, harmfulShares, sweptClearAirRatio } from "../scorer/index.js";
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
  const positions = scores.map(({ distribution, swept, wantedDbm }) => {
    const receivedDbm = wantedDbm - fadeDb;
    const ceilingDbm = receivedDbm - profile.requiredCiDb.value;
    const success = (clearRatio: number, harmfulRatios: readonly number[]): number =>
      transmissionSuccessRatio({
        clearAirRatio: clearRatio,
        harmfulRatios,
        packetMs: profile.packetMs.value,
        burstMs,
        receivedDbm,
        sensitivityDbm: profile.sensitivityDbm.value,
      });
    const byBeacons = clearAirRatio(distribution, ceilingDbm);
    const beaconSuccess = success(byBeacons, harmfulShares(distribution, ceilingDbm));
    const bySweep = sweptClearAirRatio(swept, ceilingDbm);
    if (bySweep === null) return { clearAir: byBeacons, success: beaconSuccess };
    // A sweep tells no groups apart: its busy share counts as one group's bursts.
    const sweepSuccess = success(bySweep, bySweep < 1 ? [1 - bySweep] : []);
    return { clearAir: Math.min(byBeacons, bySweep), success: Math.min(beaconSuccess, sweepSuccess) };
  });
  return frameLoss({
    successRatio: mean(positions, ({ success }) => success) ?? 0,
    clearAirRatio: mean(positions, ({ clearAir }) => clearAir) ?? 0,
    transmissionsPerFrameCount: profile.transmissionsPerFrameCount.value,
    frameRateHz: profile.frameRateHz.value,
  });
}
