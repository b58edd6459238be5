import { ArgumentError, requireFinite } from "../issues/index.js";
import type { RadioProfile } from "./profile.js";
import type { PowerRule, RegionCode, RegionRule, RuleFigure } from "./regulation.js";
import { LOCAL_RULES_DECIDE } from "./regulation.js";
import { regionRules } from "./region-rules.js";

/** What is judged; what isn't named is the profile's own figure. */
export interface RegionQuestion {
  readonly profile: RadioProfile;
  readonly region: RegionCode;
  readonly txPowerDbm?: number | undefined;
  readonly txFeederLossDb?: number | undefined;
  readonly txGainDbi?: number | undefined;
  /** Hop frequencies in use; if not given, all of them, or the least number where the profile avoids ranges. */
  readonly hopCount?: number | undefined;
}

/** One limit of the rule applied, made an EIRP with this radio's bandwidth and antenna. */
export interface AppliedLimit {
  readonly kind: "eirp" | "conducted" | "density";
  readonly figure: RuleFigure;
  readonly maxEirpDbm: number;
}

/** A radio against a region's rule. */
export interface RegionJudgement {
  readonly region: RegionCode;
  readonly title: string;
  readonly modulation: "fixed" | "hopping";
  readonly lowMhz: number;
  readonly highMhz: number;
  readonly eirpDbm: number;
  /** The tightest limit, as EIRP with this antenna. */
  readonly maxEirpDbm: number;
  /** The transmit power that meets it with this feeder and antenna. */
  readonly maxTxPowerDbm: number;
  /** dB to turn down; 0 when within the rule. */
  readonly turnDownDb: number;
  /** Which limit it is, with its source and, unless it was read there, how it was come by. */
  readonly limitedBy: string;
  /** Every power limit of the rule applied, the tightest first. */
  readonly limits: readonly AppliedLimit[];
  /** The row of the region's rule that was applied. */
  readonly rule: PowerRule;
  /** Fewest hop frequencies of the rule applied; null for a fixed channel. */
  readonly leastHopCount: number | null;
  /** Hop frequencies that the profile lacks for any row of the rule; 0 where none. */
  readonly hopShortfallCount: number;
  /** What else to know, ending in the words that local rules decide. */
  readonly remark: string;
}

/**
 * The greatest power that a region's rule leaves a radio, for its modulation, bandwidth and antenna. A
 * density limit is spread over the bandwidth (a 1 MHz fixed channel under 10 dBm/MHz: 10 dBm EIRP); a
 * conducted limit falls 1 dB per dB of antenna gain, less feeder loss, above the free gain.
 * A profile with too few hop frequencies for any row is judged by the row that asks fewest, and the shortfall said.
 * @throws {ArgumentError} for an unknown region, a figure not finite, or a `hopCount` lower than any row allows
 * @validity a planning figure: local rules and the radio's own approval decide
 * @example judgeRegion({ profile: findProfile("raster-13"), region: "EU" }).turnDownDb; // => 10
 * @example judgeRegion({ profile: findProfile("hop-79"), region: "GB" }).maxEirpDbm; // => 20
 */
export function judgeRegion(question: RegionQuestion): RegionJudgement {
  const { profile } = question;
  const regionRule = ruleOf(question.region);
  const txPowerDbm = question.txPowerDbm ?? profile.txPowerDbm.value;
  const feederDb = question.txFeederLossDb ?? profile.txFeederLossDb.value;
  const netGainDbi = (question.txGainDbi ?? profile.txGainDbi.value) - feederDb;
  requireFinite("txPowerDbm", txPowerDbm);
  requireFinite("txGainDbi", netGainDbi);
  const hopCount = hopCountOf(question);
  const powerRule = applicableRule(regionRule, question, hopCount);
  const limits = appliedLimits(powerRule, profile.bandwidthMhz.value, netGainDbi);
  const { maxEirpDbm, figure } = limits[0]!;
  const eirpDbm = txPowerDbm + netGainDbi;
  const excessDb = eirpDbm - maxEirpDbm;
  return {
    region: regionRule.region,
    title: regionRule.title,
    modulation: powerRule.modulation,
    lowMhz: regionRule.lowMhz,
    highMhz: regionRule.highMhz,
    eirpDbm,
    maxEirpDbm,
    maxTxPowerDbm: maxEirpDbm - netGainDbi,
    turnDownDb: excessDb > 1e-9 ? excessDb : 0,
    limitedBy: ruleFigureWords(figure),
    limits,
    rule: powerRule,
    leastHopCount: powerRule.leastHopCount?.value ?? null,
    hopShortfallCount: Math.max(0, (powerRule.leastHopCount?.value ?? 0) - hopCount),
    remark: `${regionRule.remark} ${LOCAL_RULES_DECIDE}`.trimStart(),
  };
}

function ruleOf(region: RegionCode): RegionRule {
  if (!Object.hasOwn(regionRules, region))
    throw new ArgumentError("region", `one of ${Object.keys(regionRules).join(", ")}`, region);
  return regionRules[region];
}

/** @returns the source of a rule's figure and, unless it was read there, how it was come by */
export function ruleFigureWords({ source, reading }: RuleFigure): string {
  return reading === "read" ? source : `${source}; ${reading}`;
}

function hopCountOf({ profile, hopCount }: RegionQuestion): number {
  const { hopping, channels } = profile;
  return hopCount ?? (hopping?.avoids === true ? hopping.leastHopCount.value : channels.length);
}

/** @returns the row for so many hop frequencies; the one that asks fewest where the profile has too few */
function applicableRule(regionRule: RegionRule, question: RegionQuestion, hopCount: number): PowerRule {
  if (question.profile.hopping === null) return regionRule.rules.find((row) => row.modulation === "fixed")!;
  const hopRows = regionRule.rules.filter((row) => row.modulation === "hopping");
  const fewest = hopRows[hopRows.length - 1]!;
  const least = fewest.leastHopCount!.value;
  if (question.hopCount !== undefined && !(question.hopCount >= least))
    throw new ArgumentError("hopCount", `${least} hop frequencies or more`, question.hopCount);
  return hopRows.find((row) => hopCount >= row.leastHopCount!.value) ?? fewest;
}

function appliedLimits(rule: PowerRule, bandwidthMhz: number, netGainDbi: number): AppliedLimit[] {
  const overGainDb = rule.freeAntennaGainDbi === null ? 0 : netGainDbi - rule.freeAntennaGainDbi.value;
  const conductedToEirpDb = netGainDbi - Math.max(0, overGainDb);
  const limits: AppliedLimit[] = [];
  if (rule.maxEirpDbm !== null)
    limits.push({ kind: "eirp", figure: rule.maxEirpDbm, maxEirpDbm: rule.maxEirpDbm.value });
  if (rule.maxConductedDbm !== null) {
    const maxEirpDbm = rule.maxConductedDbm.value + conductedToEirpDb;
    limits.push({ kind: "conducted", figure: rule.maxConductedDbm, maxEirpDbm });
  }
  if (rule.density !== null) {
    const { limitDbmPerMhz, measuredOverMhz, at } = rule.density;
    const spreadDbm = limitDbmPerMhz.value + 10 * Math.log10(Math.max(bandwidthMhz, measuredOverMhz));
    const maxEirpDbm = at === "eirp" ? spreadDbm : spreadDbm + conductedToEirpDb;
    limits.push({ kind: "density", figure: limitDbmPerMhz, maxEirpDbm });
  }
  return limits.sort((a, b) => a.maxEirpDbm - b.maxEirpDbm);
}
