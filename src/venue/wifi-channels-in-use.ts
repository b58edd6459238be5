import type { Emitter } from "../band/index.js";

/** From this level up a source is presumably the building's own, dBm (assumed). */
const OWN_FROM_DBM = -75;
/** Where nothing of the building's was heard: what installers choose (common practice, no source). */
const USUAL_CHANNELS: readonly number[] = [1, 6, 11];

/**
 * The Wi-Fi channels over which people's handsets spread: those of the building's own sources.
 * @param emitters scanned sources, of one room or of all
 * @param isOwn whether a source is the building's; where not given, those at −75 dBm or more are
 * @returns rising; 1, 6 and 11 where there are none
 * @example wifiChannelsInUse([]); // => [1, 6, 11]
 */
export function wifiChannelsInUse(
  emitters: readonly Emitter[],
  isOwn: (emitter: Emitter) => boolean = ({ levelDbm }) => levelDbm >= OWN_FROM_DBM,
): number[] {
  const channels = new Set(
    emitters
      .filter(isOwn)
      .map(({ contentionChannel }) => contentionChannel)
      .filter((channel) => channel !== null && channel >= 1),
  );
  return channels.size === 0 ? [...USUAL_CHANNELS] : [...channels].sort((a, b) => a! - b!).map((one) => one!);
}
