/**
 * Centre of a 20 MHz Wi-Fi channel at 2.4 GHz: 2407 + 5·n MHz for 1…13, 2484 MHz for 14.
 * @param channel Wi-Fi channel number
 * @returns MHz; null for a number that is no 2.4 GHz channel
 * @source IEEE 802.11-2020 Annex E, centres as in the operating-channel table of ns-3
 * @example wifiChannelCentreMhz(6); // => 2437
 */
export function wifiChannelCentreMhz(channel: number): number | null {
  if (channel === 14) return 2484;
  return Number.isInteger(channel) && channel >= 1 && channel <= 13 ? 2407 + 5 * channel : null;
}

/** The part of the spectrum whose readings are used; Wi-Fi elsewhere is counted as out of band. */
export const READ_BAND_MHZ: readonly [number, number] = [2400, 2500];

/** The licence-exempt band in which a DMX radio may work where no region says otherwise. */
export const RADIO_BAND_MHZ: readonly [number, number] = [2400, 2483.5];
