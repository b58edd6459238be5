import type { ScanImport } from "../scan/index.js";
import { buildSurvey } from "../scan/index.js";
import { channelsInBand, receiversAlone, systemsOnAir } from "../venue/index.js";
import type { AloneReceiver, PlannedSystem, ReceiverChannel } from "../venue/index.js";
import type { FreshScans } from "./fresh-scans.js";
import { roomScenes } from "./room-scenes.js";
import { handsetChannelsOf } from "./source-marks.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";

/** A system as it was planned, and fresh scans as its radio hears them. */
export interface TodayQuery {
  readonly job: VenueJob;
  readonly scene: VenueScene;
  readonly own: PlannedSystem;
  readonly all: readonly PlannedSystem[];
  readonly fresh: FreshScans;
  /** Those of the fresh scans that count. */
  readonly imports: readonly ScanImport[];
}

/** One receiver on one channel. */
export interface TodayReceiver {
  readonly receiver: AloneReceiver["receiver"];
  readonly on: ReceiverChannel;
}

/**
 * A system's receivers with a signal in rooms that the fresh scans cover, on its channels or on one, the crowd
 * planned for in and the other systems on theirs.
 * @param channel null: on every channel that it may use
 * @returns [receiver][channel]
 */
export function receiversToday(
  { job, scene, own, all, fresh, imports }: TodayQuery,
  channel: number | null,
): readonly (readonly TodayReceiver[])[] {
  const site = scene.siteWith(job.crowd);
  const { venue, roomOf, scanPaths } = fresh;
  const survey = roomScenes({ venue, imports, shaped: scene.shaped, roomOf, scanPaths }, job.crowd);
  const handsets = handsetChannelsOf(buildSurvey(imports, scene.shaped));
  const channels = channelsInBand(site, own.system).filter(
    (one) => channel === null || one.channel === channel,
  );
  const receivers = receiversAlone(site, own, channels, {
    ...job.terms,
    survey,
    ...(handsets.length > 0 && { channels: handsets }),
    further: systemsOnAir(site, own, all),
  });
  return receivers
    .filter(({ receiver }) => survey.has(receiver.room))
    .map((one) => one.channels.map((on) => ({ receiver: one.receiver, on })))
    .filter((row) => row.every(({ on }) => on.budget.receivedDbm > -Infinity));
}

/** Interference margin less the fade allowance, dB: below 0 the channel fails there. */
export function spareDb({ on: { budget } }: TodayReceiver): number {
  return budget.interferenceMarginDb - budget.fadeAllowanceDb;
}
