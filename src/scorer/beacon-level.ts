import { SLACK } from "../units/index.js";
import { exceededLevelDbm } from "./exceeded-level.js";
import type { InterferenceDistribution } from "./interference-distribution.js";
import type { ScoreTerms } from "./score-terms.js";

/**
 * Interference plus noise by the beacon lists, exceeded for no more than the busy share. Merged states never
 * cross the threshold: where the exact clear air says that it holds, the level does too.
 * @param clearAir asked only where the level is above the threshold, 0..1
 */
export function beaconLevelDbm(
  distribution: InterferenceDistribution,
  { wantedDbm, requiredCiDb, busyShareRatio }: ScoreTerms,
  clearAir: () => number,
): number {
  const levelDbm = exceededLevelDbm(distribution, busyShareRatio);
  const heldDbm = Math.max(wantedDbm - requiredCiDb, distribution.restDbm);
  if (levelDbm <= heldDbm || busyShareRatio === 0) return levelDbm;
  return clearAir() >= 1 - busyShareRatio - SLACK ? heldDbm : levelDbm;
}
