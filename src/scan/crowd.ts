import type { Crowd } from "./reading.js";
import { CROWDS } from "./survey-crowd.js";

/**
 * @returns one of the three words, capitals or not; null for anything else
 * @example parseCrowd("Full"); // => "full"
 */
export function parseCrowd(text: string): Crowd | null {
  const word = text.trim().toLowerCase();
  return CROWDS.find((crowd) => crowd === word) ?? null;
}
