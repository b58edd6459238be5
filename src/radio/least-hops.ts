import { judgeRegion } from "./judge-region.js";
import type { Figure, RadioProfile } from "./profile.js";
import type { RegionCode } from "./regulation.js";
import { regionRules } from "./region-rules.js";

/**
 * The fewest hop frequencies that a region's rule asks of a radio at the power that it uses: of the rule's rows
 * that the radio has frequencies for, the one with the fewest that leaves it its power; where none does, the row
 * that leaves it the most.
 * @returns null for a fixed channel, or a radio with fewer frequencies than any row asks for
 * @throws {ArgumentError} as judgeRegion
 * @source 47 CFR 15.247 (15 hop frequencies up to 125 mW, 75 above), and as regionRules for the others
 * @example leastHopsOf(findProfile("hop-79-avoid"), "US").value; // => 15
 */
export function leastHopsOf(profile: RadioProfile, region: RegionCode): Figure | null {
  if (profile.hopping === null || !Object.hasOwn(regionRules, region)) return null;
  const rows = regionRules[region].rules
    .flatMap(({ leastHopCount }) => (leastHopCount === null ? [] : [leastHopCount]))
    .filter(({ value }) => value <= profile.channels.length)
    .sort((a, b) => a.value - b.value);
  const turnDownDb = (row: Figure): number =>
    judgeRegion({ profile, region, hopCount: row.value }).turnDownDb;
  const [first = null, ...others] = rows;
  return others.reduce(
    (best, row) => (best !== null && turnDownDb(row) < turnDownDb(best) ? row : best),
    first,
  );
}

/**
 * A hopping profile whose least number of frequencies in use is the greater of its own and the region's for the
 * power that it uses; any other as it is.
 * @throws {ArgumentError} as judgeRegion
 * @example withLeastHops(findProfile("hop-79-avoid"), "EU").hopping.leastHopCount.value; // => 15
 */
export function withLeastHops(profile: RadioProfile, region: RegionCode): RadioProfile {
  const { hopping } = profile;
  const least = leastHopsOf(profile, region);
  if (hopping === null || least === null || least.value < hopping.leastHopCount.value) return profile;
  const { value, status, source } = least;
  const leastHopCount = { value, status, source: `rule of ${region}: ${source}` };
  return { ...profile, hopping: { ...hopping, leastHopCount } };
}
