import { holdFrameCount } from "./frames.js";
import { holdOnceAnEventS, holdProbability } from "./hold.js";
import type { EventTerms } from "./hold.js";

/** What the audience sees of a link in an event. A hold shows only while the look is changing. */
export interface Look {
  /** Share of frames lost, 0..1. */
  readonly lossRatio: number;
  readonly lostPerMinute: number;
  /** Of 0.1, 0.5 and 2 s. */
  readonly holds: readonly HoldChance[];
  /** The hold met once an event on average; 0 if none. */
  readonly holdOnceAnEventS: number;
}

/** The chance of at least one hold of a length or more in the event. */
export interface HoldChance {
  readonly holdS: number;
  /** Lost frames in a row that make it. */
  readonly frameCount: number;
  /** 0..1 */
  readonly probability: number;
}

/** The holds that are stated, s: hardly seen, seen, and taken for a fault (common practice, no source). */
export const STATED_HOLDS_S: readonly number[] = [0.1, 0.5, 2];

/**
 * What a share of lost frames looks like: lost frames a minute, the chances of a hold of 0.1, 0.5 and 2 s or more,
 * and the hold met once an event.
 * @throws {ArgumentError} when the loss is not in 0..1, a time or rate not > 0, or the event has more than 1e8 frames
 * @source as holdProbability and holdOnceAnEventS
 * @validity frames are lost independently of each other; fades and long bursts cluster them: see lookInBursts
 * @example lookOf({ lossRatio: 0.1, frameRateHz: 44, eventMinutes: 1 }).holds[0]; // => {
 * //   holdS: 0.1, frameCount: 5, probability: 0.0234469205084191 }
 */
export function lookOf(terms: EventTerms): Look {
  const { lossRatio, frameRateHz, eventMinutes } = terms;
  return {
    lossRatio,
    lostPerMinute: lossRatio * frameRateHz * 60,
    holds: STATED_HOLDS_S.map((holdS) => ({
      holdS,
      frameCount: holdFrameCount(holdS, frameRateHz),
      probability: holdProbability({ lossRatio, frameRateHz, eventMinutes, holdS }),
    })),
    holdOnceAnEventS: holdOnceAnEventS(terms),
  };
}
