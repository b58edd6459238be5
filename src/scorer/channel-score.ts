import type { RadioChannel } from "../radio/index.js";
import type { ChannelMerit } from "./score-channel.js";

/** One channel's place in the ranking. */
export interface ChannelScore extends RadioChannel, ChannelMerit {
  /** 1 is best. */
  readonly rank: number;
  /** False where the channel leaves the band: listed last, never recommended. */
  readonly allowed: boolean;
  /** Why it is not allowed. */
  readonly reason: string | null;
}

/** A choice of channel, or null with the reason. */
export interface ChannelChoice {
  readonly channel: number | null;
  readonly reason: string | null;
}
