import { median } from "d3-array";
import type { OverlapCache } from "../scorer/index.js";
import { SLACK } from "../units/index.js";
import { canMove } from "./on-wifi-channel.js";
import { onWorstWifi } from "./on-worst-wifi.js";
import type { ChannelPlan, PlannedChannel } from "./plan-channel.js";
import { marginAmong, tunedReceiver, workingWithDb } from "./wifi-scene.js";
import type { WifiScene } from "./wifi-scene.js";

/** What becomes of a plan when access points choose other channels. */
export interface WifiMoves {
  /** The building's own Wi-Fi sources, in the order of the emitters. */
  readonly movingIds: readonly string[];
  /** By radio channel: the margin with each of them on its worst of Wi-Fi 1, 6, 11, dB; never above today's. */
  readonly ifWifiMovesDb: ReadonlyMap<number, number>;
  /** Median over the hop set; null for a fixed channel, −Infinity where no wanted level arrives. */
  readonly hopSetIfWifiMovesDb: number | null;
  /** The channel near the best that still works then; null with the reason. */
  readonly survivor: Survivor | null;
  readonly reason: string | null;
  /** Does the recommended channel itself still work then? Null where none is recommended. */
  readonly recommendedHolds: boolean | null;
}

/** A channel that works whether Wi-Fi moves or not. */
export interface Survivor {
  readonly channel: number;
  readonly centreMhz: number;
  readonly marginDb: number;
  readonly ifWifiMovesDb: number;
}

/** A survivor may be this much worse than the best today, dB. */
const WITHIN_DB = 3;

/**
 * The margins if Wi-Fi moves: each of the building's own sources on the one of Wi-Fi 1, 6, 11 at which it puts
 * the most power into the radio channel, all at once; neighbours, sources that are not Wi-Fi and sweeps stay.
 * Sources may also stay, so a channel's figure is never above today's. The survivor is, among the channels
 * within 3 dB of the best, the one with the greatest such margin whose working margin at the reference
 * distance is then still 0 or more.
 * @param plan made from the same emitters and sweeps
 * @see {@link planChannel}
 */
export function planWifiMoves(plan: ChannelPlan, scene: WifiScene): WifiMoves {
  const { emitters, sweeps = [], buildingIds, overlapCache = new Map() as OverlapCache } = scene;
  const moving = new Set(
    emitters.filter((emitter) => buildingIds.has(emitter.id) && canMove(emitter)).map(({ id }) => id),
  );
  const movedDb = (score: PlannedChannel): number => {
    if (moving.size === 0) return score.marginDb;
    const moved = onWorstWifi(emitters, moving, tunedReceiver(plan, score.centreMhz), overlapCache);
    return Math.min(score.marginDb, marginAmong(moved, plan, score, sweeps, overlapCache));
  };
  const ifWifiMovesDb = new Map(plan.ranking.map((score) => [score.channel, movedDb(score)]));
  const hopFigures = plan.hopSet?.channels.map((channel) => ifWifiMovesDb.get(channel)!) ?? [];
  return {
    movingIds: [...moving],
    ifWifiMovesDb,
    hopSetIfWifiMovesDb: hopFigures.includes(-Infinity) ? -Infinity : (median(hopFigures) ?? null),
    ...survivorOf(plan, ifWifiMovesDb),
  };
}

function survivorOf(
  plan: ChannelPlan,
  movedDb: ReadonlyMap<number, number>,
): Pick<WifiMoves, "survivor" | "reason" | "recommendedHolds"> {
  const best = plan.ranking.find(({ channel }) => channel === plan.recommended.channel);
  if (best === undefined) return { survivor: null, reason: plan.recommended.reason, recommendedHolds: null };
  const near = plan.ranking
    .filter(({ allowed, spokenBy }) => allowed && spokenBy !== null)
    .filter(({ marginDb }) => marginDb >= best.marginDb - WITHIN_DB - SLACK)
    .map((score) => ({ score, ifWifiMovesDb: movedDb.get(score.channel)! }));
  const firm = near.filter(({ score, ifWifiMovesDb }) => workingWithDb(plan, score, ifWifiMovesDb) >= -SLACK);
  const recommendedHolds = firm.some(({ score }) => score === best);
  const firmest = firm.reduce<(typeof near)[number] | null>(
    (most, one) => (most === null || one.ifWifiMovesDb > most.ifWifiMovesDb + SLACK ? one : most),
    null,
  );
  if (firmest === null)
    return {
      survivor: null,
      reason: `no channel within ${WITHIN_DB} dB of the best still works at the reference distance then`,
      recommendedHolds,
    };
  const { channel, centreMhz, marginDb } = firmest.score;
  const survivor = { channel, centreMhz, marginDb, ifWifiMovesDb: firmest.ifWifiMovesDb };
  return { survivor, reason: null, recommendedHolds };
}
