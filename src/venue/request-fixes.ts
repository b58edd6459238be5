import { SLACK } from "../units/index.js";
import { MOVE_WIFI_CHANNELS } from "./on-wifi-channel.js";
import type { RequestMargins, SystemMargins } from "./request-margins.js";

/** One of the building's radios to be fixed, for all systems together. */
export interface VenueFix {
  readonly emitter: string;
  /** The Wi-Fi channel to fix it on, 20 MHz wide. */
  readonly wifiChannel: number;
  /** The one it was scanned on. */
  readonly scannedWifiChannel: number;
  /** The system that loses most if it alone goes to its worst of Wi-Fi 1, 6, 11; null where all hop. */
  readonly system: string | null;
  /** That system's working margin then, dB; null where all hop. */
  readonly workingMarginIfMovedDb: number | null;
}

/** The rest may cost each system this much of what fixing all would give, dB. */
const GIVEN_AWAY_DB = 1;

/**
 * The fewest radios to fix, the most urgent first, so that all others may go to their worst of Wi-Fi 1, 6, 11 and
 * every system keeps its margin to 1 dB. Each stays where it is, unless it alone spoils a system that doesn't
 * work as things stand: then it goes to the one of 1, 6, 11 that troubles the systems least. For the sake of a
 * hopping radio all stay.
 */
export function fixesFor({ systems, buildingIds, scannedChannels }: RequestMargins): VenueFix[] {
  const fixedSystems = systems.filter(({ reason }) => reason === null);
  const rows = buildingIds
    .map((emitter): Row => {
      const scannedWifiChannel = scannedChannels.get(emitter)!;
      const wifiChannel = askedChannel(fixedSystems, emitter, scannedWifiChannel);
      const urgencyDb = Math.max(
        excessDb(fixedSystems, emitter, null),
        excessDb(fixedSystems, emitter, scannedWifiChannel),
      );
      return { emitter, wifiChannel, scannedWifiChannel, urgencyDb };
    })
    .sort((a, b) => Number(goes(b)) - Number(goes(a)) || order(b.urgencyDb, a.urgencyDb) || byId(a, b));
  const isForHops = systems.some(({ isHopping }) => isHopping);
  const fixedCount = isForHops ? rows.length : fewest(rows, fixedSystems);
  return rows.slice(0, fixedCount).map(({ emitter, wifiChannel, scannedWifiChannel }) => ({
    emitter,
    wifiChannel,
    scannedWifiChannel,
    ...mostHurt(fixedSystems, emitter),
  }));
}

interface Row {
  readonly emitter: string;
  readonly wifiChannel: number;
  readonly scannedWifiChannel: number;
  /** How far the loudest that it can be lies above what some system bears, dB. */
  readonly urgencyDb: number;
}

function goes({ wifiChannel, scannedWifiChannel }: Row): boolean {
  return wifiChannel !== scannedWifiChannel;
}

/** Where it is, unless it alone spoils a system that doesn't work. */
function askedChannel(systems: readonly SystemMargins[], emitter: string, scannedChannel: number): number {
  const spoilt = systems.filter(
    ({ todayDb, excessDb: excess }) => todayDb < -SLACK && excess(emitter, scannedChannel) > SLACK,
  );
  if (spoilt.length === 0) return scannedChannel;
  return MOVE_WIFI_CHANNELS.reduce(
    (best, channel) =>
      excessDb(systems, emitter, channel) < excessDb(systems, emitter, best) - SLACK ? channel : best,
    scannedChannel,
  );
}

function excessDb(systems: readonly SystemMargins[], emitter: string, wifiChannel: number | null): number {
  return Math.max(-Infinity, ...systems.map((system) => system.excessDb(emitter, wifiChannel)));
}

/** The least count whose margins are within 1 dB of those with all fixed, for every system, by halving. */
function fewest(rows: readonly Row[], systems: readonly SystemMargins[]): number {
  if (systems.length === 0) return 0;
  const askedOf = (fixedCount: number): ReadonlyMap<string, number> =>
    new Map(rows.slice(0, fixedCount).map(({ emitter, wifiChannel }) => [emitter, wifiChannel]));
  const all = askedOf(rows.length);
  const leastDb = systems.map((system) => system.leastDb({ asked: all }) - GIVEN_AWAY_DB - SLACK);
  // The systems that a smaller count is likely to fail come first, so that it is told soon.
  const order = systems.map((_, index) => index).sort((a, b) => systems[a]!.todayDb - systems[b]!.todayDb);
  const isEnough = (fixedCount: number): boolean => {
    const asked = askedOf(fixedCount);
    return order.every((index) => systems[index]!.leastDb({ asked }) >= leastDb[index]!);
  };
  let lowCount = rows.filter(goes).length;
  let highCount = rows.length;
  while (lowCount < highCount) {
    const middleCount = (lowCount + highCount) >> 1;
    if (isEnough(middleCount)) highCount = middleCount;
    else lowCount = middleCount + 1;
  }
  return highCount;
}

function mostHurt(
  systems: readonly SystemMargins[],
  emitter: string,
): Pick<VenueFix, "system" | "workingMarginIfMovedDb"> {
  const movingIds = new Set([emitter]);
  const none = { system: null, workingMarginIfMovedDb: null, lostDb: -Infinity };
  const { system, workingMarginIfMovedDb } = systems.reduce<
    Pick<VenueFix, "system" | "workingMarginIfMovedDb"> & { readonly lostDb: number }
  >((most, { name, todayDb, leastDb }) => {
    const thenDb = Math.min(todayDb, leastDb({ asked: new Map(), movingIds }));
    const lostDb = todayDb - thenDb;
    return lostDb > most.lostDb + SLACK ? { system: name, workingMarginIfMovedDb: thenDb, lostDb } : most;
  }, none);
  return { system, workingMarginIfMovedDb };
}

function order(oneDb: number, otherDb: number): number {
  return oneDb === otherDb ? 0 : oneDb - otherDb;
}

function byId(a: Row, b: Row): number {
  return a.emitter < b.emitter ? -1 : 1;
}
