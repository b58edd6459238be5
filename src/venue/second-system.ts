import { planVenueChannels } from "./plan-venue-channels.js";
import type { VenueChannelOptions, VenueChannelPlan } from "./plan-venue-channels.js";
import type { PlannedSystem } from "./joint/planned-system.js";
import type { PlacementPlan } from "./plan-placement.js";
import { splitSystem } from "./split-system.js";
import type { TransmitterPlace } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** The jointly best channels of all systems of a venue, with one transmitter for a system and with two. */
export interface SecondSystemCost {
  /** Names of the two systems that the one becomes. */
  readonly halves: readonly [string, string];
  /** Smallest working margin of the system with one transmitter, and of the two together, in the joint plans, dB. */
  readonly oneMarginDb: number;
  readonly twoMarginDb: number;
  /** Smallest working margin over all systems' receivers, dB. */
  readonly oneMinMarginDb: number;
  readonly twoMinMarginDb: number;
  /** With two transmitters, in the venue's order, the second behind the first. */
  readonly systems: readonly JointSystemChange[];
}

/** What becomes of one system of the venue. */
export interface JointSystemChange {
  readonly name: string;
  /** With one transmitter; null where it isn't there yet, or hops. */
  readonly oneChannel: number | null;
  /** Null where it isn't there yet. */
  readonly oneMarginDb: number | null;
  readonly twoChannel: number | null;
  readonly twoMarginDb: number;
}

/**
 * What a second transmitter costs in the band: the joint plan of the whole venue with the system's transmitter at its
 * best single place, and again with the pair, the second a system of its own; the other systems stand as planned.
 * @param plan one with a pair
 * @returns null where there is no pair, or no system has a channel to choose
 * @throws {ArgumentError} as `planVenueChannels`
 * @see {@link venueSite}
 */
export function secondSystemCost(
  site: VenueSite,
  { system: { name }, choice, pair }: PlacementPlan,
  options: VenueChannelOptions,
): SecondSystemCost | null {
  if (pair === null || choice === null) return null;
  const one = planVenueChannels(placedAt(site, name, choice.place), options);
  const split = splitSystem(site.venue, name, pair);
  const two = planVenueChannels({ ...site, venue: split.venue }, options);
  if (one.proof === null || two.proof === null) return null;
  const before = new Map(one.systems.map((planned) => [planned.system.name, planned]));
  return {
    halves: split.systems,
    oneMarginDb: minMarginDb(one, [name]),
    twoMarginDb: minMarginDb(two, split.systems),
    oneMinMarginDb: minMarginDb(one),
    twoMinMarginDb: minMarginDb(two),
    systems: two.systems.map((planned) => change(planned, before.get(planned.system.name))),
  };
}

function placedAt(site: VenueSite, name: string, transmitter: TransmitterPlace): VenueSite {
  const { venue } = site;
  const systems = venue.systems.map((system) => (system.name === name ? { ...system, transmitter } : system));
  return { ...site, venue: { ...venue, systems } };
}

/** Of all systems, hopping ones too, or of those named; one that no signal reaches has −Infinity. */
function minMarginDb({ systems }: VenueChannelPlan, names?: readonly string[]): number {
  const asked = systems.filter(({ system: { name } }) => names?.includes(name) ?? true);
  if (names !== undefined && asked.length < names.length) return -Infinity;
  return Math.min(
    ...asked.map(({ workingMarginDb, lostReceivers }) =>
      lostReceivers.length > 0 ? -Infinity : workingMarginDb,
    ),
  );
}

function change(two: PlannedSystem, one: PlannedSystem | undefined): JointSystemChange {
  return {
    name: two.system.name,
    oneChannel: one?.channel ?? null,
    oneMarginDb: one?.workingMarginDb ?? null,
    twoChannel: two.channel,
    twoMarginDb: two.workingMarginDb,
  };
}
