import type { PlannedSystem, SystemOnChannel, TransmitterPlace } from "../venue/index.js";
import { finite } from "./link-block.js";
import { regulationBlock } from "./regulation-json.js";
import type { CrowdMargin, RoomReport, RoomsReport } from "./rooms-report.js";
import { plannedForBlock, plannedWithBlock } from "./venue-planned-json.js";
import { venueRequestBlock } from "./venue-request-json.js";
import { verdictWord } from "./verdict-mark.js";

/** `stillband rooms --json`: numbers are not rounded, null comes with a reason. */
export function roomsJson(report: RoomsReport): object {
  const { survey, plan, request } = report;
  return {
    schema: "stillband/rooms@1",
    issues: report.issues,
    ...plannedForBlock(report),
    assumed: plannedWithBlock(report),
    rooms: report.rooms.map(roomBlock),
    joint: jointBlock(report),
    naive: naiveBlock(report),
    coupling: plan.couplings.map((one) => ({
      ...one,
      reason: one.inChannelDbm === null ? "nothing of it reaches the receiver's channel" : null,
    })),
    excluded: plan.excluded,
    request: request === null ? null : venueRequestBlock(request, survey),
    requestReason: request === null ? "no system can be planned" : null,
  };
}

function roomBlock({ alone, joint, ...room }: RoomReport): object {
  return {
    ...room,
    aloneReason:
      room.aloneChannel === null ? (room.reason ?? "a hopping radio: there is no one channel") : null,
    alone: alone.map(crowdBlock),
    joint: joint === null ? null : { ...joint, verdict: verdictWord(joint.workingMarginDb) },
    jointReason: joint === null ? (room.reason ?? NULL_REASON) : null,
  };
}

function crowdBlock({ crowd, weakest, reason }: CrowdMargin): object {
  if (weakest === null)
    return {
      crowd,
      receiver: null,
      workingMarginDb: null,
      verdict: null,
      limit: null,
      clearAirRatio: null,
      frames: null,
      reason,
    };
  const { workingMarginDb, ...rest } = weakest;
  return {
    crowd,
    ...rest,
    ...finite({ workingMarginDb }),
    verdict: verdictWord(workingMarginDb),
    reason: workingMarginDb === -Infinity ? NULL_REASON : null,
  };
}

const NULL_REASON = "no wanted signal: in an antenna's null";

function jointBlock(report: RoomsReport): object {
  const { plan, reviews } = report;
  const { minMarginDb = null, boundDb = null, optimal = null, provedCount = null } = plan.proof ?? {};
  return {
    minMarginDb,
    boundDb,
    optimal,
    provedCount,
    reason: plan.proof === null ? "no system has a channel to choose" : null,
    systems: plan.systems.map((one) => ({
      ...systemBlock(one),
      regulation: regulationBlock(reviews.get(one.system.name) ?? null),
    })),
  };
}

function systemBlock(one: PlannedSystem): object {
  const { system, transmitter, isCandidate, isSettled, isHopping, lostReceivers, alone, fallback } = one;
  const { name, generic, channels } = system.profile;
  return {
    system: system.name,
    profile: { name, channelCount: channels.length, generic },
    isHopping,
    isSettled,
    isCandidate,
    transmitter: placeBlock(transmitter),
    ...onBlock(one),
    receivers: one.receivers,
    alone: onBlock(alone),
    fallback,
    lostReceivers,
    lostReason: lostReceivers.length > 0 ? NULL_REASON : null,
  };
}

function placeBlock({ name, at, heightM, room }: TransmitterPlace): object {
  return { name, xM: at.x, yM: at.y, zM: at.z, heightM, room };
}

function onBlock({ channel, centreMhz, workingMarginDb, receivers }: SystemOnChannel): object {
  return {
    channel,
    centreMhz,
    channelReason: channel === null ? "a hopping radio: each receiver's middle hop frequency" : null,
    workingMarginDb,
    verdict: verdictWord(workingMarginDb),
    weakestReceiver: receivers[0]!.receiver,
    limit: receivers[0]!.limit,
  };
}

function naiveBlock({ plan: { proof, systems } }: RoomsReport): object {
  return {
    minMarginDb: proof?.naiveMinMarginDb ?? null,
    costDb: proof === null ? null : proof.minMarginDb - proof.naiveMinMarginDb,
    reason: proof === null ? "no system has a channel to choose" : null,
    systems: systems.map(({ system, naive, workingMarginDb }) => ({
      system: system.name,
      ...onBlock(naive),
      costDb: workingMarginDb - naive.workingMarginDb,
    })),
  };
}
