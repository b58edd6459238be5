import type { Emitter, SweepLevels } from "../band/index.js";
import { beaconLevelDbm } from "./beacon-level.js";
import { channelDistribution } from "./channel-interference.js";
import type { OverlapCache, TunedReceiver } from "./channel-interference.js";
import { clearAirRatio } from "./clear-air-ratio.js";
import { exceededLevelDbm } from "./exceeded-level.js";
import type { ScoreTerms } from "./score-terms.js";
import { sweptAtReceiver, sweptInterferenceDbm } from "./swept-levels.js";

/**
 * The margin of `scoreChannel` alone, for asking what if: the clear air is counted only where it could change
 * the level.
 * @returns wanted − interference − required C/I, dB
 */
export function channelMarginDb(
  emitters: readonly Emitter[],
  receiver: TunedReceiver,
  terms: ScoreTerms,
  cache?: OverlapCache,
  sweeps: readonly SweepLevels[] = [],
): number {
  const { wantedDbm, requiredCiDb, busyShareRatio } = terms;
  const distribution = channelDistribution(emitters, receiver, cache);
  const sweptDbm = sweptInterferenceDbm(sweptAtReceiver(sweeps, receiver), busyShareRatio) ?? -Infinity;
  const clearAir = (): number => clearAirRatio(distribution, wantedDbm - requiredCiDb);
  const beaconsDbm = beaconLevelDbm(
    exceededLevelDbm(distribution, busyShareRatio),
    distribution,
    terms,
    clearAir,
  );
  return wantedDbm - Math.max(beaconsDbm, sweptDbm) - requiredCiDb;
}
