import { SLACK } from "../units/index.js";
import type { HangFlag, HangRow } from "./hang-sheet-types.js";

/** What a crew must see of a row before it lifts; a safety cable's rating is asked for, but stops nobody here. */
export function hangFlags(
  { load, swivelCanopy, unevenM, trimErrorM }: Omit<HangRow, "flags">,
  emergency: "yes" | "no" | "unknown",
): HangFlag[] {
  const verdicts = load.checks.map(({ part, verdict }) => ({ part, verdict }));
  const isUnrated = verdicts.some((one) => one.part !== "safety" && one.verdict === "rating-not-given");
  const flags: readonly (readonly [HangFlag, boolean])[] = [
    ["rating-not-given", isUnrated],
    ["beyond-rating", verdicts.some(({ verdict }) => verdict === "beyond")],
    ["weight-not-given", load.totalKg === null],
    ["beyond-box-limit", load.boxLimit === "beyond"],
    ["swivel-canopy", swivelCanopy === "needed"],
    ["slope-unknown", swivelCanopy === "unknown"],
    ["uneven", unevenM !== null && unevenM !== 0],
    ["below-trim", trimErrorM !== null && trimErrorM < -SLACK],
    ["emergency", emergency === "yes"],
    ["emergency-unknown", emergency === "unknown"],
  ];
  return flags.flatMap(([flag, stands]) => (stands ? [flag] : []));
}

/** Flags with which a luminaire stays on the ground. */
export const STOPPING_FLAGS: readonly HangFlag[] = [
  "rating-not-given",
  "beyond-rating",
  "weight-not-given",
  "beyond-box-limit",
];
