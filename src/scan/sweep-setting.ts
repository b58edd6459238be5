import { requirePositive } from "../issues/index.js";
import type { Fill } from "./fill.js";
import type { ReadScanOptions } from "./scan-import.js";
import type { SweepReceiver } from "./sweep.js";
import { sweepReceiverFrom } from "./sweep-receiver.js";

/** What a sweep is read for. */
export interface SweepSetting {
  readonly fill: Fill;
  readonly receiver: SweepReceiver;
  /** Null: the bin's width is taken. */
  readonly resolutionBandwidthMhz: number | null;
}

/** @throws {ArgumentError} when the receiver is none, or the bandwidth is not finite and > 0 */
export function sweepSettingFrom(options: ReadScanOptions, fill: Fill): SweepSetting {
  const { resolutionBandwidthMhz = null, sweepReceiver } = options;
  if (resolutionBandwidthMhz !== null)
    requirePositive("options.resolutionBandwidthMhz", resolutionBandwidthMhz);
  return { fill, receiver: sweepReceiverFrom(sweepReceiver), resolutionBandwidthMhz };
}
