import { ruleFigureWords } from "./judge-region.js";
import type { AppliedLimit, RegionJudgement } from "./judge-region.js";
import type { RadioProfile } from "./profile.js";
import type { RuleFigure } from "./regulation.js";

/** A rule that the radio breaks: the number, the rule, and in words what would mend it. */
export type RegulationBreach = { readonly words: string } & (
  | {
      readonly code: "eirp";
      readonly eirpDbm: number;
      readonly maxEirpDbm: number;
      readonly turnDownDb: number;
      readonly limit: AppliedLimit;
    }
  | { readonly code: "hop-count"; readonly hopCount: number; readonly least: RuleFigure }
  | { readonly code: "dwell"; readonly packetS: number; readonly most: RuleFigure }
);

/**
 * What a radio breaks of the rule that it was judged by: too much power, too few hop frequencies, or one
 * packet longer than any radio may stay on a frequency.
 */
export function regulationBreaches(profile: RadioProfile, judgement: RegionJudgement): RegulationBreach[] {
  const packetS = profile.packetMs.value / 1000;
  return [...powerBreach(judgement), ...hopBreach(judgement), ...dwellBreach(judgement, packetS)];
}

function powerBreach({
  eirpDbm,
  maxEirpDbm,
  turnDownDb,
  limits,
  limitedBy,
}: RegionJudgement): RegulationBreach[] {
  if (turnDownDb === 0) return [];
  const words = `${eirpDbm.toFixed(1)} dBm EIRP is ${turnDownDb.toFixed(1)} dB above the ${maxEirpDbm.toFixed(1)} dBm of ${limitedBy}: turn the power down by that`;
  return [{ code: "eirp", words, eirpDbm, maxEirpDbm, turnDownDb, limit: limits[0]! }];
}

function hopBreach({ rule, hopShortfallCount }: RegionJudgement): RegulationBreach[] {
  const least = rule.leastHopCount;
  if (least === null || hopShortfallCount === 0) return [];
  const hopCount = least.value - hopShortfallCount;
  const words = `${hopCount} hop frequencies are fewer than the ${least.value} of ${ruleFigureWords(least)}: hop over more`;
  return [{ code: "hop-count", words, hopCount, least }];
}

function dwellBreach({ rule }: RegionJudgement, packetS: number): RegulationBreach[] {
  const most = rule.dwells[rule.dwells.length - 1]?.mostDwellS;
  if (most === undefined || packetS <= most.value + 1e-12) return [];
  const words = `a packet of ${packetS} s stays on one frequency longer than the ${most.value} s of ${ruleFigureWords(most)}: send shorter packets`;
  return [{ code: "dwell", words, packetS, most }];
}
