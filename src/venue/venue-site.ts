import { indoorModelOf } from "../propagation/index.js";
import type { Building, PathModel } from "../propagation/index.js";
import { audiencesOf } from "./audience.js";
import type { Audience, VenueCrowd } from "./audience.js";
import { buildLosses } from "./build-losses.js";
import type { BuildLosses } from "./build-losses.js";
import { lossTables } from "./loss-tables.js";
import type { LossTables } from "./loss-tables.js";
import type { Venue } from "./venue.js";
import { wallTable } from "./wall-table.js";
import type { WallTable } from "./wall-table.js";

/** How a venue is looked at. */
export interface VenueSiteOptions {
  /** Who is in; `full` unless given. */
  readonly crowd?: VenueCrowd | undefined;
  /** For floors without a figure; the venue's own kind unless given. */
  readonly building?: Building | undefined;
  /** For rooms that name none; ITU-R P.1238 for the kind of building unless given. */
  readonly pathModel?: PathModel | undefined;
  /** Wi-Fi channels that people's handsets use; those of the strong sources scanned unless given. */
  readonly handsetChannels?: readonly number[] | undefined;
}

/** A venue made ready for many paths: walls laid out, losses remembered. */
export interface VenueSite {
  readonly venue: Venue;
  readonly crowd: VenueCrowd;
  readonly building: Building;
  readonly pathModel: PathModel;
  /** Null: to be told by the sources scanned. */
  readonly handsetChannels: readonly number[] | null;
  readonly walls: WallTable;
  readonly lossOf: BuildLosses;
  /** The same, looked up: worked out when first asked for. */
  readonly tables: () => LossTables;
  readonly audiences: readonly Audience[];
}

/**
 * Makes a venue ready for paths through it, with one crowd in.
 * @returns the site; it holds functions: to plan in a worker, post the venue and make the site there
 * @throws {ArgumentError} as `wallTable`
 * @example const { venue } = readVenue({ name: "Mill", units: "m",
 *   rooms: [{ name: "mill", outline: [[0, 0], [12, 0], [12, 8], [0, 8]], height: 6, people: 80 }],
 *   systems: [{ name: "mill", rooms: ["mill"], profile: "raster-13", transmitter: { at: [1, 1], height: 3 } }],
 *   emitters: [{ name: "oven", type: "microwave-oven", at: [11, 1], height: 1 }],
 *   luminaires: [{ name: "L1", room: "mill", x: 10, y: 6, trim_height: 4 }] }, { source: "venue.yaml" });
 * const site = venueSite(venue, { crowd: "empty" });
 * const [system] = venue.systems;
 * const { transmitter, profile } = system;
 * const [receiver] = venue.receivers;
 * const heard = { survey: new Map() }; // no scans yet
 * planVenueLinks(site, heard)[0].receivers[0].receiver.name; // => "L1"
 * const joint = planVenueChannels(site, heard);
 * joint.proof.optimal; // => true
 * const [{ channel }] = joint.systems;
 * venueRequest(site, { ...heard, systems: [{ system, transmitter, channel }], buildingIds: new Set() }).fixes; // => []
 * const budgets = receiverBudgets(site, system, transmitter, heard);
 * budgets.receivers.length; // => 1
 * venuePractice(site, system, transmitter, budgets.receivers).length > 0; // => true
 * placementSetting(site, system, heard).receivers.length; // => 1
 * placeTransmitters(site, system, heard).channel === placementSetting(site, system, heard).channel; // => true
 * const plan = planPlacement(site, system, heard);
 * plan.choice.weakest; // => "L1"
 * secondSystemCost(site, plan, heard); // => null
 * marginField(site, system, { ...heard, room: "mill", stepM: 1, heightM: 3, antenna: null }).columnCount; // => 12
 * const link = venueLink(site, { profile, transmitter, receiver, frequencyMhz: 2437 });
 * link.inSight; // => true
 * const score = receiverScene(site, profile, { ...heard, memory: sceneMemory() });
 * const setting = { site, profile, score, allowances: fadeAllowances({}) };
 * const now = receiverChannel(setting, transmitter, receiver, profile.channels[5]);
 * now.channel; // => 6
 * budgetHurts(now, { profile, transmitter, receiver }, setting.allowances).length > 0; // => true
 * budgetMends(setting, { transmitter, receiver, now, others: [], places: [] }).length > 0; // => true
 * receiversAlone(site, { system, transmitter }, profile.channels, heard).length; // => 1
 * placedEmitters(site, profile)(receiver).length > 0; // => true
 * emitterSignals(venue.emitters[0], 0, profile).length > 0; // => true
 * crowdHandsets(site, [1, 6, 11])(receiver).length; // => 0
 * systemsOnAir(site, { system, transmitter, channel: 6 }, [])(receiver); // => []
 * channelsInBand(site, system).length; // => 13
 * holdToRegion(venue, "EU").venue.systems.length; // => 1
 * const pair = { places: [transmitter, transmitter], receivers: [["L1"], []] };
 * splitSystem(venue, "mill", pair).systems.length; // => 2
 * const whole = planVenue(site, heard);
 * linksOnPlan(site, whole.channels.systems, heard).length === whole.links.length; // => true
 * const { workingMarginDbAt } = marginByDistance(site, receiver, now);
 * Math.abs(workingMarginDbAt(now.link.distanceM) - now.budget.workingMarginDb) < 1e-9; // => true
 * receiverBand(site, profile, receiver, { ...heard, grid: { startMhz: 2400, stepMhz: 1, stepCount: 84 } }).aboveNoiseDb.length; // => 84
 * pathModelIn(site, "mill").kind; // => "indoor"
 */
export function venueSite(venue: Venue, options: VenueSiteOptions = {}): VenueSite {
  const { crowd = "full", building = venue.building } = options;
  const { pathModel = indoorModelOf(building, 0) } = options;
  let tables: LossTables | undefined;
  const walls = wallTable(venue.walls, venue.storeys);
  const lossOf = buildLosses(walls.builds);
  return {
    venue,
    crowd,
    building,
    pathModel,
    handsetChannels: options.handsetChannels ?? null,
    walls,
    lossOf,
    tables: () => (tables ??= lossTables(walls.builds.length, lossOf)),
    audiences: audiencesOf(venue.rooms, venue.storeys, crowd),
  };
}

/**
 * The model of the room in which a path ends, else the site's own.
 * @param room its name; null: in none
 * @see {@link venueSite}
 */
export function pathModelIn(site: VenueSite, room: string | null): PathModel {
  return site.venue.rooms.find(({ name }) => name === room)?.pathModel ?? site.pathModel;
}
