import { feetToM } from "../units/index.js";
import type { LengthUnit } from "../report/index.js";
import type { PlanChannelOptions } from "../venue/index.js";
import { fadeLawWord, lengthsWord, lengthWord, numberWord, pathModelWord } from "./words.js";

/** The options that shape a link. */
export interface LinkOptions {
  readonly distance?: string;
  readonly distances?: string;
  readonly pathModel?: string;
  readonly fade?: string;
  readonly reliability?: string;
  readonly busyShare?: string;
  readonly burstMs?: string;
}

/** Distances of a link table in feet. */
const DISTANCES_FT = [15, 30, 50, 65, 100, 130, 200];

/** What the options say of the reference receiver and its link; what they don't say is left to the planner. */
export function linkSetting(
  options: LinkOptions,
  unit: LengthUnit,
): Omit<PlanChannelOptions, "emitters" | "profile"> {
  const { distance, distances, pathModel, fade, reliability, busyShare, burstMs } = options;
  return {
    ...(distance && { distanceM: lengthWord("--distance", distance, unit) }),
    ...(unit === "ft" && { distancesM: DISTANCES_FT.map(feetToM) }),
    ...(distances && { distancesM: lengthsWord("--distances", distances, unit) }),
    ...(pathModel && { pathModel: pathModelWord("--path-model", pathModel) }),
    ...(fade && { fadeLaw: fadeLawWord("--fade", fade) }),
    ...(reliability && {
      reliability: numberWord(
        "--reliability",
        reliability,
        0.5,
        0.99999,
        "a share of positions, 0.5 to 0.99999",
      ),
    }),
    ...(busyShare && {
      busyShareRatio: numberWord("--busy-share", busyShare, 0, 1, "a share of time from 0 to 1"),
    }),
    ...(burstMs && {
      burstMs: numberWord("--burst-ms", burstMs, 0.01, 1000, "a burst's length in ms, 0.01 to 1000"),
    }),
  };
}
