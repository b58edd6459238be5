import type { Issue } from "../issues/index.js";
import { driverCrossCheck } from "./driver-cross-check.js";
import type { DriverCrossCheck } from "./driver-cross-check.js";
import { judgeRegion } from "./judge-region.js";
import type { RegionJudgement } from "./judge-region.js";
import type { RadioChannel, RadioProfile } from "./profile.js";
import { regionRules } from "./region-rules.js";
import type { RegionCode, RegionRule } from "./regulation.js";
import { regulationBreaches } from "./regulation-breach.js";
import type { RegulationBreach } from "./regulation-breach.js";
import { transmitAirtimeRatio } from "./transmit-airtime.js";

/** How far a radio that doesn't listen stays within what the rule asks of it. */
export interface AdaptivityReview {
  /** False below the EIRP from which the rule asks for it, or where none was read. */
  readonly asked: boolean;
  /** EIRP / 100 mW × airtime; what EN 300 328 V1.8.1 cl. 4.3.1.5.1 calls medium utilisation. */
  readonly mediumUseRatio: number;
  /** Above the most that a radio that doesn't adapt may use? Null where nothing is asked or stated. */
  readonly mustAdapt: boolean | null;
}

/** A radio under a region's rule, point by point. */
export interface RegulationReview {
  readonly rule: RegionRule;
  readonly judgement: RegionJudgement;
  /** Empty where the radio keeps the rule, as far as its figures tell. */
  readonly breaches: readonly RegulationBreach[];
  /** Radio channels that leave the region's band. */
  readonly outside: readonly RadioChannel[];
  readonly adaptivity: AdaptivityReview;
  /** A cross-check only, not the rule. */
  readonly crossCheck: DriverCrossCheck;
}

/**
 * A radio against every point of a region's rule: power, hop frequencies, time on one of them, band edges,
 * adaptivity; and, as a cross-check only, beside what general wireless drivers may do there.
 * @throws {ArgumentError} as {@link judgeRegion}
 * @validity a planning figure: local rules and the radio's own approval decide
 * @example regulationReview(findProfile("raster-13"), "EU").breaches[0].turnDownDb; // => 10
 * @example regulationReview(findProfile("hop-79"), "US").breaches; // => []
 */
export function regulationReview(profile: RadioProfile, region: RegionCode): RegulationReview {
  const judgement = judgeRegion({ profile, region });
  const rule = regionRules[region];
  const half = profile.bandwidthMhz.value / 2 - 1e-9;
  return {
    rule,
    judgement,
    breaches: regulationBreaches(profile, judgement),
    outside: profile.channels.filter(
      ({ centreMhz }) => centreMhz - half < rule.lowMhz || centreMhz + half > rule.highMhz,
    ),
    adaptivity: adaptivityOf(profile, rule, judgement.eirpDbm),
    crossCheck: driverCrossCheck(region, profile, judgement.eirpDbm),
  };
}

/**
 * The breaches of a review as data; the one of power is told by {@link clampToRegion}, which may mend it.
 * @param source the profile's name
 * @param source what the issues name as their origin
 * @returns issues of severity error; empty where no such rule is broken
 * @example regulationIssues(regulationReview(findProfile("hop-79"), "US"), "hall"); // => []
 */
export function regulationIssues({ rule, breaches }: RegulationReview, source: string): Issue[] {
  return breaches
    .filter(({ code }) => code !== "eirp")
    .map(({ words }) => ({
      code: "rule-breach",
      severity: "error",
      source,
      expected: `${rule.region}: ${words}`,
      action: "stated",
    }));
}

function adaptivityOf(profile: RadioProfile, { adaptivity }: RegionRule, eirpDbm: number): AdaptivityReview {
  const { fromEirpDbm, mostMediumUseRatio } = adaptivity;
  const asked = fromEirpDbm !== null && eirpDbm >= fromEirpDbm.value - 1e-9;
  const mediumUseRatio = (10 ** (eirpDbm / 10) / 100) * Math.min(1, transmitAirtimeRatio(profile));
  const mustAdapt =
    asked && mostMediumUseRatio !== null ? mediumUseRatio > mostMediumUseRatio.value + 1e-9 : null;
  return { asked, mediumUseRatio, mustAdapt };
}
