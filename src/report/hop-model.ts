import type { ChannelPlan, ReceiverLink, VenueSystem } from "../venue/index.js";
import { hopBlocks } from "./hop-blocks.js";
import type { HopBlock } from "./hop-blocks.js";

/** What a picture of a hop set shows. */
export interface HopModel {
  /** Rising. */
  readonly blocks: readonly HopBlock[];
  /** Rising. */
  readonly frequencies: readonly HopFrequency[];
  /** Whose margin it is. */
  readonly margin: "interference margin" | "working margin";
}

export interface HopFrequency {
  readonly channel: number;
  readonly centreMhz: number;
  readonly isKept: boolean;
}

/** The hop set of a reference receiver; null where the radio doesn't hop. */
export function hopModel({ ranking, hopSet }: ChannelPlan): HopModel | null {
  if (hopSet === null) return null;
  const kept = new Set(hopSet.channels);
  const rising = [...ranking].sort((a, b) => a.centreMhz - b.centreMhz);
  return {
    blocks: hopBlocks(rising, kept),
    frequencies: rising.map(({ channel, centreMhz }) => ({ channel, centreMhz, isKept: kept.has(channel) })),
    margin: "interference margin",
  };
}

/** The hop frequencies of a hopping system at one of its receivers; those that it may not use are kept out. */
export function receiverHopModel({ profile }: VenueSystem, { channels }: ReceiverLink): HopModel {
  const heard = new Map(channels.map((one) => [one.channel, one]));
  const rising = [...profile.channels].sort((a, b) => a.centreMhz - b.centreMhz);
  const scores = rising.map(({ channel, centreMhz }) => {
    const one = heard.get(channel);
    return {
      ...{ channel, centreMhz, allowed: one !== undefined, clearAirRatio: one?.clearAirRatio ?? 0 },
      marginDb: one?.budget.workingMarginDb ?? -Infinity,
      spokenBy: one === undefined ? null : one.merit.spokenBy,
    };
  });
  return {
    blocks: hopBlocks(scores, new Set(heard.keys())),
    frequencies: rising.map((one) => ({ ...one, isKept: heard.has(one.channel) })),
    margin: "working margin",
  };
}
