import type { CrowdFigures } from "./venue-crowd.js";

/**
 * What people bring, where nothing better is known: common practice, no source. Four in five have a handset
 * that is switched on; each is on the air 0.1 % of the time at 15 dBm (a thousand of them then fill a quarter of
 * each of three Wi-Fi channels: about what a full house leaves to people's own sending);
 * a path through the audience loses 6 dB; a scan from the floor misses 6 dB of what reaches trim height.
 * @source bodyLossDb: 6–8 dB for a person stepping into a line of sight, ITU-R P.1238 (from memory)
 * @example referenceCrowd.handsetEirpDbm; // => 15
 */
export const referenceCrowd: CrowdFigures = {
  carriedRatio: 0.8,
  onAirRatio: 0.001,
  handsetEirpDbm: 15,
  bodyLossDb: 6,
  scanHeightGainDb: 6,
};

/** How far heads and shoulders rise above the handsets, m (assumed). */
export const HEADS_ABOVE_HANDSETS_M = 0.2;

/** A row of the audience from front to back, m (assumed): a handset's own row doesn't stand in its way. */
export const ROW_M = 1;
