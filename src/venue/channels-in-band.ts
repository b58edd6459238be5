import { RADIO_BAND_MHZ } from "../band/index.js";
import { judgeRegion } from "../radio/index.js";
import type { RadioChannel } from "../radio/index.js";
import { SLACK } from "../units/index.js";
import { usableChannels } from "./usable-channels.js";
import type { VenueSite } from "./venue-site.js";
import type { VenueSystem } from "./venue-system.js";

/**
 * The radio channels that a system may use and that lie inside the region's band (without a region 2400–2483.5 MHz),
 * in its profile's order; one that the venue file settles stays, wherever it is.
 * @returns empty where none lies inside
 * @throws {ArgumentError} as `usableChannels`
 * @see {@link venueSite}
 */
export function channelsInBand({ venue }: VenueSite, system: VenueSystem): readonly RadioChannel[] {
  const { profile, channel: settled } = system;
  const rule = venue.region === null ? null : judgeRegion({ profile, region: venue.region });
  const [lowMhz, highMhz] = rule === null ? RADIO_BAND_MHZ : [rule.lowMhz, rule.highMhz];
  const halfMhz = profile.bandwidthMhz.value / 2;
  return usableChannels(system).filter(
    ({ channel, centreMhz }) =>
      channel === settled ||
      (centreMhz - halfMhz >= lowMhz - SLACK && centreMhz + halfMhz <= highMhz + SLACK),
  );
}
