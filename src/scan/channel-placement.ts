import { wifiChannelCentreMhz } from "../band/index.js";

/** Where on the band a row says that its radio is. */
export interface ChannelPlacement {
  /** Primary Wi-Fi channel. */
  readonly channel: number;
  readonly centreMhz: number;
  readonly widthMhz: 20 | 40;
  /** The side of the secondary channel is taken, not read. */
  readonly centreAssumed: boolean;
}

const TOLERANCE_MHZ = 1 + 1e-9;
const SECONDARY_OFFSET_MHZ = 10;

/**
 * The 20 MHz Wi-Fi channel with a centre, to 1 MHz.
 * @returns null where no channel has that centre
 * @source channel centres: IEEE 802.11-2020 Annex E, by way of `wifiChannelCentreMhz`
 * @example wifiChannelAtMhz(2437); // => 6
 */
export function wifiChannelAtMhz(centreMhz: number): number | null {
  for (const channel of [Math.round((centreMhz - 2407) / 5), 14]) {
    const channelMhz = wifiChannelCentreMhz(channel);
    if (channelMhz !== null && near(channelMhz, centreMhz)) return channel;
  }
  return null;
}

/**
 * Channel, centre and width of a row brought together. A 20 MHz centre is the channel's own; a 40 MHz
 * centre lies 10 MHz above or below the primary's. A 40 MHz row without a centre, or with the primary's,
 * has its secondary above for primaries 1…7 and below from 8 up (assumed).
 * @param channel primary Wi-Fi channel, 1…14
 * @param centreMhz null: not said
 * @returns null where the centre can't be that of the channel
 * @source IEEE 802.11-2020 clause 19.3.15, from memory: the centre of 40 MHz is primary ± 10 MHz
 * @example placeOnChannel(6, null, 40)?.centreMhz; // => 2447
 */
export function placeOnChannel(
  channel: number,
  centreMhz: number | null,
  widthMhz: 20 | 40,
): ChannelPlacement | null {
  const primaryMhz = wifiChannelCentreMhz(channel);
  if (primaryMhz === null) return null;
  const isPrimary = centreMhz === null || near(centreMhz, primaryMhz);
  if (widthMhz === 20)
    return isPrimary ? { channel, centreMhz: centreMhz ?? primaryMhz, widthMhz, centreAssumed: false } : null;
  if (isPrimary)
    return { channel, centreMhz: assumedCentreMhz(channel, primaryMhz), widthMhz, centreAssumed: true };
  return near(Math.abs(centreMhz - primaryMhz), SECONDARY_OFFSET_MHZ)
    ? { channel, centreMhz, widthMhz, centreAssumed: false }
    : null;
}

function assumedCentreMhz(channel: number, primaryMhz: number): number {
  return primaryMhz + (channel <= 7 ? SECONDARY_OFFSET_MHZ : -SECONDARY_OFFSET_MHZ);
}

function near(leftMhz: number, rightMhz: number): boolean {
  return Math.abs(leftMhz - rightMhz) <= TOLERANCE_MHZ;
}
