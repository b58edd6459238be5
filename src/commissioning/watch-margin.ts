import { ArgumentError, requireFinite } from "../issues/index.js";
import { dot, leastSquares, studentTTailQuantile } from "../numeric/index.js";
import { parseIsoTime } from "../scan/index.js";
import { SLACK } from "../units/index.js";
import type { Interval } from "./fit-estimate.js";

/** The planned channel's margin in a scan of some date. */
export interface DatedMargin {
  /** ISO 8601; a time without a zone counts as UTC. */
  readonly date: string;
  /** Interference margin less the fade allowance, dB: below 0 the channel fails. */
  readonly marginDb: number;
}

/** How a margin drifted. */
export interface MarginWatch {
  /** By date. */
  readonly series: readonly DatedMargin[];
  /** Slope by least squares, dB a week; null for fewer than three dates. */
  readonly weeklyDriftDb: number | null;
  /** 95 %. */
  readonly weeklyDriftIntervalDb: Interval | null;
  /** `falling` or `rising` where the interval leaves 0 out. */
  readonly trend: "falling" | "rising" | "steady" | "too-few-dates";
  /** Last − first, dB. */
  readonly changeDb: number;
  readonly worst: DatedMargin;
  /** The first scan in which the channel would have failed; null: it never did. */
  readonly firstFailure: DatedMargin | null;
  /** Scans of the series in which it would have failed. */
  readonly failureCount: number;
}

/**
 * How the margin of the planned channel drifted over dated scans, and when it would first have failed. The order
 * of the series doesn't matter; scans of one date all count.
 * @throws {ArgumentError} when the series is empty, a date is none or a margin not finite
 * @source drift and interval: ordinary least squares, Student's t
 * @validity an interval from scans that are independent of each other: same day, same crowd, same spots
 * @example watchMargin([{ date: "2026-03-01", marginDb: 9 }, { date: "2026-03-15", marginDb: 5 }, { date: "2026-03-08", marginDb: 7 }]).weeklyDriftDb; // => -2
 */
export function watchMargin(dated: readonly DatedMargin[]): MarginWatch {
  if (dated.length === 0) throw new ArgumentError("dated", "at least one scan", "none");
  const timed = dated
    .map((each) => ({ each, weeks: weeksOf(each) }))
    .sort((a, b) => a.weeks - b.weeks || a.each.marginDb - b.each.marginDb);
  const series = timed.map(({ each }) => each);
  const drift = driftOf(
    timed.map(({ weeks }) => weeks - timed[0]!.weeks),
    series.map(({ marginDb }) => marginDb),
  );
  const failures = series.filter(({ marginDb }) => marginDb < -SLACK);
  return {
    series,
    weeklyDriftDb: drift?.slope ?? null,
    weeklyDriftIntervalDb: drift?.interval ?? null,
    trend: drift === null ? "too-few-dates" : trendOf(drift.interval),
    changeDb: series[series.length - 1]!.marginDb - series[0]!.marginDb,
    worst: series.reduce((low, each) => (each.marginDb < low.marginDb ? each : low)),
    firstFailure: failures[0] ?? null,
    failureCount: failures.length,
  };
}

const MS_PER_WEEK = 7 * 86_400_000;
const TAIL_RATIO = 0.025;

function weeksOf({ date, marginDb }: DatedMargin): number {
  requireFinite(`marginDb of ${date}`, marginDb);
  const ms = parseIsoTime(date);
  if (ms === null) throw new ArgumentError("date", "a date as ISO 8601 writes it", date);
  return ms / MS_PER_WEEK;
}

function driftOf(
  weeks: readonly number[],
  marginsDb: readonly number[],
): { slope: number; interval: Interval } | null {
  if (new Set(weeks).size < 3) return null;
  const fit = leastSquares(
    weeks.map((each) => [1, each]),
    marginsDb,
  );
  if (fit === null) return null;
  const freedomCount = weeks.length - 2;
  const variance = (dot(fit.residuals, fit.residuals) / freedomCount) * fit.unscaledCovariance[1]![1]!;
  const half = studentTTailQuantile(TAIL_RATIO, freedomCount) * Math.sqrt(variance);
  const slope = fit.coefficients[1]!;
  return { slope, interval: [slope - half, slope + half] };
}

/** A change of 1e-9 dB a week is none. */
function trendOf([low, high]: Interval): MarginWatch["trend"] {
  if (high < -SLACK) return "falling";
  return low > SLACK ? "rising" : "steady";
}
