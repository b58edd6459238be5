import { compareBands } from "../commissioning/index.js";
import type { PlannedRanking } from "../commissioning/index.js";
import type { JudgedSystem, VerifiedBand, VerifiedChannel } from "../report/index.js";
import { buildSurvey } from "../scan/index.js";
import type { ScanImport } from "../scan/index.js";
import { byMargin } from "../scorer/index.js";
import { filteredScans, scanSpots } from "./fresh-scans.js";
import type { FreshScans, ScanSpot } from "./fresh-scans.js";
import { likeWithLike } from "./like-with-like.js";
import { receiversToday } from "./receivers-today.js";
import type { TodayReceiver } from "./receivers-today.js";
import { roomlessCount } from "./room-of.js";
import type { PlannedJob, SystemScenes } from "./verify-channels.js";
import type { VenueJob } from "./venue-options.js";

/** Fresh scans by system, as its radio hears them; systems whose radios listen alike share them. */
export type SystemFresh = ReadonlyMap<string, FreshScans>;

/** The fresh band against the surveyed one, and each planned channel in today's ranking at its weakest receiver. */
export function verifiedBand(
  job: VenueJob,
  planned: PlannedJob,
  scenes: SystemScenes,
  fresh: SystemFresh,
): VerifiedBand {
  const [scene] = scenes.values();
  const [first] = fresh.values();
  const today = latestOf(first!);
  const like = likeWithLike(scene!, job.loaded.scanPaths, first!, today);
  const after = buildSurvey(today, scene!.shaped);
  const surveyed = like.imports.length === 0 ? null : buildSurvey(like.imports, scene!.shaped);
  const systems = planned.channels.map((channel) => judged(job, planned, scenes, fresh, channel));
  return {
    // Without a survey there is nothing that could have changed.
    comparison: compareBands(
      surveyed ?? after,
      after,
      systems.flatMap(({ ranking }) => ranking ?? []),
    ),
    systems: systems.map(({ system }) => system),
    ...{ fresh: after, surveyed, rooms: like.rooms, crowds: like.crowds, caveats: like.caveats },
    roomlessCount: roomlessCount(first!.imports, first!.roomOf),
  };
}

/** What the fresh scans of each room and crowd say on their latest day. */
export function latestOf({ imports, roomOf, dayOf }: FreshScans): ScanImport[] {
  const keyOf = ({ source, place, crowd }: ScanSpot): string =>
    `${roomOf(source, place) ?? ""}\n${crowd ?? ""}`;
  const latest = new Map<string, string>();
  for (const spot of scanSpots(imports)) {
    const day = dayOf(spot.source, spot.timeMs);
    if (day > (latest.get(keyOf(spot)) ?? "")) latest.set(keyOf(spot), day);
  }
  return filteredScans(
    imports,
    (spot) => dayOf(spot.source, spot.timeMs) === (latest.get(keyOf(spot)) ?? ""),
  );
}

interface Judged {
  readonly system: JudgedSystem;
  /** Null with the reason. */
  readonly ranking: PlannedRanking | null;
}

function judged(
  job: VenueJob,
  { systems: all }: PlannedJob,
  scenes: SystemScenes,
  bySystem: SystemFresh,
  { system: name, channel, reason }: VerifiedChannel,
): Judged {
  const nothing = { system: name, receiver: null, room: null, fadeAllowanceDb: null };
  const own = all.find(({ system }) => system.name === name);
  if (own === undefined || channel === null)
    return { system: { ...nothing, reason: reason ?? "it can't be planned" }, ranking: null };
  const fresh = bySystem.get(name)!;
  const rows = receiversToday(
    { job, scene: scenes.get(name)!, own, all, fresh, imports: latestOf(fresh) },
    null,
  );
  const weakest = weakestRow(rows, channel);
  if (weakest === null)
    return {
      system: {
        ...nothing,
        reason: "no fresh scan of its rooms with that crowd or a smaller one",
      },
      ranking: null,
    };
  const [{ receiver, on }] = weakest as [TodayReceiver];
  const { fadeAllowanceDb } = on.budget;
  const ranking = weakest
    .map(({ on: { channel: number, budget, clearAirRatio, contributors } }) => ({
      ...{ channel: number, marginDb: budget.interferenceMarginDb, clearAirRatio, contributors },
      allowed: true,
    }))
    .sort(byMargin);
  return {
    system: { system: name, receiver: receiver.name, room: receiver.room, fadeAllowanceDb, reason: null },
    ranking: { system: name, channel, ranking, fadeAllowanceDb },
  };
}

/** The receiver of least working margin on the planned channel, on all channels; of equal ones the first by name. */
function weakestRow(
  rows: readonly (readonly TodayReceiver[])[],
  channel: number,
): readonly TodayReceiver[] | null {
  const marginOf = (row: readonly TodayReceiver[]): number =>
    (row.find(({ on }) => on.channel === channel) ?? row[0]!).on.budget.workingMarginDb;
  const [weakest] = [...rows].sort(
    (a, b) => marginOf(a) - marginOf(b) || (a[0]!.receiver.name < b[0]!.receiver.name ? -1 : 1),
  );
  return weakest ?? null;
}
