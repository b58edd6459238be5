import { wifiChannelCentreMhz } from "../band/index.js";
import type { Emitter } from "../band/index.js";
import { requireWhole } from "../issues/index.js";

/** The Wi-Fi channels that access points with automatic channel choose among: the three that don't overlap. */
export const MOVE_WIFI_CHANNELS: readonly number[] = [1, 6, 11];

/** A centre further than this from the primary's is that of a 40 MHz transmission (10 MHz beside it), MHz. */
const WIDE_FROM_MHZ = 5;
const SECONDARY_OFFSET_MHZ = 10;

/** Can it move: is it Wi-Fi at all? Other sources have no contention channel. */
export function canMove({ contentionChannel }: Emitter): boolean {
  return contentionChannel !== null && wifiChannelCentreMhz(contentionChannel) !== null;
}

/** Is it 40 MHz wide: does its centre lie beside its primary channel's? */
export function isWide({ contentionChannel, centreMhz }: Emitter): boolean {
  const primaryMhz = contentionChannel === null ? null : wifiChannelCentreMhz(contentionChannel);
  return primaryMhz !== null && Math.abs(centreMhz - primaryMhz) > WIDE_FROM_MHZ;
}

/**
 * A Wi-Fi source on another channel: 20 MHz wide on that channel's centre, 40 MHz wide with its secondary
 * above for 1 … 7 and below from 8 up; its contention group is that channel. All else stays; one that is there
 * already is the same object.
 * @param wifiChannel 1 … 13
 * @throws {ArgumentError} for another number
 * @source 40 MHz centre = primary ± 10 MHz: IEEE 802.11-2020 cl. 19.3.15, from memory; the side: assumed
 * @example const source = { id: "a", centreMhz: 2412, shape: transmitShapes.ht20, levelDbm: -50, airtimeRatio: 0.1,
 *   airtimeAssumed: true, contentionChannel: 1 };
 * onWifiChannel(source, 11).centreMhz; // => 2462
 */
export function onWifiChannel(emitter: Emitter, wifiChannel: number): Emitter {
  requireWhole("wifiChannel", wifiChannel, 1, 13);
  const centreMhz = movedCentreMhz(wifiChannel, isWide(emitter));
  const isThere = emitter.contentionChannel === wifiChannel && emitter.centreMhz === centreMhz;
  return isThere ? emitter : { ...emitter, centreMhz, contentionChannel: wifiChannel };
}

function movedCentreMhz(wifiChannel: number, wide: boolean): number {
  const primaryMhz = wifiChannelCentreMhz(wifiChannel)!;
  if (!wide) return primaryMhz;
  return primaryMhz + (wifiChannel <= 7 ? SECONDARY_OFFSET_MHZ : -SECONDARY_OFFSET_MHZ);
}
