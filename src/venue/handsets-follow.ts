import type { Emitter } from "../band/index.js";
import type { VenueSite } from "./venue-site.js";
import { wifiChannelsInUse } from "./wifi-channels-in-use.js";

/**
 * Handsets go with the radios that they are on: those of the building's on the channels that handsets use now.
 * A channel without such a radio keeps its handsets.
 * @param building ids of the building's own
 * @returns from sources, some moved, to the Wi-Fi channels that handsets then use
 */
export function handsetsFollow(
  site: VenueSite,
  scanned: readonly Emitter[],
  building: ReadonlySet<string>,
): (heard: readonly Emitter[]) => number[] {
  const now = site.handsetChannels ?? wifiChannelsInUse(scanned);
  const carriers = scanned.filter(
    ({ id, contentionChannel }) => building.has(id) && now.includes(contentionChannel!),
  );
  const carrierIds = new Set(carriers.map(({ id }) => id));
  const alone = now.filter((channel) =>
    carriers.every(({ contentionChannel }) => contentionChannel !== channel),
  );
  return (heard) => {
    const then = heard.flatMap(({ id, contentionChannel }) =>
      carrierIds.has(id) ? [contentionChannel!] : [],
    );
    const channels = [...new Set([...alone, ...then])].sort((a, b) => a - b);
    return channels.length === 0 ? [...now] : channels;
  };
}
