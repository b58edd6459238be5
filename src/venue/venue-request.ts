import { fixesFor } from "./request-fixes.js";
import type { VenueFix } from "./request-fixes.js";
import { requestMargins } from "./request-margins.js";
import type { SystemMargins } from "./request-margins.js";
import type { RequestingSystem, RequestOptions } from "./request-options.js";
import { radiosInAndBeside } from "./request-rooms.js";
import type { RadioNearby } from "./request-rooms.js";
import { radiates } from "./radiated.js";
import type { Radiated } from "./radiated.js";
import { antennaPeakGainDbi } from "../propagation/index.js";
import { usableChannels } from "./usable-channels.js";
import type { VenueSite } from "./venue-site.js";

/** One system's side of the request: what it radiates, and what the request is worth to it. */
export interface SystemRequest {
  readonly system: string;
  /** Radio channel; null for a hopping radio. */
  readonly channel: number | null;
  readonly radiates: Radiated;
  /** Working margin of its weakest receiver as things stand, dB; null with the reason. */
  readonly workingMarginDb: number | null;
  /** With all of the building's radios on their worst of Wi-Fi 1, 6, 11. */
  readonly ifWifiMovesDb: number | null;
  /** With the request granted and every other radio of the building on its worst. */
  readonly ifGrantedDb: number | null;
  /** With 2.4 GHz off, too, in and beside its rooms. */
  readonly ifOffDb: number | null;
  /** Why there are no margins; null where there are. */
  readonly reason: string | null;
}

/** What to ask of the building's network staff for a venue's systems together. */
export interface VenueRequest {
  /** The radios to fix, the most urgent first. */
  readonly fixes: readonly VenueFix[];
  /** The building's radios that were heard, whether to be fixed or not. */
  readonly buildingCount: number;
  /** Of these, the ones in and beside the systems' rooms, to be switched off at 2.4 GHz where guests can do without. */
  readonly nearby: readonly RadioNearby[];
  readonly systems: readonly SystemRequest[];
  /** How long the systems are on the air: the event, minutes. */
  readonly eventMinutes: number;
}

/**
 * The request to a building's network staff: the fewest radios to fix so that no system's weakest receiver is
 * more than 1 dB worse than with all of them fixed, wherever the others go; and what the systems radiate in
 * return. The margins leave out what the systems put into each other.
 * @param options what the systems were judged with, and whose the sources are
 * @throws {ArgumentError} for a channel that a system may not use, and as `receiverScene` and `venueLink`
 * @see {@link venueSite}
 */
export function venueRequest(site: VenueSite, options: RequestOptions): VenueRequest {
  const margins = requestMargins(site, options);
  const nearby = radiosInAndBeside(site, options);
  const fixes = fixesFor(margins);
  const off = new Set(nearby.map(({ emitter }) => emitter));
  return {
    fixes,
    buildingCount: margins.buildingIds.length,
    nearby,
    systems: margins.systems.map((system, index) => ({
      system: system.name,
      channel: options.systems[index]!.channel,
      radiates: radiatesOf(options.systems[index]!),
      ...marginsOf(system, fixes, off),
    })),
    eventMinutes: site.venue.eventMinutes,
  };
}

function radiatesOf({ system, transmitter, channel }: RequestingSystem): Radiated {
  const centresMhz = usableChannels(system)
    .filter((one) => channel === null || one.channel === channel)
    .map(({ centreMhz }) => centreMhz);
  const { antenna } = transmitter;
  return radiates(system.profile, centresMhz, antenna === null ? undefined : antennaPeakGainDbi(antenna));
}

type Margins = Pick<
  SystemRequest,
  "workingMarginDb" | "ifWifiMovesDb" | "ifGrantedDb" | "ifOffDb" | "reason"
>;

function marginsOf(system: SystemMargins, fixes: readonly VenueFix[], off: ReadonlySet<string>): Margins {
  const none = { workingMarginDb: null, ifWifiMovesDb: null, ifGrantedDb: null, ifOffDb: null };
  if (system.reason !== null) return { ...none, reason: system.reason };
  const asked = new Map(fixes.map(({ emitter, wifiChannel }) => [emitter, wifiChannel]));
  const todayDb = system.todayDb;
  return {
    workingMarginDb: todayDb,
    // Radios may also stay: no figure is better than today's for their moving alone.
    ifWifiMovesDb: Math.min(todayDb, system.leastDb({ asked: new Map() })),
    ifGrantedDb: system.leastDb({ asked }),
    ifOffDb: system.leastDb({ asked, off }),
    reason: null,
  };
}
