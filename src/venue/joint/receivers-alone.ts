import type { RadioChannel } from "../../radio/index.js";
import { receiverOnChannels } from "../receiver-channel.js";
import type { ReceiverChannel } from "../receiver-channel.js";
import { receiverScene } from "../receiver-scene.js";
import type { SceneTerms } from "../receiver-scene.js";
import { fadeAllowances } from "../sight.js";
import type { FadeTerms } from "../sight.js";
import type { VenueSite } from "../venue-site.js";
import type { TransmitterPlace, VenueReceiver, VenueSystem } from "../venue-system.js";

/** One receiver as if its system were alone. */
export interface AloneReceiver {
  readonly receiver: VenueReceiver;
  /** [channel asked for] */
  readonly channels: readonly ReceiverChannel[];
}

/**
 * Every receiver of a system on some channels: `receiverBudgets` without what hurts and what would mend it.
 * @returns in the venue's order
 * @throws {ArgumentError} as `receiverScene`, `fadeAllowanceDb` and `venueLink`
 * @see {@link venueSite}
 */
export function receiversAlone(
  site: VenueSite,
  { system, transmitter }: { readonly system: VenueSystem; readonly transmitter: TransmitterPlace },
  channels: readonly RadioChannel[],
  terms: SceneTerms & FadeTerms,
): AloneReceiver[] {
  const { profile, name } = system;
  const score = receiverScene(site, profile, terms);
  const setting = { site, profile, score, allowances: fadeAllowances(terms) };
  return site.venue.receivers
    .filter((receiver) => receiver.system === name)
    .map((receiver) => ({
      receiver,
      channels: channels.map(receiverOnChannels(setting, transmitter, receiver)),
    }));
}
