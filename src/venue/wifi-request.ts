import type { Emitter } from "../band/index.js";
import { inChannelDbm } from "../scorer/index.js";
import type { OverlapCache, TunedReceiver } from "../scorer/index.js";
import { SLACK, toDbm, toMw } from "../units/index.js";
import { narrowed } from "./narrowed.js";
import { canMove, MOVE_WIFI_CHANNELS, onWifiChannel } from "./on-wifi-channel.js";
import { onWorstWifi } from "./on-worst-wifi.js";
import type { ChannelPlan, PlannedChannel } from "./plan-channel.js";
import { marginAmong, tunedReceiver, workingWithDb } from "./wifi-scene.js";
import type { WifiScene } from "./wifi-scene.js";

/** One of the building's radios to be fixed on a Wi-Fi channel. */
export interface WifiFix {
  readonly emitter: string;
  /** The Wi-Fi channel to fix it on, 20 MHz wide. */
  readonly wifiChannel: number;
  /** The one it was scanned on. */
  readonly scannedWifiChannel: number;
  /** Our margin if this one alone moved to its worst of Wi-Fi 1, 6, 11, dB; null for a hop set. */
  readonly marginIfMovedDb: number | null;
}

/** What to ask of the building's network staff. */
export interface WifiRequest {
  /** Loudest in our channel first; empty: nothing that the building's Wi-Fi could do matters. */
  readonly fixes: readonly WifiFix[];
  /** Our margin with these fixed as asked and every other of the building's on its worst, dB; null: no wanted level arrives. */
  readonly marginIfGrantedDb: number | null;
}

/** The rest may cost this much of what fixing all would give, dB. */
const GIVEN_AWAY_DB = 1;

/**
 * The fewest of the building's Wi-Fi radios to fix, loudest in our channel first, so that all others may go to
 * their worst of Wi-Fi 1, 6, 11 and our channel keeps its margin to 1 dB. Each is fixed where it is; where the
 * channel doesn't work as things stand, the ones that spoil it alone go to the one of 1, 6, 11 that harms least.
 * For a hop set: all of them, where they are, as its ranges were chosen around them.
 * @param plan made from the same emitters and sweeps
 * @returns null where the plan has no channel
 * @see {@link planChannel}
 */
export function planWifiRequest(plan: ChannelPlan, scene: WifiScene): WifiRequest | null {
  const best = plan.ranking.find(({ channel }) => channel === plan.recommended.channel);
  if (best?.marginDb === -Infinity) return { fixes: [], marginIfGrantedDb: null };
  if (best !== undefined) return requestFor(plan, best, scene);
  return plan.hopSet === null ? null : hopRequest(plan.hopSet.marginDb, building(scene));
}

function building({ emitters, buildingIds }: WifiScene): Emitter[] {
  return emitters.filter((emitter) => buildingIds.has(emitter.id) && canMove(emitter));
}

function hopRequest(marginDb: number | null, own: readonly Emitter[]): WifiRequest {
  const fixes = [...own]
    .sort((a, b) => b.levelDbm - a.levelDbm || byId(a, b))
    .map(({ id, contentionChannel }) => ({
      emitter: id,
      wifiChannel: contentionChannel!,
      scannedWifiChannel: contentionChannel!,
      marginIfMovedDb: null,
    }));
  return { fixes, marginIfGrantedDb: marginDb === -Infinity ? null : marginDb };
}

function requestFor(plan: ChannelPlan, best: PlannedChannel, scene: WifiScene): WifiRequest {
  const { emitters, sweeps = [], overlapCache = new Map() as OverlapCache } = scene;
  const marginDb = (place: (emitter: Emitter) => Emitter): number =>
    marginAmong(emitters.map(place), plan, best, sweeps, overlapCache);
  const rows = candidates(plan, best, building(scene), overlapCache);
  const rowOf = new Map(rows.map((row, index) => [row.emitter.id, { ...row, index }]));
  const granted = (fixedCount: number): number =>
    marginDb((emitter) => {
      const row = rowOf.get(emitter.id);
      if (row === undefined) return emitter;
      return row.index < fixedCount ? row.asked : row.moved;
    });
  const allFixedDb = granted(rows.length);
  const goingCount = rows.filter(({ goes }) => goes).length;
  const { fixedCount, grantedDb } = fewest(
    goingCount,
    { fixedCount: rows.length, grantedDb: allFixedDb },
    granted,
  );
  return {
    fixes: rows.slice(0, fixedCount).map(({ emitter, moved, asked }) => ({
      emitter: emitter.id,
      wifiChannel: asked.contentionChannel!,
      scannedWifiChannel: emitter.contentionChannel!,
      marginIfMovedDb: Math.min(
        best.marginDb,
        marginDb((one) => (one === emitter ? moved : one)),
      ),
    })),
    // That others move is no help to count on.
    marginIfGrantedDb: Math.min(grantedDb, allFixedDb),
  };
}

/** The building's sources, those asked to change channel first, then the loudest that each can be in ours. */
function candidates(
  plan: ChannelPlan,
  best: PlannedChannel,
  own: readonly Emitter[],
  cache: OverlapCache,
): Candidate[] {
  const receiver = tunedReceiver(plan, best.centreMhz);
  const worst = onWorstWifi(own, new Set(own.map(({ id }) => id)), receiver, cache);
  return own
    .map((emitter, index): Candidate => {
      const moved = worst[index]!;
      const asked = askedPlace(plan, best, emitter, receiver, cache);
      const loudestDbm = Math.max(...[emitter, moved].map((one) => inChannelDbm(one, receiver, cache)));
      const goes = asked.contentionChannel !== emitter.contentionChannel;
      return { emitter, moved, asked, loudestDbm, goes };
    })
    .sort(
      (a, b) => Number(b.goes) - Number(a.goes) || b.loudestDbm - a.loudestDbm || byId(a.emitter, b.emitter),
    );
}

/** One of the building's sources: as scanned, on its worst channel, and where it is asked to be. */
interface Candidate {
  readonly emitter: Emitter;
  readonly moved: Emitter;
  readonly asked: Emitter;
  readonly loudestDbm: number;
  /** Is it asked to change channel? */
  readonly goes: boolean;
}

/** Where it is, unless our channel doesn't work and this source alone would spoil it. */
function askedPlace(
  plan: ChannelPlan,
  best: PlannedChannel,
  emitter: Emitter,
  receiver: TunedReceiver,
  cache: OverlapCache,
): Emitter {
  const here = narrowed(emitter);
  if (workingWithDb(plan, best, best.marginDb) >= -SLACK) return here;
  const levelDbm = (one: Emitter): number => inChannelDbm(one, receiver, cache);
  const edgeDbm = best.wantedDbm - plan.setting.profile.requiredCiDb.value - plan.link.fadeAllowanceDb;
  const aloneDbm = toDbm(toMw(levelDbm(here)) + toMw(receiver.noiseFloorDbm));
  if (aloneDbm <= edgeDbm + SLACK) return here;
  return MOVE_WIFI_CHANNELS.map((channel) => onWifiChannel(here, channel)).reduce(
    (least, there) => (levelDbm(there) < levelDbm(least) - SLACK ? there : least),
    here,
  );
}

/** How many are fixed, and our margin then, dB. */
interface Granted {
  readonly fixedCount: number;
  readonly grantedDb: number;
}

/** The least count from `leastCount` on whose margin is within 1 dB of that of all, by halving. */
function fewest(leastCount: number, all: Granted, marginDb: (fixedCount: number) => number): Granted {
  let lowCount = leastCount;
  let enough = all;
  while (lowCount < enough.fixedCount) {
    const middleCount = (lowCount + enough.fixedCount) >> 1;
    const grantedDb = marginDb(middleCount);
    if (grantedDb >= all.grantedDb - GIVEN_AWAY_DB - SLACK) enough = { fixedCount: middleCount, grantedDb };
    else lowCount = middleCount + 1;
  }
  return enough;
}

function byId(a: Emitter, b: Emitter): number {
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
