import { requireShape } from "../band/index.js";
import { ArgumentError, requireFinite, requirePositive } from "../issues/index.js";
import { findProfile } from "../radio/index.js";
import type { RadioProfile } from "../radio/index.js";
import type { SweepReceiver } from "./sweep.js";

/**
 * A profile's receiver, as a sweep is summed for it.
 * @example sweepReceiverOf(findProfile("raster-13")).bandwidthMhz; // => 1
 */
export function sweepReceiverOf(profile: RadioProfile): SweepReceiver {
  return {
    channels: profile.channels,
    selectivity: profile.selectivity.value,
    bandwidthMhz: profile.bandwidthMhz.value,
  };
}

/**
 * The receiver that was asked for, else that of `raster-13`.
 * @throws {ArgumentError} when a centre or the bandwidth is no frequency, or the selectivity no shape
 */
export function sweepReceiverFrom(receiver: SweepReceiver | undefined): SweepReceiver {
  if (receiver === undefined) return sweepReceiverOf(findProfile("raster-13"));
  requirePositive("sweepReceiver.bandwidthMhz", receiver.bandwidthMhz);
  requireShape("sweepReceiver.selectivity", receiver.selectivity);
  if (receiver.channels.length === 0)
    throw new ArgumentError("sweepReceiver.channels", "one channel or more", "none");
  for (const { centreMhz } of receiver.channels) requireFinite("sweepReceiver.channels", centreMhz);
  return receiver;
}
