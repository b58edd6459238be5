import { SLACK } from "../units/index.js";

/** A channel of a ranking, best first in its list; a `ChannelScore` fits. */
export interface RankedChannel {
  readonly channel: number;
  readonly marginDb: number;
  readonly clearAirRatio: number;
  readonly allowed: boolean;
  /** Strongest first. */
  readonly contributors: readonly { readonly emitter: string; readonly inChannelDbm: number }[];
}

/** How a channel that was planned fares in a ranking made today. */
export interface ChannelToday {
  readonly channel: number;
  /** Today's best allowed channel; null: none. */
  readonly bestChannel: number | null;
  /** Of the planned channel, dB; null where today's ranking hasn't got it. */
  readonly marginDb: number | null;
  readonly clearAirRatio: number | null;
  /** Best − planned, dB; 0 where it is still the best or as good. */
  readonly behindDb: number | null;
  readonly isStillBest: boolean;
  readonly verdict: "still-best" | "as-good" | "beaten" | "fails" | "not-ranked";
}

/** So much another channel may lead before a change is worth a visit, dB (assumed). */
export const AS_GOOD_DB = 3;

/**
 * Would today's ranking still choose the planned channel, and if not, by how many dB? `as-good` within 3 dB of the
 * best, `beaten` beyond, `fails` where its own margin less the allowance is below 0 whatever the others do.
 * @param ranking today's, best first
 * @param fadeAllowanceDb what the margin needs for fading, dB; 0 unless given
 * @param channel number of the radio channel
 * @example channelToday(6, [{ channel: 6, marginDb: 20, clearAirRatio: 1, allowed: true, contributors: [] }]).verdict; // => "still-best"
 */
export function channelToday(
  channel: number,
  ranking: readonly RankedChannel[],
  fadeAllowanceDb = 0,
): ChannelToday {
  const best = ranking.find(({ allowed }) => allowed);
  const own = ranking.find((each) => each.channel === channel);
  const bestChannel = best?.channel ?? null;
  if (own === undefined || best === undefined)
    return {
      ...{ channel, bestChannel, marginDb: null, clearAirRatio: null, behindDb: null },
      ...{ isStillBest: false, verdict: "not-ranked" },
    };
  const behindDb = Math.max(0, best.marginDb - own.marginDb);
  const isStillBest = best === own;
  const { marginDb, clearAirRatio } = own;
  return {
    ...{ channel, bestChannel, marginDb, clearAirRatio, behindDb, isStillBest },
    verdict: verdictOn(own, isStillBest, behindDb, fadeAllowanceDb),
  };
}

function verdictOn(
  { marginDb, allowed }: RankedChannel,
  isStillBest: boolean,
  behindDb: number,
  fadeAllowanceDb: number,
): ChannelToday["verdict"] {
  if (!allowed || marginDb - fadeAllowanceDb < -SLACK) return "fails";
  if (isStillBest) return "still-best";
  return behindDb <= AS_GOOD_DB + SLACK ? "as-good" : "beaten";
}
