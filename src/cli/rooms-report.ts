import { fadeLawWords, pathModelWords } from "../propagation/index.js";
import type { CrowdMargin, JointRoom, RoomReport, RoomsReport, WeakestReceiver } from "../report/index.js";
import type { Crowd } from "../scan/index.js";
import {
  channelsInBand,
  planVenueChannels,
  receiversAlone,
  receiverFrames,
  receiverLooks,
  systemsOnAir,
  venueRequest,
} from "../venue/index.js";
import type { AirTerms, AloneReceiver, PlannedSystem, VenueChannelPlan } from "../venue/index.js";
import { fullTerms } from "./venue-options.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";

/** Length of one Wi-Fi burst, ms (assumed). */
export const BURST_MS = 2;

const NOT_SCANNED = "not scanned with this crowd or a smaller one";

/** How long the joint plan may be searched for by a clock. */
export interface SearchTime {
  readonly timeLimitS: number;
  readonly nowMs: () => number;
}

/**
 * Everything that the report of `rooms` tells.
 * @param scenes by system
 * @param scene any of them: for what doesn't hang on the radio
 * @param time null: the search ends by its count of steps, the same on any machine
 */
export function roomsReport(
  job: VenueJob,
  scenes: ReadonlyMap<string, VenueScene>,
  scene: VenueScene,
  time: SearchTime | null,
): RoomsReport {
  const { crowd, terms } = job;
  const { reliability, busyShareRatio, fadeLaw } = fullTerms(job);
  const site = scene.siteWith(crowd);
  const survey = scene.roomsWith(crowd);
  const plan = planVenueChannels(site, {
    ...terms,
    survey,
    surveyOf: ({ name }) => scenes.get(name)!.roomsWith(crowd),
    ...time,
  });
  const { buildingIds, sourcePlaces } = scene;
  const asked = { ...terms, survey, buildingIds, sourcePlaces, systems: plan.systems };
  return {
    venue: scene.venue,
    crowd,
    survey: scene.survey,
    roomlessCount: scene.roomlessCount,
    rooms: roomReports(job, scenes, scene, plan),
    plan,
    request: plan.systems.length === 0 ? null : venueRequest(site, asked),
    reviews: scene.reviews,
    terms: { reliability, busyShareRatio, burstMs: BURST_MS, timeLimitS: time?.timeLimitS ?? null },
    handsetChannels: site.handsetChannels ?? [],
    words: { path: pathModelWords(site.pathModel), fade: fadeLawWords(fadeLaw) },
    issues: scene.issues,
  };
}

/** Rooms in the venue's order, a system's line each. */
function roomReports(
  job: VenueJob,
  scenes: ReadonlyMap<string, VenueScene>,
  { venue, roomsWith }: VenueScene,
  plan: VenueChannelPlan,
): RoomReport[] {
  const parts = new Map(
    plan.systems.map((planned) => {
      const scene = scenes.get(planned.system.name)!;
      return [planned.system.name, systemRooms(job, scene, planned, plan)] as const;
    }),
  );
  return venue.rooms.flatMap(({ name: room }): RoomReport[] => {
    const evidence = roomsWith("full").get(room)?.survey.evidence ?? null;
    const here = venue.receivers.filter((receiver) => receiver.room === room);
    const systems = venue.systems.filter(({ name }) => here.some(({ system }) => system === name));
    const nothing = { room, aloneChannel: null, aloneCentreMhz: null, alone: [], joint: null, evidence };
    if (systems.length === 0)
      return [{ ...nothing, system: null, reason: "no receiver hangs in it", receiverCount: 0 }];
    return systems.map(({ name }) => {
      const receiverCount = here.filter(({ system }) => system === name).length;
      const reason = plan.excluded.find(({ system }) => system === name)?.reason ?? null;
      return { ...nothing, system: name, receiverCount, reason, ...parts.get(name)?.(room) };
    });
  });
}

type RoomOfSystem = Pick<RoomReport, "aloneChannel" | "aloneCentreMhz" | "alone" | "joint">;

/** What there is to tell of a system by room: its receivers are judged once for all rooms. */
function systemRooms(
  job: VenueJob,
  scene: VenueScene,
  planned: PlannedSystem,
  plan: VenueChannelPlan,
): (room: string) => RoomOfSystem {
  const { channel: aloneChannel, centreMhz: aloneCentreMhz } = planned.alone;
  const crowds = (["empty", "part", "full"] as const).filter((one) => one !== "part" || job.crowd === "part");
  const alone = crowds.map(
    (crowd) => [crowd, receiversOn(job, scene, planned, { channel: aloneChannel, crowd })] as const,
  );
  const further = systemsOnAir(scene.siteWith(job.crowd), planned, plan.systems);
  const joint = receiversOn(job, scene, planned, { channel: planned.channel, crowd: job.crowd, further });
  return (room) => ({
    aloneChannel,
    aloneCentreMhz,
    alone: alone.map(([crowd, receivers]): CrowdMargin => {
      if (!scene.roomsWith(crowd).has(room)) return { crowd, weakest: null, reason: NOT_SCANNED };
      return { crowd, weakest: weakestOf(planned, receivers, room), reason: null };
    }),
    joint: jointRoom(planned, joint, room, scene.venue.eventMinutes),
  });
}

/** A system's receivers on one channel, or over their hop frequencies, with one crowd in. */
function receiversOn(
  { terms }: VenueJob,
  scene: VenueScene,
  planned: PlannedSystem,
  on: { readonly channel: number | null; readonly crowd: Crowd } & Pick<AirTerms, "further">,
): readonly AloneReceiver[] {
  const site = scene.siteWith(on.crowd);
  const channels = channelsInBand(site, planned.system).filter(
    ({ channel }) => on.channel === null || channel === on.channel,
  );
  const options = { ...terms, survey: scene.roomsWith(on.crowd), further: on.further };
  return receiversAlone(site, planned, channels, options);
}

/** The one of least working margin in a room; of equal ones the first by name. */
function weakestOf(planned: PlannedSystem, all: readonly AloneReceiver[], room: string): WeakestReceiver {
  const [weakest] = all
    .filter(({ receiver }) => receiver.room === room)
    .map((alone) => ({ alone, ...middleOf(alone).budget }))
    .sort(
      (a, b) =>
        order(a.workingMarginDb, b.workingMarginDb) ||
        (a.alone.receiver.name < b.alone.receiver.name ? -1 : 1),
    );
  const { alone, workingMarginDb, limit } = weakest!;
  const { clearAirRatio, frames } = airOf(planned, alone);
  return { receiver: alone.receiver.name, workingMarginDb, limit, clearAirRatio, frames };
}

/** Its channel, or its hop frequency of (lower) median working margin. */
function middleOf({ channels }: AloneReceiver): AloneReceiver["channels"][number] {
  const rising = [...channels].sort((a, b) => order(a.budget.workingMarginDb, b.budget.workingMarginDb));
  return rising[Math.floor((rising.length - 1) / 2)]!;
}

/** Either may be −Infinity. */
function order(oneDb: number, otherDb: number): number {
  return oneDb === otherDb ? 0 : oneDb - otherDb;
}

/** The weakest by the plan, with its air as scored beside the other systems. */
function jointRoom(
  planned: PlannedSystem,
  all: readonly AloneReceiver[],
  room: string,
  eventMinutes: number,
): JointRoom | null {
  const weakest = planned.receivers.find((one) => one.room === room);
  if (weakest === undefined) return null;
  const { receiver, workingMarginDb, limit } = weakest;
  const { used, terms, clearAirRatio, frames } = airOf(
    planned,
    all.find((one) => one.receiver.name === receiver)!,
  );
  const looks = receiverLooks(used, frames, { ...terms, eventMinutes });
  return { receiver, workingMarginDb, limit, clearAirRatio, frames, looks };
}

/** Of one receiver: on its channel, or over all hop frequencies. */
function airOf({ system: { profile } }: PlannedSystem, alone: AloneReceiver) {
  const used = alone.channels.map(({ merit }) => merit);
  const terms = { profile, burstMs: BURST_MS, fadeAllowanceDb: alone.channels[0]!.budget.fadeAllowanceDb };
  return {
    used,
    terms,
    clearAirRatio: used.reduce((sum, merit) => sum + merit.clearAirRatio, 0) / used.length,
    frames: receiverFrames(used, terms),
  };
}
