import { linkBudget, receivedDbm } from "../propagation/index.js";
import type { LinkBudget } from "../propagation/index.js";
import type { RadioChannel, RadioProfile } from "../radio/index.js";
import type { ChannelMerit } from "../scorer/index.js";
import type { SceneScore } from "./receiver-scene.js";
import type { FadeAllowances } from "./sight.js";
import { venueLinkByFrequency } from "./venue-link.js";
import type { VenueLink } from "./venue-link.js";
import type { TransmitterPlace, VenueReceiver } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** One receiver on one radio channel. */
export interface ReceiverChannel extends RadioChannel {
  readonly link: VenueLink;
  readonly budget: LinkBudget;
  /** Share of time in which C/(I+N) suffices at an instant. */
  readonly clearAirRatio: number;
  readonly contributors: ChannelMerit["contributors"];
  readonly merit: ChannelMerit;
}

/** Everything that a receiver's budget rests on, its transmitter and channel apart. */
export interface BudgetSetting {
  readonly site: VenueSite;
  readonly profile: RadioProfile;
  readonly score: SceneScore;
  readonly allowances: FadeAllowances;
}

/**
 * The budget of one receiver on one channel: the link through the venue, the interference at the receiver, and
 * the fade allowance that goes with sight of the transmitter.
 * @throws {ArgumentError} as `venueLink` and `scoreChannel`
 * @see {@link venueSite}
 */
export function receiverChannel(
  setting: BudgetSetting,
  transmitter: TransmitterPlace,
  receiver: VenueReceiver,
  channel: RadioChannel,
): ReceiverChannel {
  return receiverOnChannels(setting, transmitter, receiver)(channel);
}

/**
 * The same for many channels, the link laid out once.
 * @throws {ArgumentError} as `receiverChannel`
 */
export function receiverOnChannels(
  { site, profile, score, allowances }: BudgetSetting,
  transmitter: TransmitterPlace,
  receiver: VenueReceiver,
): (channel: RadioChannel) => ReceiverChannel {
  const linkAt = venueLinkByFrequency(site, { profile, transmitter, receiver });
  return ({ channel, centreMhz }) => {
    const link = linkAt(centreMhz);
    const merit = score(receiver, {
      centreMhz,
      wantedDbm: receivedDbm(link.lines),
      enclosureLossDb: link.lines.enclosureLossDb,
    });
    const budget = channelBudget(profile, link, merit.interferenceDbm, allowances);
    const { clearAirRatio, contributors } = merit;
    return { channel, centreMhz, link, budget, clearAirRatio, contributors, merit };
  };
}

/** @returns the budget of a link under an interference, with the allowance that goes with its sight */
export function channelBudget(
  profile: RadioProfile,
  link: VenueLink,
  interferenceDbm: number,
  allowances: FadeAllowances,
): LinkBudget {
  return linkBudget({
    ...link.lines,
    sensitivityDbm: profile.sensitivityDbm.value,
    interferenceDbm,
    requiredCiDb: profile.requiredCiDb.value,
    fadeAllowanceDb: link.inSight ? allowances.inSightDb : allowances.hiddenDb,
  });
}
