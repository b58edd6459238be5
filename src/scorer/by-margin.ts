import { SLACK } from "../units/index.js";
import type { ChannelScore } from "./channel-score.js";

/**
 * The order of a ranking: greatest margin, greatest clear air, both to 1e-9, lowest channel number.
 * @returns below 0 where `a` comes first
 */
export function byMargin(
  a: Pick<ChannelScore, "marginDb" | "clearAirRatio" | "channel">,
  b: Pick<ChannelScore, "marginDb" | "clearAirRatio" | "channel">,
): number {
  return (
    Math.round(b.marginDb / SLACK) - Math.round(a.marginDb / SLACK) ||
    Math.round(b.clearAirRatio / SLACK) - Math.round(a.clearAirRatio / SLACK) ||
    a.channel - b.channel
  );
}
