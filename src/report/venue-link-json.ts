import type { BudgetMend, ReceiverLink, SystemLinks, TransmitterPlace } from "../venue/index.js";
import { finite, nullReason, practiceBlock } from "./link-block.js";
import { regulationBlock } from "./regulation-json.js";
import type { ReceiverForecast } from "./receiver-forecast.js";
import { plannedForBlock, plannedWithBlock } from "./venue-planned-json.js";
import type { VenueLinkReport } from "./venue-link-report.js";

/** `stillband link --json` of a venue: numbers are not rounded, null comes with a reason. */
export function venueLinkJson(report: VenueLinkReport): object {
  const systems = report.systems.map((one) => systemBlock(report, one));
  return {
    schema: "stillband/link@1",
    issues: report.issues,
    ...plannedForBlock(report),
    scannedRooms: report.scannedRooms,
    assumed: { ...plannedWithBlock(report), everywhere: report.unplacedEmitters },
    systems,
  };
}

function systemBlock({ reviews, receiver, forecasts }: VenueLinkReport, one: SystemLinks): object {
  const { system, transmitter, channel, centreMhz, isCandidate, isSettled, reason, job, practice } = one;
  const { name, generic, channels } = system.profile;
  return {
    system: system.name,
    profile: { name, channelCount: channels.length, generic },
    channel,
    centreMhz,
    channelReason:
      channel === null ? (reason ?? "a hopping radio: each receiver's middle hop frequency") : null,
    isSettled,
    transmitter: transmitter === null ? null : placeBlock(transmitter),
    isCandidate,
    reason,
    job,
    expectedInHoleCount: one.receivers.reduce((sum, { heldRatio }) => sum + 1 - heldRatio, 0),
    allHoldProbability: one.receivers.reduce((product, { heldRatio }) => product * heldRatio, 1),
    practice: practiceBlock(practice),
    regulation: regulationBlock(reviews.get(system.name) ?? null),
    receivers: one.receivers
      .map((link, index) => ({
        rank: index + 1,
        ...receiverBlock(link),
        ...forecastBlock(forecasts.get(link.receiver.name) ?? null),
      }))
      .filter((_, index) => receiver === null || one.receivers[index]!.receiver.name === receiver),
  };
}

function placeBlock({ name, at, heightM, room, antenna, inRack, inSight }: TransmitterPlace): object {
  return { name, xM: at.x, yM: at.y, zM: at.z, heightM, room, antenna, inRack, inSight };
}

function receiverBlock(one: ReceiverLink): object {
  const { receiver, judged, frames, looks, heldRatio } = one;
  const { link, budget, contributors, clearAirRatio, merit, channel, centreMhz } = judged;
  return {
    ...boxBlock(receiver),
    distanceM: link.distanceM,
    channel,
    centreMhz,
    ...finite({ workingMarginDb: budget.workingMarginDb }),
    verdict: budget.verdict,
    limit: budget.limit,
    budget: { ...finite(budget), gainReason: nullReason(budget) },
    walls: link.obstacles.walls,
    floors: link.obstacles.floors,
    inSight: link.inSight,
    txNull: link.txNull,
    rxNull: link.rxNull,
    caveats: link.caveats,
    spokenBy: merit.spokenBy,
    clearAirRatio,
    heldRatio,
    frames,
    looks,
    contributors,
    hurts: one.hurts.map((hurt) => ({
      ...hurt,
      reason: hurt.lossDb === null ? "an antenna's true null takes everything" : null,
    })),
    mends: one.mends.map(mendBlock),
    channels: one.channels.map(({ channel: number, centreMhz: mhz, budget: its, clearAirRatio: clear }) => ({
      channel: number,
      centreMhz: mhz,
      ...finite({ workingMarginDb: its.workingMarginDb, interferenceDbm: its.interferenceDbm }),
      clearAirRatio: clear,
    })),
  };
}

/** What it will read: of the path loss where the room's model was fitted, of one reading's level in any case. */
function forecastBlock(forecast: ReceiverForecast | null): object {
  return {
    predictedDbm: forecast?.predictedDbm ?? null,
    readingIntervalDbm: forecast?.intervalDbm ?? null,
    readingReason: forecast === null ? "in an antenna's true null: no direct signal" : null,
    predictionIntervalDb: forecast?.pathLossIntervalDb ?? null,
    predictionReason:
      (forecast?.pathLossIntervalDb ?? null) === null ? "the room's path model was not fitted on site" : null,
    spread:
      forecast === null
        ? null
        : { basis: forecast.basis, sigmaDb: forecast.sigmaDb, isExtrapolated: forecast.isExtrapolated },
  };
}

function boxBlock({ name, room, luminaires, at, heightM }: ReceiverLink["receiver"]): object {
  return { receiver: name, room, luminaires, xM: at.x, yM: at.y, zM: at.z, heightM };
}

function mendBlock({ code, workingMarginDb, helpDb, heightM, channel, transmitter }: BudgetMend): object {
  return {
    code,
    ...finite({ workingMarginDb }),
    helpDb,
    helpReason: helpDb === null ? "there was no signal before" : null,
    heightM,
    channel,
    transmitter: placeBlock(transmitter),
  };
}
