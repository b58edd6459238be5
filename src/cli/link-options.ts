import { feetToM } from "../units/index.js";
import type { LengthUnit } from "../report/index.js";
import type { PlanChannelOptions } from "../venue/index.js";
import { jobSetting } from "./job-options.js";
import { fadeLawWord, lengthsWord, lengthWord, numberWord } from "./words.js";
import type { NumberSpec } from "./words.js";

/** The options that shape a link. */
export interface LinkOptions {
  readonly distance?: string;
  readonly distances?: string;
  readonly fade?: string;
  readonly reliability?: string;
  readonly receivers?: string;
  readonly reliabilityAll?: string;
  readonly busyShare?: string;
  readonly burstMs?: string;
  readonly eventMinutes?: string;
}

/** Distances of a link table in feet. */
const DISTANCES_FT = [15, 30, 50, 65, 100, 130, 200];

const RELIABILITY: NumberSpec = {
  lowest: 0.5,
  highest: 0.99999,
  expected: "a share of positions, 0.5 to 0.99999",
  example: "0.99",
};
const BUSY_SHARE: NumberSpec = {
  lowest: 0,
  highest: 1,
  expected: "a share of time from 0 to 1",
  example: "0.01",
};
const BURST_MS: NumberSpec = {
  lowest: 0.01,
  highest: 1000,
  expected: "a burst's length in ms, 0.01 to 1000",
  example: "2",
};
const EVENT_MINUTES: NumberSpec = {
  lowest: 1,
  highest: 1440,
  expected: "an event's length in minutes, 1 to 1440",
  example: "90",
};

/** What the options say of the reference receiver and its link; what they don't say is left to the planner. */
export function linkSetting(
  options: LinkOptions,
  unit: LengthUnit,
): Omit<PlanChannelOptions, "emitters" | "profile"> {
  const { distance, distances, fade, reliability, busyShare, burstMs, eventMinutes } = options;
  return {
    ...(distance !== undefined && { distanceM: lengthWord("--distance", distance, unit) }),
    ...(unit === "ft" && { distancesM: DISTANCES_FT.map(feetToM) }),
    ...(distances !== undefined && { distancesM: lengthsWord("--distances", distances, unit) }),
    ...(fade !== undefined && { fadeLaw: fadeLawWord("--fade", fade) }),
    ...(reliability !== undefined && { reliability: numberWord("--reliability", reliability, RELIABILITY) }),
    ...jobSetting(options),
    ...(busyShare !== undefined && { busyShareRatio: numberWord("--busy-share", busyShare, BUSY_SHARE) }),
    ...(burstMs !== undefined && { burstMs: numberWord("--burst-ms", burstMs, BURST_MS) }),
    ...(eventMinutes !== undefined && {
      eventMinutes: numberWord("--event-minutes", eventMinutes, EVENT_MINUTES),
    }),
  };
}
