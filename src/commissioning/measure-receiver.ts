import { median } from "d3-array";
import { SLACK } from "../units/index.js";
import type {
  ReceiverCheck,
  ReceiverPrediction,
  ReceiverReading,
  ReceiverVerdict,
} from "./receiver-check.js";

/** A receiver's readings against its prediction, before it is held against its neighbours. */
export function measureReceiver(
  prediction: ReceiverPrediction,
  readings: readonly ReceiverReading[],
): ReceiverCheck {
  const { receiver, room, predictedDbm, intervalDbm, workingMarginDb = null } = prediction;
  const measuredDbm = middleDbm(readings);
  const floors = readings.flatMap(({ receivedDbm, floorDbm }) =>
    receivedDbm === null ? (floorDbm ?? []) : [],
  );
  const floorDbm = measuredDbm === null ? (median(floors) ?? null) : null;
  const differenceDb = measuredDbm === null ? null : measuredDbm - predictedDbm;
  const isWithinInterval = within(prediction, measuredDbm, floorDbm);
  return {
    ...{ receiver, room, predictedDbm, intervalDbm, readingCount: readings.length },
    notHeardCount: readings.filter(({ receivedDbm }) => receivedDbm === null).length,
    measuredDbm,
    differenceDb,
    differenceAtMostDb: floorDbm === null ? null : floorDbm - predictedDbm,
    isWithinInterval: readings.length === 0 ? null : isWithinInterval,
    measuredMarginDb:
      differenceDb === null || workingMarginDb === null ? null : workingMarginDb + differenceDb,
    verdict: verdictOn(readings.length, differenceDb, isWithinInterval),
    suspicion: null,
  };
}

/** What was not heard lies below whatever was; null where that is half of the readings or more, or there is none. */
function middleDbm(readings: readonly ReceiverReading[]): number | null {
  const heardDbm = readings.flatMap(({ receivedDbm }) => receivedDbm ?? []).sort((a, b) => b - a);
  const isOdd = readings.length % 2 === 1;
  const upper = heardDbm[Math.ceil(readings.length / 2) - 1];
  const lower = isOdd ? upper : heardDbm[readings.length / 2];
  return upper === undefined || lower === undefined ? null : (upper + lower) / 2;
}

/** Not heard is within where the interval reaches below the floor; without a floor it can't be told and isn't. */
function within(
  { intervalDbm: [lowDbm, highDbm] }: ReceiverPrediction,
  measuredDbm: number | null,
  floorDbm: number | null,
): boolean {
  if (measuredDbm !== null) return measuredDbm >= lowDbm - SLACK && measuredDbm <= highDbm + SLACK;
  return floorDbm !== null && lowDbm < floorDbm;
}

function verdictOn(readingCount: number, differenceDb: number | null, isWithin: boolean): ReceiverVerdict {
  if (readingCount === 0) return "not-read";
  if (isWithin) return "as-planned";
  if (differenceDb === null) return "not-heard";
  return differenceDb < 0 ? "low" : "high";
}
