import type { ReceiverCheck } from "../commissioning/index.js";
import { surveyBlock } from "./survey-json.js";
import type { Expected, VerifiedBand, VerifiedReadings, VerifyReport } from "./verify-report.js";
import { isPassed } from "./verify-words.js";

/** `stillband verify --json`: numbers are not rounded, null comes with a reason. */
export function verifyJson(report: VerifyReport): object {
  const { venue, crowd, plan, readings, band, watch } = report;
  return {
    schema: "stillband/verify@1",
    issues: report.issues,
    passes: isPassed(report),
    findings: report.findings,
    venue: { name: venue.name, crowd, region: venue.region },
    channels: report.channels,
    plan:
      plan === null
        ? null
        : {
            ...{ source: plan.source, program: plan.record.program, madeAt: plan.record.madeAt },
            comparison: plan.comparison,
          },
    planReason: plan === null ? "no earlier plan was named (--since)" : null,
    readings: readings === null ? null : readingsBlock(readings),
    readingsReason: readings === null ? "no readings were named (--readings)" : null,
    band: band === null ? null : bandBlock(band),
    bandReason: band === null ? "no fresh scan was named (--scan)" : null,
    watch,
    watchReason:
      watch !== null
        ? null
        : band === null
          ? "no fresh scan was named (--scan)"
          : "the fresh scans are of one day",
    assumed: { ...report.terms, pathModel: report.words.path, fadeLaw: report.words.fade },
  };
}

function readingsBlock(readings: VerifiedReadings): object {
  const { read, comparison, forecasts, groundCount } = readings;
  const strangerCount = comparison.strangers.length;
  const byName = new Map(forecasts.map((one) => [one.receiver, one]));
  return {
    source: read.source,
    rowCount: read.rowCount,
    usedCount: read.readings.length - groundCount - strangerCount,
    strangerCount,
    groundCount,
    rejectedCount: read.rejectedCount,
    notHeardCount: read.notHeardCount,
    predictedBy: readings.predictedBy,
    confidenceRatio: readings.confidenceRatio,
    floorDbm: readings.floorDbm,
    floorAssumed: readings.isFloorAssumed,
    verdict: comparison.verdict,
    receivers: comparison.receivers.map((one) => receiverBlock(one, byName.get(one.receiver)!)),
    rooms: comparison.rooms.map((room) => ({
      ...room,
      reason: room.biasDb === null ? "fewer than two of its receivers were heard" : null,
    })),
    notPredicted: readings.unpredicted,
    strangers: [...new Set(comparison.strangers.map(({ receiver }) => receiver))],
  };
}

function receiverBlock(check: ReceiverCheck, { system, basis, sigmaDb, isExtrapolated }: Expected): object {
  const { measuredDbm, readingCount } = check;
  return {
    ...check,
    system,
    basis,
    sigmaDb,
    isExtrapolated,
    measuredReason: measuredDbm !== null ? null : readingCount === 0 ? "not read" : "not heard",
  };
}

function bandBlock({ comparison, systems, fresh, surveyed, ...band }: VerifiedBand): object {
  return {
    ...comparison,
    systems: systems.map(({ system, receiver, room, fadeAllowanceDb, reason }) => ({
      ...{ system, receiver, room, fadeAllowanceDb, reason },
      today: comparison.systems.find((one) => one.system === system) ?? null,
    })),
    fresh: surveyBlock(fresh),
    surveyed: surveyed === null ? null : surveyBlock(surveyed),
    surveyedReason: surveyed === null ? "no scan of the survey covers these rooms" : null,
    ...band,
  };
}
