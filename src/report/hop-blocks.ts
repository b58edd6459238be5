import type { ChannelPlan } from "../venue/index.js";

/** The hop frequencies of one block of 5 MHz. */
export interface HopBlock {
  /** Lowest and highest hop frequency in it. */
  readonly fromMhz: number;
  readonly toMhz: number;
  readonly hopCount: number;
  /** Of them in the hop set. */
  readonly keptCount: number;
  /** Over those that are allowed and some scan covers; null where there is none. */
  readonly leastMarginDb: number | null;
  /** Their mean; null where there is none. */
  readonly clearAirRatio: number | null;
}

/** What is known of one hop frequency. */
export type HopScore = Pick<
  ChannelPlan["ranking"][number],
  "allowed" | "centreMhz" | "channel" | "clearAirRatio" | "marginDb" | "spokenBy"
>;

const BLOCK_MHZ = 5;

/** Hop frequencies by blocks from n·5 to below (n + 1)·5 MHz, rising; blocks without any are left out. */
export function hopBlocks(ranking: readonly HopScore[], kept: ReadonlySet<number>): HopBlock[] {
  const blocks = new Map<number, HopScore[]>();
  for (const score of [...ranking].sort((a, b) => a.centreMhz - b.centreMhz)) {
    const key = Math.floor(score.centreMhz / BLOCK_MHZ);
    const block = blocks.get(key);
    if (block === undefined) blocks.set(key, [score]);
    else block.push(score);
  }
  return [...blocks.values()].map((scores) => {
    const judged = scores.filter(({ allowed, spokenBy }) => allowed && spokenBy !== null);
    const clearAir = judged.reduce((sum, { clearAirRatio }) => sum + clearAirRatio, 0);
    return {
      fromMhz: scores[0]!.centreMhz,
      toMhz: scores[scores.length - 1]!.centreMhz,
      hopCount: scores.length,
      keptCount: scores.filter(({ channel }) => kept.has(channel)).length,
      leastMarginDb: judged.length === 0 ? null : Math.min(...judged.map(({ marginDb }) => marginDb)),
      clearAirRatio: judged.length === 0 ? null : clearAir / judged.length,
    };
  });
}
