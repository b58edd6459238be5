import type { AppliedLimit, RegulationReview } from "../radio/index.js";

/** A radio under a region's rule; null where no region was named, and power was not judged. */
export function regulationBlock(review: RegulationReview | null): object | null {
  if (review === null) return null;
  const { rule, judgement, breaches, outside, adaptivity, crossCheck } = review;
  const { modulation, eirpDbm, maxEirpDbm, maxTxPowerDbm, turnDownDb, limits, remark } = judgement;
  return {
    region: rule.region,
    title: rule.title,
    modulation,
    eirpDbm,
    maxEirpDbm,
    maxTxPowerDbm,
    turnDownDb,
    limits: limits.map(limitEntry),
    lowMhz: rule.lowMhz,
    highMhz: rule.highMhz,
    bandSource: rule.bandSource,
    bandReading: rule.bandReading,
    outside,
    leastHopCount: judgement.rule.leastHopCount,
    dwells: judgement.rule.dwells,
    adaptivity: { ...rule.adaptivity, ...adaptivity },
    breaches,
    crossCheck: { note: CROSS_CHECK_ONLY, ...crossCheck },
    remark,
  };
}

const CROSS_CHECK_ONLY = "cross-check only: a driver's table of the open regulatory database, not the rule";

function limitEntry({ kind, figure, maxEirpDbm }: AppliedLimit): object {
  const { value, ...origin } = figure;
  const ofDensity = kind === "density";
  return {
    kind,
    limitDbm: ofDensity ? null : value,
    limitDbmPerMhz: ofDensity ? value : null,
    maxEirpDbm,
    ...origin,
  };
}
