import { ArgumentError, requireFinite } from "../issues/index.js";
import { DRIVER_TABLE_SOURCE, driverRows } from "./driver-limits.js";
import type { RadioChannel, RadioProfile } from "./profile.js";
import type { RegionCode } from "./regulation.js";

/** One rule of the drivers' table for a country. */
export interface DriverLimit {
  readonly lowMhz: number;
  readonly highMhz: number;
  readonly mostBandwidthMhz: number;
  readonly maxEirpDbm: number;
  /** Such as `NO-IR` (may not start sending by itself), `NO-OFDM`, `NO-OUTDOOR`; empty where none. */
  readonly flags: readonly string[];
}

/** A radio beside what a general wireless driver may do in its country: a cross-check, never the rule. */
export interface DriverCrossCheck {
  /** Country code of the row; `00`: anywhere. */
  readonly country: string;
  readonly lowMhz: number;
  readonly highMhz: number;
  readonly maxEirpDbm: number;
  /** Power and every channel within the row? */
  readonly within: boolean;
  /** How far the EIRP lies above the row's; 0 where it doesn't. */
  readonly excessDb: number;
  /** Channels of the profile that leave the row's band. */
  readonly outside: readonly RadioChannel[];
  readonly source: string;
}

/**
 * Every rule that the open regulatory database has for a country in 2400–2500 MHz.
 * @param country two capital letters, or `00` for anywhere
 * @returns in rising order; empty for a country that it doesn't know
 * @throws {ArgumentError} for what is no country code
 * @example driverLimits("DE").map(({ highMhz, maxEirpDbm }) => [highMhz, maxEirpDbm]); // => [[2483.5, 20]]
 */
export function driverLimits(country: string): DriverLimit[] {
  if (!/^(?:[A-Z]{2}|00)$/.test(country))
    throw new ArgumentError("country", "two capital letters, or 00", country);
  return driverRows
    .filter(([, , , , , countries]) => countries.split(" ").includes(country))
    .map(([lowMhz, highMhz, mostBandwidthMhz, maxEirpDbm, flags]) => ({
      lowMhz,
      highMhz,
      mostBandwidthMhz,
      maxEirpDbm,
      flags: flags === "" ? [] : flags.split("|"),
    }));
}

/** The country whose row stands for a region; the member states of the European Union have one row alike. */
const COUNTRY_OF: Readonly<Record<RegionCode, string>> = {
  US: "US",
  CA: "CA",
  EU: "DE",
  GB: "GB",
  AU: "AU",
  NZ: "NZ",
  JP: "JP",
  world: "00",
};

/**
 * A radio beside the drivers' table: rows that forbid starting to send or one modulation are passed over.
 * @param eirpDbm what the radio radiates
 * @throws {ArgumentError} for an unknown region or an EIRP that is not finite
 * @example driverCrossCheck("US", findProfile("raster-13"), 20).outside; // => [{ channel: 13, centreMhz: 2472 }]
 */
export function driverCrossCheck(
  region: RegionCode,
  profile: Pick<RadioProfile, "channels" | "bandwidthMhz">,
  eirpDbm: number,
): DriverCrossCheck {
  if (!Object.hasOwn(COUNTRY_OF, region))
    throw new ArgumentError("region", `one of ${Object.keys(COUNTRY_OF).join(", ")}`, region);
  requireFinite("eirpDbm", eirpDbm);
  const country = COUNTRY_OF[region];
  const open = driverLimits(country).find(({ flags }) => !flags.some((flag) => RESTRICTING.has(flag)))!;
  const { lowMhz, highMhz, maxEirpDbm } = open;
  const half = profile.bandwidthMhz.value / 2 - 1e-9;
  const outside = profile.channels.filter(
    ({ centreMhz }) => centreMhz - half < lowMhz || centreMhz + half > highMhz,
  );
  const excessDb = eirpDbm > maxEirpDbm + 1e-9 ? eirpDbm - maxEirpDbm : 0;
  return {
    country,
    lowMhz,
    highMhz,
    maxEirpDbm,
    within: excessDb === 0 && outside.length === 0,
    excessDb,
    outside,
    source: DRIVER_TABLE_SOURCE,
  };
}

const RESTRICTING = new Set(["NO-IR", "NO-OFDM"]);
