import { mean, median } from "d3-array";
import type { HopPlan } from "../radio/index.js";
import { SLACK } from "../units/index.js";
import type { ChannelScore } from "./channel-score.js";

/** How a hopping radio fares over the frequencies that it uses. */
export interface HopSet {
  /** Channel numbers in use, rising. */
  readonly channels: readonly number[];
  /** Ranges worth keeping out, by centre frequency, rising; empty where the radio cannot avoid any. */
  readonly excludedRanges: readonly {
    readonly fromMhz: number;
    readonly toMhz: number;
    readonly channelCount: number;
  }[];
  /** Mean over the hop set. */
  readonly clearAirRatio: number;
  /** Median over the hop set; null where no frequency is allowed, −Infinity where no wanted level arrives. */
  readonly marginDb: number | null;
  /** The same with every frequency in use: what keeping ranges out gains is the difference. */
  readonly whole: { readonly clearAirRatio: number; readonly marginDb: number | null };
}

/**
 * The hop set of a radio: all allowed frequencies or, where it can keep ranges out, those left when the ones
 * with a negative margin are dropped, worst first, never below the least number that must stay in use.
 * @param ranking every hop frequency scored, best first
 * @see {@link rankChannels}
 */
export function hopSet(ranking: readonly ChannelScore[], plan: HopPlan): HopSet {
  const allowed = ranking.filter((score) => score.allowed && score.spokenBy !== null);
  const leastCount = Math.min(allowed.length, plan.leastHopCount.value);
  const kept = plan.avoids
    ? allowed.filter(({ marginDb }, index) => marginDb >= -SLACK || index < leastCount)
    : allowed;
  const keptChannels = new Set(kept.map(({ channel }) => channel));
  const rising = [...allowed].sort((a, b) => a.centreMhz - b.centreMhz);
  return {
    channels: rising.map(({ channel }) => channel).filter((channel) => keptChannels.has(channel)),
    excludedRanges: excludedRanges(rising, keptChannels),
    ...over(kept),
    whole: over(allowed),
  };
}

function over(scores: readonly ChannelScore[]): HopSet["whole"] {
  return {
    clearAirRatio: mean(scores, (score) => score.clearAirRatio) ?? 0,
    marginDb: medianMarginDb(scores),
  };
}

/** The median's interpolation makes no number of two −Infinities. */
function medianMarginDb(scores: readonly ChannelScore[]): number | null {
  if (scores.some(({ marginDb }) => marginDb === -Infinity)) return -Infinity;
  return median(scores, ({ marginDb }) => marginDb) ?? null;
}

function excludedRanges(
  rising: readonly ChannelScore[],
  kept: ReadonlySet<number>,
): HopSet["excludedRanges"] {
  const ranges: { fromMhz: number; toMhz: number; channelCount: number }[] = [];
  let last: (typeof ranges)[number] | null = null;
  for (const { channel, centreMhz } of rising) {
    if (kept.has(channel)) last = null;
    else if (last === null) ranges.push((last = { fromMhz: centreMhz, toMhz: centreMhz, channelCount: 1 }));
    else {
      last.toMhz = centreMhz;
      last.channelCount++;
    }
  }
  return ranges;
}
