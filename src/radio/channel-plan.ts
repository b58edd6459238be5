import { ArgumentError, requirePositive } from "../issues/index.js";
import type { RadioChannel } from "./profile.js";

/** Evenly spaced channels. */
export interface ChannelRaster {
  /** Number of the lowest channel, whole, ≥ 0. */
  readonly channel: number;
  /** Its centre. */
  readonly centreMhz: number;
  readonly spacingMhz: number;
  readonly channelCount: number;
}

/**
 * The channels of an even raster, lowest first.
 * @throws {ArgumentError} when the first number is not whole and ≥ 0, the count not whole and ≥ 1, or a
 *   frequency not finite and > 0
 * @example rasterChannels({ channel: 11, centreMhz: 2405, spacingMhz: 5, channelCount: 16 })[15]; // => { channel: 26, centreMhz: 2480 }
 */
export function rasterChannels(raster: ChannelRaster): RadioChannel[] {
  const { channel, centreMhz, spacingMhz, channelCount } = raster;
  requirePositive("centreMhz", centreMhz);
  requirePositive("spacingMhz", spacingMhz);
  if (!Number.isInteger(channel) || channel < 0)
    throw new ArgumentError("channel", "a whole number ≥ 0", channel);
  if (!Number.isInteger(channelCount) || channelCount < 1)
    throw new ArgumentError("channelCount", "a whole number ≥ 1", channelCount);
  return Array.from({ length: channelCount }, (_, index) => ({
    channel: channel + index,
    centreMhz: centreMhz + index * spacingMhz,
  }));
}
