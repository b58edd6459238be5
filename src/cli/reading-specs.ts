import type { NumberSpec } from "./words.js";

/** What a receiver still hears, in an option. */
export const FLOOR: NumberSpec = {
  lowest: -150,
  highest: -30,
  expected: "a level in dBm from -150 to -30",
  example: "-95",
};

/** Of an interval, in an option. */
export const CONFIDENCE: NumberSpec = {
  lowest: 0.5,
  highest: 0.9999,
  expected: "a share from 0.5 to 0.9999",
  example: "0.95",
};
