import { receivedDbm } from "../../propagation/index.js";
import type { RadioChannel } from "../../radio/index.js";
import { channelsInBand } from "../channels-in-band.js";
import { channelBudget } from "../receiver-channel.js";
import { receiverLevels } from "../receiver-scene.js";
import type { SceneTerms } from "../receiver-scene.js";
import { fadeAllowances } from "../sight.js";
import type { FadeTerms } from "../sight.js";
import { venueLinkByFrequency } from "../venue-link.js";
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
  const all = jointReceivers(site, { system, transmitter }, channels, terms);
  const isHeard = ({ channels: heard }: JointAlone): boolean =>
    heard.every(({ budget }) => budget.receivedDbm > -Infinity);
  const receivers = all.filter(isHeard);
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

/** Every receiver's budgets. What a memory holds already is not heard again; without one nothing but levels is. */
function jointReceivers(
  site: VenueSite,
  own: { readonly system: VenueSystem; readonly transmitter: TransmitterPlace },
  channels: readonly RadioChannel[],
  terms: SceneTerms & FadeTerms,
): JointAlone[] {
  if (terms.memory !== undefined) return receiversAlone(site, own, channels, terms).map(budgetsOf);
  const { profile, name } = own.system;
  const levelAt = receiverLevels(site, profile, terms);
  const allowances = fadeAllowances(terms);
  return site.venue.receivers
    .filter((receiver) => receiver.system === name)
    .map((receiver) => {
      const linkAt = venueLinkByFrequency(site, { profile, transmitter: own.transmitter, receiver });
      return {
        receiver,
        channels: channels.map(({ channel, centreMhz }) => {
          const link = linkAt(centreMhz);
          const { enclosureLossDb } = link.lines;
          const tuned = { centreMhz, wantedDbm: receivedDbm(link.lines), enclosureLossDb };
          const budget = channelBudget(profile, link, levelAt(receiver, tuned), allowances);
          return { channel, centreMhz, budget };
        }),
      };
    });
}

function budgetsOf({ receiver, channels }: AloneReceiver): JointAlone {
  return {
    receiver,
    channels: channels.map(({ channel, centreMhz, budget }) => ({ channel, centreMhz, budget })),
  };
}
