import type { RadioProfile } from "../radio/index.js";
import { bandProfile } from "../scorer/index.js";
import type { BandProfile } from "../scorer/index.js";
import { receiverGainDb } from "./joint/system-into-receiver.js";
import { receiverAir } from "./receiver-air.js";
import type { SceneTerms } from "./receiver-scene.js";
import type { VenueReceiver } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** Columns of the band. */
export interface BandGrid {
  readonly startMhz: number;
  readonly stepMhz: number;
  readonly stepCount: number;
}

/**
 * The band as one receiver of a venue takes it in: the scans of its room, the crowd's handsets and the other
 * emitters, at its own antenna behind its own canopy, as `receiverScene` scores them.
 * @returns interference and noise over the receiver's noise, dB, a column a step; at a channel's own centre the
 *   level that the channel is judged with
 * @throws {ArgumentError} as `receiverScene`
 * @see {@link venueSite}
 */
export function receiverBand(
  site: VenueSite,
  profile: RadioProfile,
  receiver: VenueReceiver,
  terms: SceneTerms & { readonly grid: BandGrid },
): BandProfile {
  const { busyShareRatio = 0.01, grid } = terms;
  return bandProfile({
    ...receiverAir(site, profile, terms)(receiver),
    profile,
    gainDb: receiverGainDb({ profile }, receiver),
    busyShareRatio,
    ...grid,
  });
}
