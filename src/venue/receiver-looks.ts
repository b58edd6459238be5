import { lookInBursts, lookOf } from "../quality/index.js";
import type { Look } from "../quality/index.js";
import { SLACK } from "../units/index.js";
import type { RadioProfile } from "../radio/index.js";
import { positionSuccess } from "./position-success.js";
import type { JudgedAir } from "./position-success.js";
import type { FrameTerms, ReceiverFrames } from "./receiver-frames.js";

/** What the audience sees at one position: frames lost independently and, beside it, in bursts. */
export interface PositionLook extends Look {
  readonly eventMinutes: number;
  /** The two-state channel's; null with the reason where it says nothing. */
  readonly inBursts: Look | null;
  readonly inBurstsReason: string | null;
}

/** At the typical position (the local mean) and at the edge of the stated share of positions. */
export interface ReceiverLooks {
  readonly typical: PositionLook;
  readonly edge: PositionLook;
}

/** What looks need beside the channel. */
export interface LookTerms extends FrameTerms {
  readonly eventMinutes: number;
}

/**
 * What the audience sees in an event. The independent look is that of the share of frames lost, which is by
 * beacon lists and sweeps together. The burst-aware one rests on the beacon lists alone: on one channel, with
 * clear air and harmful groups as {@link receiverFrames} takes them, as one two-state channel of exponential
 * bursts whose mean is the burst length given, transmissions spaced evenly over the frame (see `lookInBursts`).
 * Overlaps of sources that harm only together are bursts of that channel, too, where the independent look counts
 * them at a transmission's begin alone: there it loses more frames, and is the nearer of the two.
 * It is null for a hopping radio, where a sweep tells of more loss than the beacon lists (it knows no bursts), and
 * where the transmissions don't fit in the frame.
 * @param scores one channel, or each hop frequency in use
 * @param frames what receiverFrames gives for the same scores and terms
 * @see {@link planChannel}
 */
export function receiverLooks(
  scores: readonly JudgedAir[],
  frames: ReceiverFrames,
  terms: LookTerms,
): ReceiverLooks {
  return {
    typical: lookAt(scores, frames.typical.lossRatio, terms, 0),
    edge: lookAt(scores, frames.edge.lossRatio, terms, terms.fadeAllowanceDb),
  };
}

function lookAt(
  scores: readonly JudgedAir[],
  lossRatio: number,
  terms: LookTerms,
  fadeDb: number,
): PositionLook {
  const { profile, eventMinutes } = terms;
  const independent = lookOf({ lossRatio, frameRateHz: profile.frameRateHz.value, eventMinutes });
  return { ...independent, eventMinutes, ...burstsAt(scores, terms, fadeDb) };
}

function burstsAt(
  scores: readonly JudgedAir[],
  { profile, burstMs, eventMinutes }: LookTerms,
  fadeDb: number,
): Pick<PositionLook, "inBursts" | "inBurstsReason"> {
  const [score] = scores;
  const none = (inBurstsReason: string): ReturnType<typeof burstsAt> => ({ inBursts: null, inBurstsReason });
  if (profile.hopping !== null || score === undefined) return none("a hop leaves the burst behind");
  if (!transmissionsFit(profile)) return none("the transmissions of a frame last longer than the frame");
  const { receivedDbm, spokenBy, beacons } = positionSuccess(score, profile, burstMs, fadeDb);
  if (spokenBy === "sweep") return none("a power sweep speaks here, and it tells no bursts apart");
  const inBursts = lookInBursts({
    ...beacons,
    packetMs: profile.packetMs.value,
    burstMs,
    receivedDbm,
    sensitivityDbm: profile.sensitivityDbm.value,
    transmissionsPerFrameCount: profile.transmissionsPerFrameCount.value,
    frameRateHz: profile.frameRateHz.value,
    eventMinutes,
  });
  return { inBursts, inBurstsReason: null };
}

/** Do all transmissions of a frame fit in the time from one frame to the next? */
function transmissionsFit({ packetMs, transmissionsPerFrameCount, frameRateHz }: RadioProfile): boolean {
  return packetMs.value <= 1000 / frameRateHz.value / transmissionsPerFrameCount.value + SLACK;
}
