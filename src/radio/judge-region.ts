import { ArgumentError, requireFinite } from "../issues/index.js";
import type { RadioProfile } from "./profile.js";
import type { PowerRule, RegionCode, RegionRule } from "./regulation.js";
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
  /** Which limit it is, with its source. */
  readonly limitedBy: string;
  /** Fewest hop frequencies of the rule applied; null for a fixed channel. */
  readonly leastHopCount: number | null;
  /** What else to know, ending in the words that local rules decide. */
  readonly remark: string;
}

/**
 * The greatest power that a region's rule leaves a radio, for its modulation, bandwidth and antenna. A
 * density limit is spread over the bandwidth (a 1 MHz fixed channel under 10 dBm/MHz: 10 dBm EIRP); a
 * conducted limit falls 1 dB per dB of antenna gain, less feeder loss, above the free gain.
 * @throws {ArgumentError} for an unknown region, a figure not finite, or fewer hop frequencies than any row allows
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
  const powerRule = applicableRule(regionRule, question);
  const [maxEirpDbm, limitedBy] = tightestLimit(powerRule, profile.bandwidthMhz.value, netGainDbi);
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
    limitedBy,
    leastHopCount: powerRule.leastHopCount?.value ?? null,
    remark: `${regionRule.remark} ${LOCAL_RULES_DECIDE}`.trimStart(),
  };
}

function ruleOf(region: RegionCode): RegionRule {
  if (!Object.hasOwn(regionRules, region))
    throw new ArgumentError("region", `one of ${Object.keys(regionRules).join(", ")}`, region);
  return regionRules[region];
}

function applicableRule(regionRule: RegionRule, question: RegionQuestion): PowerRule {
  const { hopping, channels } = question.profile;
  if (hopping === null) return regionRule.rules.find((row) => row.modulation === "fixed")!;
  const hopCount = question.hopCount ?? (hopping.avoids ? hopping.leastHopCount.value : channels.length);
  const hopRows = regionRule.rules.filter((row) => row.modulation === "hopping");
  const found = hopRows.find((row) => hopCount >= row.leastHopCount!.value);
  if (found !== undefined) return found;
  const least = hopRows[hopRows.length - 1]!.leastHopCount!.value;
  throw new ArgumentError("hopCount", `${least} hop frequencies or more`, hopCount);
}

/** @returns the lowest limit as EIRP, and which one it is */
function tightestLimit(
  rule: PowerRule,
  bandwidthMhz: number,
  netGainDbi: number,
): readonly [eirpDbm: number, words: string] {
  const overGainDb = rule.freeAntennaGainDbi === null ? 0 : netGainDbi - rule.freeAntennaGainDbi.value;
  const conductedToEirpDb = netGainDbi - Math.max(0, overGainDb);
  const limits: (readonly [number, string])[] = [];
  if (rule.maxEirpDbm !== null) limits.push([rule.maxEirpDbm.value, rule.maxEirpDbm.source]);
  if (rule.maxConductedDbm !== null)
    limits.push([rule.maxConductedDbm.value + conductedToEirpDb, rule.maxConductedDbm.source]);
  if (rule.density !== null) {
    const { limitDbmPerMhz, measuredOverMhz, at } = rule.density;
    const spreadDbm = limitDbmPerMhz.value + 10 * Math.log10(Math.max(bandwidthMhz, measuredOverMhz));
    limits.push([at === "eirp" ? spreadDbm : spreadDbm + conductedToEirpDb, limitDbmPerMhz.source]);
  }
  return limits.reduce((lowest, limit) => (limit[0] < lowest[0] ? limit : lowest));
}
