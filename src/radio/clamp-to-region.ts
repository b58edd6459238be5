import type { Issue } from "../issues/index.js";
import { judgeRegion } from "./judge-region.js";
import type { RegionJudgement } from "./judge-region.js";
import type { RadioProfile } from "./profile.js";
import type { RegionCode } from "./regulation.js";

/** A profile after a region's rule was applied to it. */
export interface RegionalProfile {
  /** With its power turned down, unless that figure is the user's. */
  readonly profile: RadioProfile;
  /** How the profile stood before. */
  readonly judgement: RegionJudgement;
  /** What was turned down (a note), or what breaks the rule (an error); null where all is well. */
  readonly issue: Issue | null;
}

/**
 * A profile under a region's rule: a power of the project's own is turned down to the limit and a note says
 * so; a power that the user gave is never changed, and exceeding the limit is an issue of severity error.
 * @throws {ArgumentError} as {@link judgeRegion}
 * @example clampToRegion(findProfile("raster-13"), "EU").profile.txPowerDbm.value; // => 8
 */
export function clampToRegion(profile: RadioProfile, region: RegionCode): RegionalProfile {
  const judgement = judgeRegion({ profile, region });
  if (judgement.turnDownDb === 0) return { profile, judgement, issue: null };
  if (profile.txPowerDbm.status === "yours")
    return { profile, judgement, issue: breachIssue(judgement, profile.name) };
  const { maxTxPowerDbm, limitedBy } = judgement;
  const source = `turned down to the rule of ${region}: ${limitedBy}`;
  const txPowerDbm = { value: maxTxPowerDbm, status: "standard", source } as const;
  const expected = `power taken as ${maxTxPowerDbm.toFixed(1)} dBm, ${judgement.turnDownDb.toFixed(1)} dB lower: ${ruleWords(judgement)}`;
  return {
    profile: { ...profile, txPowerDbm },
    judgement,
    issue: { code: "assumed", severity: "note", source: profile.name, expected, action: "stated" },
  };
}

/**
 * A breach of a region's rule as data, with the dB to turn down.
 * @param source what the issue names as its origin
 * @returns null where the judgement finds none
 * @example breachIssue(judgeRegion({ profile: findProfile("raster-13"), region: "EU" }), "hall").severity; // => "error"
 */
export function breachIssue(judgement: RegionJudgement, source: string): Issue | null {
  if (judgement.turnDownDb === 0) return null;
  const { eirpDbm, turnDownDb } = judgement;
  const expected = `${eirpDbm.toFixed(1)} dBm EIRP is ${turnDownDb.toFixed(1)} dB too much: turn it down by that; ${ruleWords(judgement)}`;
  return { code: "rule-breach", severity: "error", source, expected, action: "stated" };
}

function ruleWords(judgement: RegionJudgement): string {
  const { region, maxEirpDbm, modulation, limitedBy, remark } = judgement;
  return `${region} leaves a ${modulation === "fixed" ? "fixed channel" : "hopping radio"} ${maxEirpDbm.toFixed(1)} dBm EIRP (${limitedBy}). ${remark}`;
}
