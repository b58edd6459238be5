import { max, quantile } from "d3-array";
import { SLACK } from "../units/index.js";
import type { Heard } from "./survey-source.js";
import type { ReportedAirtime } from "./survey.js";

/** Airtime assumed for a source that reports none, by the fullest crowd scanned. */
export interface AssumedAirtime {
  readonly emptyRatio: number;
  readonly partRatio: number;
  readonly fullRatio: number;
  /** From this level up a source is presumably the building's own and carries the crowd; weaker ones stay at empty. */
  readonly ownFromDbm: number;
}

/** Common practice, no source: planning figures, to be replaced by a scan that reports its load. */
export const ASSUMED_AIRTIME: AssumedAirtime = {
  emptyRatio: 0.1,
  partRatio: 0.25,
  fullRatio: 0.5,
  ownFromDbm: -75,
};

/** A source's airtime and whether it was assumed. */
export interface Airtime {
  readonly airtimeRatio: number;
  readonly airtimeAssumed: boolean;
}

/** What a source reported itself, the 0.9 quantile over the instants of each crowd. */
export function reportedAirtime(heard: readonly Heard[]): ReportedAirtime {
  const ofCrowd = (rank: number): number | null =>
    quantile(heard, 0.9, ({ crowdRank, airtimeRatio }) => (crowdRank === rank ? airtimeRatio : null)) ?? null;
  return { emptyRatio: ofCrowd(0), partRatio: ofCrowd(1), fullRatio: ofCrowd(2) };
}

/**
 * The airtime of a source: the 0.9 quantile over the instants of the fullest crowd in which it reported a
 * load; else what is assumed for its level and the fullest crowd of the whole survey.
 * @param fullestRank fullest crowd of the survey: 0 empty, 1 part, 2 full
 * @param isOwn is it the building's, which our crowd loads? Presumed from the level unless given
 */
export function airtimeOf(
  heard: readonly Heard[],
  levelDbm: number,
  fullestRank: number,
  assumed: AssumedAirtime = ASSUMED_AIRTIME,
  isOwn = levelDbm >= assumed.ownFromDbm - SLACK,
): Airtime {
  const reporting = heard.filter(({ airtimeRatio }) => airtimeRatio !== null);
  const fullest = max(reporting, ({ crowdRank }) => crowdRank);
  const reported = reporting
    .filter(({ crowdRank }) => crowdRank === fullest)
    .map(({ airtimeRatio }) => airtimeRatio!);
  const airtimeRatio = quantile(reported, 0.9);
  if (airtimeRatio !== undefined) return { airtimeRatio, airtimeAssumed: false };
  const byCrowd = [assumed.emptyRatio, assumed.partRatio, assumed.fullRatio];
  return { airtimeRatio: isOwn ? byCrowd[fullestRank]! : assumed.emptyRatio, airtimeAssumed: true };
}
