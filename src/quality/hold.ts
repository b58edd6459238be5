import { requireRatio } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { eventFrameCount, holdFrameCount } from "./frames.js";
import { longestRunProbability } from "./longest-run.js";

/** An event over a link that loses a share of its frames, each on its own. */
export interface EventTerms {
  /** Share of frames lost, 0..1. */
  readonly lossRatio: number;
  /** Frames a second. */
  readonly frameRateHz: number;
  readonly eventMinutes: number;
}

/**
 * The chance of at least one hold of T seconds or more in an event: the longest run of lost frames reaches
 * k = ceil(T·rate − 1e-9) among n = rate·60·minutes. A hold shows only while the look is changing.
 * @param terms the event, and holdS, T in seconds, > 0
 * @returns 0..1
 * @throws {ArgumentError} when the loss is not in 0..1, a time or rate not > 0, or the event has more than 1e8 frames
 * @source as longestRunProbability
 * @validity frames are lost independently of each other
 * @example holdProbability({ lossRatio: 0.1, frameRateHz: 44, eventMinutes: 1, holdS: 0.1 }); // => 0.0234469205084191
 */
export function holdProbability(terms: EventTerms & { readonly holdS: number }): number {
  requireRatio("lossRatio", terms.lossRatio);
  return longestRunProbability({
    trials: eventFrameCount(terms.frameRateHz, terms.eventMinutes),
    runLength: holdFrameCount(terms.holdS, terms.frameRateHz),
    failureProbability: terms.lossRatio,
  });
}

/**
 * The hold that an event sees once on average: the largest k with p^k·(1 + (n−k)(1−p)) ≥ 1, the expected number
 * of runs of k lost frames or more, over the frame rate.
 * @returns s; 0 where not even one lost frame is expected, the whole event where every frame is lost
 * @throws {ArgumentError} when the loss is not in 0..1, a time or rate not > 0, or the event has more than 1e8 frames
 * @source linearity of expectation; M. F. Schilling, College Math. J. 21 (1990) 196–207 for the longest run's size
 * @validity frames are lost independently of each other
 * @example holdOnceAnEventS({ lossRatio: 0.5, frameRateHz: 1, eventMinutes: 0.3 }); // => 3
 */
export function holdOnceAnEventS({ lossRatio, frameRateHz, eventMinutes }: EventTerms): number {
  requireRatio("lossRatio", lossRatio);
  const frameCount = eventFrameCount(frameRateHz, eventMinutes);
  const expectedRuns = (k: number): number => lossRatio ** k * (1 + (frameCount - k) * (1 - lossRatio));
  return runOnceAnEvent(frameCount, expectedRuns) / frameRateHz;
}

/**
 * The longest run of which at least one is expected among the frames of an event; 0 if none.
 * @param expectedRuns expected number of runs of k or more; never rises with k
 */
export function runOnceAnEvent(frameCount: number, expectedRuns: (runLength: number) => number): number {
  let [met, beyond] = [0, frameCount + 1];
  while (beyond - met > 1) {
    const middle = Math.floor((met + beyond) / 2);
    if (expectedRuns(middle) >= 1 - SLACK) met = middle;
    else beyond = middle;
  }
  return met;
}
