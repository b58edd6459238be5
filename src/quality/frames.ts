import { requirePositive, requireWhole } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { GREATEST_TRIALS } from "./longest-run.js";

/**
 * The frames in a row that must be lost for a hold of T seconds: k = ceil(T·rate − 1e-9).
 * @param holdS T, s, > 0
 * @param frameRateHz frames a second, > 0
 * @returns whole frames in a row
 * @throws {ArgumentError} when an argument is not finite and > 0
 * @source the definition; a hold ends with the next frame that arrives
 * @validity a steady frame rate
 * @example [0.1, 0.5, 2].map((holdS) => holdFrameCount(holdS, 44)); // => [5, 22, 88]
 */
export function holdFrameCount(holdS: number, frameRateHz: number): number {
  requirePositive("holdS", holdS);
  requirePositive("frameRateHz", frameRateHz);
  return Math.max(1, Math.ceil(holdS * frameRateHz - SLACK));
}

/**
 * The whole frames of an event: n = rate·60·minutes.
 * @param frameRateHz frames a second, > 0
 * @param eventMinutes > 0
 * @returns whole frames
 * @throws {ArgumentError} when an argument is not finite and > 0, or the event has more than 1e8 frames
 * @source the definition
 * @validity a steady frame rate
 * @example eventFrameCount(44, 90); // => 237600
 */
export function eventFrameCount(frameRateHz: number, eventMinutes: number): number {
  requirePositive("frameRateHz", frameRateHz);
  requirePositive("eventMinutes", eventMinutes);
  const frameCount = Math.floor(frameRateHz * 60 * eventMinutes + SLACK);
  requireWhole("frameRateHz · 60 · eventMinutes", frameCount, 0, GREATEST_TRIALS);
  return frameCount;
}
