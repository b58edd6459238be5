import { watchMargin } from "../commissioning/index.js";
import type { MarginWatch } from "../commissioning/index.js";
import type { VerifiedChannel, VerifiedWatch, WatchedSystem } from "../report/index.js";
import type { PlannedSystem } from "../venue/index.js";
import { filteredScans, scanSpots, UNDATED } from "./fresh-scans.js";
import type { FreshScans } from "./fresh-scans.js";
import { receiversToday, spareDb } from "./receivers-today.js";
import type { TodayReceiver } from "./receivers-today.js";
import type { SystemFresh } from "./verify-band.js";
import type { PlannedJob, SystemScenes } from "./verify-channels.js";
import type { VenueJob } from "./venue-options.js";

/**
 * How the planned channels' margins went over the days of the fresh scans: each day by its own scans, at the
 * weakest receiver of the rooms that were scanned on every day of the system's.
 * @returns null where the scans are of one day
 */
export function verifiedWatch(
  job: VenueJob,
  planned: PlannedJob,
  scenes: SystemScenes,
  bySystem: SystemFresh,
): VerifiedWatch | null {
  const [first] = bySystem.values();
  const days = daysOf(first!).filter((day) => day !== UNDATED);
  if (days.length < 2) return null;
  const systems = planned.channels.flatMap((channel) => {
    const own = planned.systems.find(({ system }) => system.name === channel.system);
    return own === undefined ? [] : watched(job, planned, scenes, bySystem, channel, own, days);
  });
  return { systems, caveats: caveatsOf(first!, days) };
}

function daysOf({ imports, dayOf }: FreshScans): string[] {
  return [...new Set(scanSpots(imports).map(({ source, timeMs }) => dayOf(source, timeMs)))].sort();
}

function watched(
  job: VenueJob,
  { systems: all }: PlannedJob,
  scenes: SystemScenes,
  bySystem: SystemFresh,
  { system, channel }: VerifiedChannel,
  own: PlannedSystem,
  days: readonly string[],
): WatchedSystem[] {
  if (channel === null || own.channel !== channel) return [];
  const fresh = bySystem.get(system)!;
  const scene = scenes.get(system)!;
  const looks = days.flatMap((day) => {
    const imports = filteredScans(fresh.imports, (spot) => fresh.dayOf(spot.source, spot.timeMs) === day);
    const receivers = receiversToday({ job, scene, own, all, fresh, imports }, channel).flat();
    return receivers.length === 0 ? [] : [{ day, receivers }];
  });
  if (looks.length < 2) return [];
  const always = roomsOfAll(looks);
  const series = looks.map(({ day, receivers }) => {
    const weakest = weakestOf(
      receivers.filter(({ receiver }) => always.size === 0 || always.has(receiver.room)),
    );
    return { date: day, marginDb: spareDb(weakest), receiver: weakest.receiver.name };
  });
  const watch = watchMargin(series.map(({ date, marginDb }) => ({ date, marginDb })));
  const receivers = series.map(({ receiver }) => receiver);
  return [{ system, channel, watch, receivers, weeksLeftCount: weeksLeftCount(watch) }];
}

/** Rooms with receivers in every look; empty where there is none. */
function roomsOfAll(looks: readonly { readonly receivers: readonly TodayReceiver[] }[]): ReadonlySet<string> {
  const each = looks.map(({ receivers }) => new Set(receivers.map(({ receiver }) => receiver.room)));
  return new Set([...each[0]!].filter((room) => each.every((rooms) => rooms.has(room))));
}

function weakestOf(receivers: readonly TodayReceiver[]): TodayReceiver {
  return receivers.reduce((low, one) => (spareDb(one) < spareDb(low) ? one : low));
}

/** Along the drift, where it is one: from the last date's margin. */
function weeksLeftCount({ trend, weeklyDriftDb, series }: MarginWatch): number | null {
  const lastDb = series[series.length - 1]!.marginDb;
  return trend === "falling" && lastDb > 0 ? lastDb / -weeklyDriftDb! : null;
}

function caveatsOf({ imports, dayOf, roomOf }: FreshScans, days: readonly string[]): string[] {
  const spots = scanSpots(imports);
  const signOf = (day: string, of: (spot: (typeof spots)[number]) => string): string =>
    [...new Set(spots.filter((spot) => dayOf(spot.source, spot.timeMs) === day).map(of))].sort().join(", ");
  const differs = (of: (spot: (typeof spots)[number]) => string): boolean =>
    new Set(days.map((day) => signOf(day, of))).size > 1;
  return [
    ...(differs(({ crowd }) => crowd ?? "not said")
      ? ["the crowd is not the same on every date: airtime differs by that alone"]
      : []),
    ...(differs(({ source, place }) => roomOf(source, place) ?? "none")
      ? ["the rooms are not the same on every date: only those scanned every time count, where there are any"]
      : differs(({ place }) => place)
        ? ["the places are not the same on every date: levels differ by that alone"]
        : []),
    ...(spots.some(({ source, timeMs }) => dayOf(source, timeMs) === UNDATED)
      ? ["scans without a date are left out of the series"]
      : []),
  ];
}
