import { ArgumentError, requirePositive, requireWhole } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { IDENTITY, moved, NOTHING, product, sum, total } from "./matrix-two.js";
import type { MatrixTwo, RowTwo } from "./matrix-two.js";
import type { TwoStateChannel } from "./two-state-channel.js";

/** Frames over a two-state channel, state 0 clear and 1 harmful, each matrix from one frame's start to the next's. */
export interface FrameChain {
  /** The state at a frame's start, in the long run. */
  readonly start: RowTwo;
  /** The frame is lost and the state moves so. */
  readonly lost: MatrixTwo;
  /** The frame gets through and the state moves so; lost + kept is the channel's own movement. */
  readonly kept: MatrixTwo;
}

/** When a frame's transmissions are on the air. */
export interface FrameTiming {
  /** Length of one transmission, ms. */
  readonly packetMs: number;
  readonly transmissionsPerFrameCount: number;
  readonly frameRateHz: number;
}

/**
 * A transmission gets through when the channel is clear from its begin to its end; a frame when one of its
 * transmissions does, which are spaced evenly over the frame (assumed).
 * @throws {ArgumentError} when a figure is not > 0, the count not whole, or the transmissions don't fit in the frame
 */
export function frameChain(channel: TwoStateChannel, timing: FrameTiming): FrameChain {
  const { packetMs, transmissionsPerFrameCount, frameRateHz } = timing;
  requirePositive("packetMs", packetMs);
  requireWhole("transmissionsPerFrameCount", transmissionsPerFrameCount, 1, 1000);
  requirePositive("frameRateHz", frameRateHz);
  const stepMs = 1000 / frameRateHz / transmissionsPerFrameCount;
  if (packetMs > stepMs + SLACK)
    throw new ArgumentError("packetMs", `at most ${stepMs} ms, the time from one to the next`, packetMs);
  if (channel.clearMs === 0) return ALWAYS_LOST;
  const gap = movement(channel, Math.max(0, stepMs - packetMs));
  const through: MatrixTwo = [Math.exp(-packetMs / channel.clearMs), 0, 0, 0];
  const [cc, ch, hc, hh] = movement(channel, packetMs);
  const keptOnce = product(through, gap);
  const lostOnce = product([Math.max(0, cc - through[0]), ch, hc, hh], gap);
  const step = movement(channel, stepMs);
  let [lost, kept] = [IDENTITY, NOTHING];
  for (let count = 0; count < transmissionsPerFrameCount; count++) {
    kept = sum(product(kept, step), product(lost, keptOnce));
    lost = product(lost, lostOnce);
  }
  return { start: [1 - channel.harmfulRatio, channel.harmfulRatio], lost, kept };
}

/** A link on which nothing gets through. */
export const ALWAYS_LOST: FrameChain = { start: [0, 1], lost: IDENTITY, kept: NOTHING };

/** The share of frames lost, in the long run. */
export function chainLossRatio({ start, lost }: FrameChain): number {
  return Math.min(1, total(moved(start, lost)));
}

/** The state's movement over a time: it forgets at the rate 1/clear + 1/harmful. */
function movement({ harmfulRatio, harmfulMs, clearMs }: TwoStateChannel, timeMs: number): MatrixTwo {
  const forgotten = -Math.expm1(-timeMs * (1 / clearMs + 1 / harmfulMs));
  const [toHarmful, toClear] = [harmfulRatio * forgotten, (1 - harmfulRatio) * forgotten];
  return [1 - toHarmful, toHarmful, toClear, 1 - toClear];
}
