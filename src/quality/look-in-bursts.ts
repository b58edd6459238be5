import { requireFinite } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { chainLongestRunProbability, expectedRunsInChain } from "./chain-longest-run.js";
import { ALWAYS_LOST, chainLossRatio, frameChain } from "./frame-chain.js";
import { eventFrameCount, holdFrameCount } from "./frames.js";
import { runOnceAnEvent } from "./hold.js";
import { STATED_HOLDS_S } from "./look.js";
import type { Look } from "./look.js";
import type { TransmissionTerms } from "./transmission-success.js";
import { twoStateChannel } from "./two-state-channel.js";

/** What a burst-aware look needs: the transmission, its repeats and the event. */
export interface BurstLookTerms extends TransmissionTerms {
  readonly transmissionsPerFrameCount: number;
  readonly frameRateHz: number;
  readonly eventMinutes: number;
}

/**
 * The look with bursts that may spoil frames in a row, for standing beside {@link lookOf}: the band is a two-state
 * channel (clear, harmful) in continuous time, a frame is lost when each of its transmissions meets the harmful
 * state, and what is harmful at the end of a frame may still be so at the next. Runs by an exact Markov recursion.
 *
 * Limits: a long burst is what it adds. Bursts much shorter than the time from one frame to the next (2 ms against
 * 18 ms) are forgotten by then, and the result is the independent one. It knows nothing of slow changes: people
 * who walk into the path, fades, a crowd that arrives, traffic that comes in waves of seconds; these make longer
 * holds than either figure. Bursts are exponential, so some are long; of bursts that all last the mean, holds beyond
 * it are rarer than this says. Several groups are one channel with the mean length of their union. Its lossRatio is
 * that of frameLossRatio for one transmission a frame whose harmful groups are independent; with repeats it is
 * greater (they may meet the same burst), and so it is where sources harm only jointly. On one frequency: a hopping
 * radio leaves a burst behind by hopping.
 * @returns as lookOf; everything lost where some share is 1 or the level is below the sensitivity
 * @throws {ArgumentError} when a share is not in 0..1, a time, rate or count not > 0, a level not finite, the count
 *   not whole, the transmissions longer than the frame, or the event longer than 1e8 frames
 * @source as twoStateChannel and longestRunProbability
 * @validity see the limits
 * @example lookInBursts({ clearAirRatio: 0.8, harmfulRatios: [0.2], packetMs: 4.5, burstMs: 2, receivedDbm: -60,
 *   sensitivityDbm: -90, transmissionsPerFrameCount: 1, frameRateHz: 44, eventMinutes: 90 }).lossRatio; // => 0.5441737402152615
 */
export function lookInBursts(terms: BurstLookTerms): Look {
  const { receivedDbm, sensitivityDbm, frameRateHz, eventMinutes } = terms;
  if (receivedDbm !== -Infinity) requireFinite("receivedDbm", receivedDbm); // −Infinity: nothing arrives
  requireFinite("sensitivityDbm", sensitivityDbm);
  const channelChain = frameChain(twoStateChannel(terms), terms);
  const chain = receivedDbm < sensitivityDbm - SLACK ? ALWAYS_LOST : channelChain;
  const frameCount = eventFrameCount(frameRateHz, eventMinutes);
  const lossRatio = chainLossRatio(chain);
  const expectedRuns = (runLength: number): number => expectedRunsInChain(chain, frameCount, runLength);
  return {
    lossRatio,
    lostPerMinute: lossRatio * frameRateHz * 60,
    holds: STATED_HOLDS_S.map((holdS) => {
      const runLength = holdFrameCount(holdS, frameRateHz);
      const probability = chainLongestRunProbability(chain, frameCount, runLength);
      return { holdS, frameCount: runLength, probability };
    }),
    holdOnceAnEventS: runOnceAnEvent(frameCount, expectedRuns) / frameRateHz,
  };
}
