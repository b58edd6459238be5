import type { Issue } from "../issues/index.js";
import { antennaPeakGainDbi } from "../propagation/index.js";
import type { Antenna } from "../propagation/index.js";
import { clampToRegion, regulationIssues, regulationReview, withLeastHops } from "../radio/index.js";
import type { RadioProfile, RegionCode, RegulationReview } from "../radio/index.js";
import type { Venue } from "./venue.js";
import type { VenueSystem } from "./venue-system.js";

/** A venue whose radios were held to a region's rule. */
export interface RegionalVenue {
  readonly venue: Venue;
  /** What was turned down (notes), and what breaks the rule (errors), by system. */
  readonly issues: readonly Issue[];
  /** By system's name; empty where no region was named. */
  readonly reviews: ReadonlyMap<string, RegulationReview>;
}

/**
 * Every system's radio under a region's rule, judged with the greatest peak gain among the antennas of its
 * transmitter and candidates: a power of the project's own is turned down, one that the user gave stands and
 * its breach is an issue. Without a region nothing is judged.
 * @param region the venue's own unless given
 * @param further antennas that every system's transmitter may get besides
 * @throws {ArgumentError} as `clampToRegion`
 * @see {@link venueSite}
 */
export function holdToRegion(
  venue: Venue,
  region: RegionCode | null = venue.region,
  further: readonly Antenna[] = [],
): RegionalVenue {
  if (region === null) return { venue, issues: [], reviews: new Map() };
  const held = venue.systems.map((system) => ({ system, ...heldSystem(system, region, further) }));
  return {
    venue: { ...venue, region, systems: held.map(({ system, profile }) => ({ ...system, profile })) },
    issues: held.flatMap(({ issues }) => issues),
    reviews: new Map(held.map(({ system, review }) => [system.name, review])),
  };
}

function heldSystem(
  system: VenueSystem,
  region: RegionCode,
  further: readonly Antenna[],
): { profile: RadioProfile; issues: Issue[]; review: RegulationReview } {
  const { txGainDbi } = system.profile;
  const judged = withLeastHops(
    { ...system.profile, txGainDbi: { ...txGainDbi, value: peakDbi(system, further) } },
    region,
  );
  const { profile, issue } = clampToRegion(judged, region);
  const review = regulationReview(profile, region);
  const source = `${system.name}: ${profile.name}`;
  const issues = [...(issue === null ? [] : [{ ...issue, source }]), ...regulationIssues(review, source)];
  return { profile: { ...profile, txGainDbi }, issues, review };
}

/** The most that any antenna of the system's gains; one without a pattern has the profile's gain. */
function peakDbi({ profile, transmitter, candidates }: VenueSystem, further: readonly Antenna[]): number {
  const places = [...(transmitter === null ? [] : [transmitter]), ...candidates];
  const gains = [...places.map(({ antenna }) => antenna), ...further].map((antenna) =>
    antenna === null ? profile.txGainDbi.value : antennaPeakGainDbi(antenna),
  );
  return gains.length === 0 ? profile.txGainDbi.value : Math.max(...gains);
}
