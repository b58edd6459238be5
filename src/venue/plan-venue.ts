import type { PlannedSystem } from "./joint/planned-system.js";
import { systemsOnAir } from "./joint/systems-on-air.js";
import { planVenueChannels } from "./plan-venue-channels.js";
import type { VenueChannelOptions, VenueChannelPlan } from "./plan-venue-channels.js";
import { planVenueLinks } from "./plan-venue-links.js";
import type { SystemLinks, VenueLinkOptions } from "./plan-venue-links.js";
import type { VenueSite } from "./venue-site.js";

/** What a venue is planned with. */
export interface PlanVenueOptions
  extends VenueChannelOptions, Omit<VenueLinkOptions, "channelOf" | "systems" | "survey"> {}

/** Channels for a venue's systems, and every receiver's link on them. */
export interface VenuePlan {
  readonly channels: VenueChannelPlan;
  /** In the venue's order; systems that can't be planned with the reason. */
  readonly links: readonly SystemLinks[];
}

/**
 * The radio side of a venue's whole plan: the jointly best channels, then every receiver's budget on them with the
 * other systems on the air.
 * @throws {ArgumentError} as `planVenueChannels` and `planVenueLinks`
 * @see {@link venueSite}
 */
export function planVenue(site: VenueSite, options: PlanVenueOptions): VenuePlan {
  const channels = planVenueChannels(site, options);
  return { channels, links: linksOnPlan(site, channels.systems, options) };
}

/**
 * Every receiver's link on the channels of a plan, each system with the others on the air as `systemsOnAir` has them.
 * @param planned the plan's systems
 * @throws {ArgumentError} as `planVenueLinks`
 * @see {@link venueSite}
 */
export function linksOnPlan(
  site: VenueSite,
  planned: readonly PlannedSystem[],
  options: Omit<PlanVenueOptions, "known" | "memory">,
): SystemLinks[] {
  const channelOf = new Map(
    planned.flatMap(({ system, channel }) => (channel === null ? [] : [[system.name, channel] as const])),
  );
  return site.venue.systems.flatMap((system) => {
    const own = planned.find((one) => one.system.name === system.name);
    return planVenueLinks(site, {
      ...options,
      survey: options.surveyOf?.(system) ?? options.survey,
      memory: undefined,
      isChannelFinal: true,
      systems: [system.name],
      channelOf,
      ...(own !== undefined && { further: systemsOnAir(site, own, planned) }),
    });
  });
}
