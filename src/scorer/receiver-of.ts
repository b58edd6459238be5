import { noiseFloorDbm } from "../radio/index.js";
import type { RadioProfile } from "../radio/index.js";
import type { TunedReceiver } from "./channel-interference.js";

/**
 * @returns the profile's receiver, not yet tuned to a channel
 * @see {@link rankChannels}
 */
export function receiverOf(profile: RadioProfile): Omit<TunedReceiver, "centreMhz"> {
  return {
    selectivity: profile.selectivity.value,
    noiseFloorDbm: noiseFloorDbm({
      bandwidthMhz: profile.bandwidthMhz.value,
      noiseFigureDb: profile.noiseFigureDb.value,
    }),
    gainDb: profile.rxGainDbi.value - profile.enclosureLossDb.value,
  };
}
