import { SLACK } from "../units/index.js";
import { cordAmpacity } from "./cord-ampacity.js";
import type { CordConductor } from "./cord-conductors.js";
import { AWG_CORDS, MM2_CORDS } from "./cord-conductors.js";
import type { ConductorChoice } from "./circuit-types.js";
import { awgAreaMm2 } from "./wire-gauge.js";

/** What a conductor is chosen by. */
export interface ConductorTerms {
  readonly sizes: "awg" | "mm2";
  readonly feed: "own-box" | "through-fed" | "unknown";
  readonly breakerA: number | null;
  readonly loadedCount: 2 | 3;
  readonly mostDropRatio: number;
  /** Greatest drop with a conductor; null: lengths, loads or supply aren't known. */
  readonly dropRatioOf: ((conductor: CordConductor) => number) | null;
}

/** Least gauge by use, with earth: common practice, no source. A feed that isn't known counts as through-fed. */
export const LEAST_AWG = { "own-box": 16, "through-fed": 14 } as const;

/**
 * The smallest conductor that use, ampacity and voltage drop all allow. Ampacity is held to the breaker, not to the
 * load alone: the breaker is what opens. In mm² the least by use is the next size with at least the gauge's area.
 * @example chooseConductor({ sizes: "awg", feed: "own-box", breakerA: 20, loadedCount: 2, mostDropRatio: 0.03,
 *   dropRatioOf: null }).conductor.awg <= 14; // => true
 */
export function chooseConductor(terms: ConductorTerms): ConductorChoice {
  const { sizes, feed, breakerA, loadedCount, mostDropRatio, dropRatioOf } = terms;
  const cords = sizes === "awg" ? AWG_CORDS : MM2_CORDS;
  const leastMm2 = awgAreaMm2(LEAST_AWG[feed === "own-box" ? "own-box" : "through-fed"]);
  const byUse = cords.find(({ areaMm2 }) => areaMm2 >= leastMm2 - SLACK)!;
  const carries = (cord: CordConductor): boolean =>
    breakerA !== null && cordAmpacity(cord, loadedCount).ampacityA >= breakerA - SLACK;
  const byAmpacity = cords.find(carries) ?? null;
  const isDropJudged = dropRatioOf !== null;
  const byDrop =
    dropRatioOf === null ? null : (cords.find((cord) => dropRatioOf(cord) <= mostDropRatio + SLACK) ?? null);
  const choice = { byUse, byAmpacity, byDrop, isDropJudged };
  if (breakerA === null) return { ...choice, conductor: null, decidedBy: null, gap: "breaker-not-given" };
  if (byAmpacity === null || (isDropJudged && byDrop === null))
    return { ...choice, conductor: null, decidedBy: null, gap: "beyond-table" };
  const needs = [
    ["use", byUse],
    ["ampacity", byAmpacity],
    ["drop", byDrop ?? byUse],
  ] as const;
  const [decidedBy, conductor] = needs.reduce((most, need) =>
    need[1].areaMm2 > most[1].areaMm2 ? need : most,
  );
  return { ...choice, conductor, decidedBy, gap: null };
}
