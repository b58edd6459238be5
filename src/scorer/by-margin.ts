import { SLACK } from "../units/index.js";
import type { ChannelScore } from "./channel-score.js";

type Compared = Pick<ChannelScore, "marginDb" | "clearAirRatio" | "channel">;

/** The order of a ranking: greatest margin, greatest clear air, both to 1e-9, lowest channel number. */
export function byMargin(a: Compared, b: Compared): number {
  return (
    Math.round(b.marginDb / SLACK) - Math.round(a.marginDb / SLACK) ||
    Math.round(b.clearAirRatio / SLACK) - Math.round(a.clearAirRatio / SLACK) ||
    a.channel - b.channel
  );
}
