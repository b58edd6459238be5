import type { PlanRecord } from "../commissioning/index.js";
import type { VerifiedChannel } from "../report/index.js";
import { linksOnPlan, planVenueChannels } from "../venue/index.js";
import type { PlannedSystem, SystemLinks, Venue, VenueChannelPlan, VenueSystem } from "../venue/index.js";
import { BURST_MS } from "./rooms-report.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";

/** Each system's scene. */
export type SystemScenes = ReadonlyMap<string, VenueScene>;

/** What was planned: each system on its channel, and every receiver's link there. */
export interface PlannedJob {
  readonly channels: readonly VerifiedChannel[];
  /** Systems that can be planned. */
  readonly systems: readonly PlannedSystem[];
  readonly links: readonly SystemLinks[];
  /** The same venue with nothing taken from an earlier plan. */
  readonly asFiled: VenueChannelPlan;
}

/**
 * The channels to verify: those of an earlier plan, else those that the venue file settles, else what the surveyed
 * scans choose jointly. The search ends by its count of steps, as a plan's does.
 * @param scenes by system, at least one
 */
export function plannedJob(job: VenueJob, scenes: SystemScenes, earlier: PlanRecord | null): PlannedJob {
  const [scene] = scenes.values();
  const site = scene!.siteWith(job.crowd);
  const options = {
    ...job.terms,
    survey: scene!.roomsWith(job.crowd),
    surveyOf: ({ name }: VenueSystem) => scenes.get(name)!.roomsWith(job.crowd),
  };
  const asFiled = planVenueChannels(site, options);
  const kept = earlier === null ? site.venue : onEarlierChannels(site.venue, earlier);
  const plan = kept === site.venue ? asFiled : planVenueChannels({ ...site, venue: kept }, options);
  return {
    channels: site.venue.systems.map((system) => channelOf(system, plan, earlier)),
    systems: plan.systems,
    links: linksOnPlan({ ...site, venue: kept }, plan.systems, { ...options, burstMs: BURST_MS }),
    asFiled,
  };
}

/** The venue with the earlier plan's channels settled, those that a system may still use. */
function onEarlierChannels(venue: Venue, { systems: earlier }: PlanRecord): Venue {
  const systems = venue.systems.map((system) => {
    const channel = earlier.find((one) => one.system === system.name)?.channel ?? null;
    return channel !== null && mayUse(system, channel) ? { ...system, channel } : system;
  });
  return { ...venue, systems };
}

function mayUse({ profile, allowedChannels }: VenueSystem, channel: number): boolean {
  const isKnown = profile.channels.some((one) => one.channel === channel);
  return profile.hopping === null && isKnown && (allowedChannels?.includes(channel) ?? true);
}

function channelOf(system: VenueSystem, plan: VenueChannelPlan, earlier: PlanRecord | null): VerifiedChannel {
  const own = plan.systems.find((one) => one.system.name === system.name);
  const then = earlier?.systems.find((one) => one.system === system.name);
  const receiversFollow = system.profile.receiversFollow.value;
  const base = { system: system.name, receiversFollow };
  if (system.profile.hopping !== null)
    return { ...base, ...NOTHING, reason: "it hops: there is no one channel to verify" };
  if (then !== undefined && then.channel !== null) {
    const centreMhz =
      system.profile.channels.find(({ channel }) => channel === then.channel)?.centreMhz ?? null;
    const reason = mayUse(system, then.channel)
      ? null
      : "the plan's channel is none that the radio may use now";
    const { channel, fallbackChannel } = then;
    return { ...base, channel, fallbackChannel, centreMhz, from: "plan", reason };
  }
  if (own === undefined) {
    const reason = plan.excluded.find((one) => one.system === system.name)?.reason ?? "it can't be planned";
    return { ...base, ...NOTHING, reason };
  }
  const { channel, centreMhz, fallback, isSettled } = own;
  const from = isSettled ? "venue-file" : "surveyed-scans";
  return { ...base, channel, centreMhz, fallbackChannel: fallback.channel, from, reason: null };
}

const NOTHING = { channel: null, centreMhz: null, fallbackChannel: null, from: "surveyed-scans" } as const;
