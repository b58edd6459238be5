import type { Crowd } from "./reading.js";

/** The three states of a room, emptiest first. */
export const CROWDS: readonly Crowd[] = ["empty", "part", "full"];

/**
 * @returns 0 empty, 1 part, 2 full; a blank crowd counts as part
 * @example crowdRank(null); // => 1
 */
export function crowdRank(crowd: Crowd | null): number {
  return CROWDS.indexOf(crowd ?? "part");
}
