import { printable } from "../issues/index.js";
import type { CommonOptions, Context } from "./context.js";
import { CliError, EXIT } from "./exit.js";
import { isVenueName } from "./venue-argument.js";

/** Options of `link` that say what a venue file says itself. */
const OF_SCANS = {
  place: "--place",
  time: "--time",
  map: "--map",
  buildingWifi: "--building-wifi",
  neighbourWifi: "--neighbour-wifi",
  profile: "--profile",
  set: "--set",
  enclosure: "--enclosure",
  distance: "--distance",
  distances: "--distances",
  pathModel: "--path-model",
  receivers: "--receivers",
  reliabilityAll: "--reliability-all",
  txAntenna: "--tx-antenna",
  rxAntenna: "--rx-antenna",
  txHeight: "--tx-height",
  rxHeight: "--rx-height",
  wall: "--wall",
  floors: "--floors",
  building: "--building",
} as const;

/** Options of `link` that only a venue gives a meaning. */
const OF_VENUES = {
  system: "--system",
  receiver: "--receiver",
  carriedShare: "--carried-share",
  onAirShare: "--on-air-share",
  handsetDbm: "--handset-dbm",
  bodyLossDb: "--body-loss-db",
  scanHeightGainDb: "--scan-height-gain-db",
} as const;

/**
 * Nothing that was asked for is left aside in silence.
 * @throws {CliError} exit 64 for an option that the operands give no meaning, and for a venue file beside scans
 */
export function refuseStrangeOptions({ options, words }: Context<CommonOptions>, isVenue: boolean): void {
  const venue = words.find(isVenueName);
  if (!isVenue && venue !== undefined)
    throw new CliError(
      EXIT.usage,
      `${printable(venue, 60)}: expected a venue file alone; it names its scans itself`,
      `stillband link ${printable(venue, 60)}`,
    );
  const given = Object.entries(isVenue ? OF_SCANS : OF_VENUES).find(([key]) => key in options);
  if (given === undefined) return;
  const why = isVenue
    ? "no such option beside a venue file, which says this itself"
    : "a venue file as the operand";
  throw new CliError(
    EXIT.usage,
    `${given[1]}: expected ${why}`,
    isVenue ? "write it into the venue file" : "stillband link venue.yaml",
  );
}
