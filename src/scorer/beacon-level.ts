import { SLACK } from "../units/index.js";
import type { InterferenceDistribution } from "./interference-distribution.js";
import type { ScoreTerms } from "./score-terms.js";

/**
 * Interference plus noise by the beacon lists, exceeded for no more than the busy share. Merged states never
 * cross the threshold: where the exact clear air says that it holds, the level does too.
 * @param levelDbm what `exceededLevelDbm` gives for the distribution and the busy share
 * @param clearAir asked only where the level is above the threshold, 0..1
 */
export function beaconLevelDbm(
  levelDbm: number,
  { restDbm }: InterferenceDistribution,
  { wantedDbm, requiredCiDb, busyShareRatio }: ScoreTerms,
  clearAir: () => number,
): number {
  const heldDbm = Math.max(wantedDbm - requiredCiDb, restDbm);
  if (levelDbm <= heldDbm || busyShareRatio === 0) return levelDbm;
  return clearAir() >= 1 - busyShareRatio - SLACK ? heldDbm : levelDbm;
}
