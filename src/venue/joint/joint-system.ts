import type { RadioChannel } from "../../radio/index.js";
import { channelsInBand } from "../channels-in-band.js";
import type { SceneTerms } from "../receiver-scene.js";
import type { FadeTerms } from "../sight.js";
import type { VenueSite } from "../venue-site.js";
import type { TransmitterPlace, VenueReceiver, VenueSystem } from "../venue-system.js";
import type { ReceiverChannel } from "../receiver-channel.js";
import { receiversAlone } from "./receivers-alone.js";
import type { AloneReceiver } from "./receivers-alone.js";

/** What the joint plan takes of a receiver: its budgets, not the hundreds of sources behind each. */
export interface JointAlone {
  readonly receiver: VenueReceiver;
  /** [channel] */
  readonly channels: readonly Pick<ReceiverChannel, "channel" | "centreMhz" | "budget">[];
}

/** A system that can be planned with others: it is somewhere, and something hears it. */
export interface JointSystem {
  readonly system: VenueSystem;
  readonly transmitter: TransmitterPlace;
  /** The transmitter is a candidate: the system is not placed yet. */
  readonly isCandidate: boolean;
  readonly isHopping: boolean;
  /** Those to choose among, or its hop frequencies; inside the band unless its channel is settled outside. */
  readonly channels: readonly RadioChannel[];
  /** Those that get any signal. */
  readonly receivers: readonly JointAlone[];
  /** Names of those that lie in a true null and get none, whatever the plan. */
  readonly lostReceivers: readonly string[];
}

/** A system that is left out, and why. */
export interface ExcludedSystem {
  readonly system: string;
  readonly reason: string;
}

/** @returns the system made ready for the joint plan, or why it can't be part of it */
export function jointSystem(
  site: VenueSite,
  system: VenueSystem,
  terms: SceneTerms & FadeTerms,
): JointSystem | ExcludedSystem {
  const { profile, name } = system;
  const transmitter = system.transmitter ?? system.candidates[0];
  if (transmitter === undefined)
    return { system: name, reason: "its transmitter is not placed, and no candidate is named" };
  if (!site.venue.receivers.some((receiver) => receiver.system === name))
    return { system: name, reason: "no receiver belongs to it" };
  const channels = channelsInBand(site, system);
  if (channels.length === 0)
    return { system: name, reason: "none of its radio channels lies inside the band" };
  const all = receiversAlone(site, { system, transmitter }, channels, terms);
  const isHeard = ({ channels: heard }: AloneReceiver): boolean =>
    heard.every(({ budget }) => budget.receivedDbm > -Infinity);
  const receivers = all.filter(isHeard).map(budgetsOf);
  if (receivers.length === 0)
    return { system: name, reason: "all its receivers lie in a null of its transmitter's antenna" };
  return {
    system,
    transmitter,
    isCandidate: system.transmitter === null,
    isHopping: profile.hopping !== null,
    channels,
    receivers,
    lostReceivers: all.filter((one) => !isHeard(one)).map(({ receiver }) => receiver.name),
  };
}

function budgetsOf({ receiver, channels }: AloneReceiver): JointAlone {
  return {
    receiver,
    channels: channels.map(({ channel, centreMhz, budget }) => ({ channel, centreMhz, budget })),
  };
}
