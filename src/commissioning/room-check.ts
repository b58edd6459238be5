import { group } from "d3-array";
import { censoredRegression, dot, studentTTailQuantile } from "../numeric/index.js";
import { SLACK } from "../units/index.js";
import type { Interval } from "./fit-estimate.js";
import type { ReceiverCheck } from "./receiver-check.js";

/** A room's readings together. */
export interface RoomCheck {
  readonly room: string;
  /** Receivers that count: read, and none whose antenna is suspect. */
  readonly receiverCount: number;
  /** Mean of measured − predicted, dB; null where fewer than two were heard. */
  readonly biasDb: number | null;
  /** Of the mean, by Student's t. */
  readonly biasIntervalDb: Interval | null;
  /** `low` or `high`: by 3 dB or more, and the interval leaves 0 out. */
  readonly verdict: "as-planned" | "low" | "high" | "not-judged";
}

/** A room's mean may be off by so much before it is said, dB (assumed: readings of one day and a spare of the other). */
export const ROOM_BIAS_DB = 3;

/**
 * Each room's mean difference from the plan with its interval. Receivers not heard count as at most their floor's
 * difference, by likelihood; suspects are left out, so that one loose antenna doesn't blame the room.
 * @returns rooms in the order of their first receiver
 */
export function roomChecks(checks: readonly ReceiverCheck[], confidenceRatio: number): RoomCheck[] {
  return [...group(checks, ({ room }) => room)].map(([room, own]) => {
    const counted = own.filter(
      ({ differenceDb, differenceAtMostDb, suspicion }) =>
        suspicion === null && (differenceDb ?? differenceAtMostDb) !== null,
    );
    const bias = biasOf(counted, confidenceRatio);
    const { biasDb, biasIntervalDb } = bias ?? { biasDb: null, biasIntervalDb: null };
    return { room, receiverCount: counted.length, biasDb, biasIntervalDb, verdict: verdictOn(bias) };
  });
}

interface Bias {
  readonly biasDb: number;
  readonly biasIntervalDb: Interval;
}

function biasOf(counted: readonly ReceiverCheck[], confidenceRatio: number): Bias | null {
  const heardDb = counted.flatMap(({ differenceDb }) => differenceDb ?? []);
  if (heardDb.length < 2) return null;
  const t = studentTTailQuantile((1 - confidenceRatio) / 2, heardDb.length - 1);
  const mean = heardDb.reduce((sum, each) => sum + each, 0) / heardDb.length;
  const offs = heardDb.map((each) => each - mean);
  const plain = { biasDb: mean, variance: dot(offs, offs) / (heardDb.length - 1) / heardDb.length };
  const { biasDb, variance } = (heardDb.length < counted.length ? censoredMean(counted) : null) ?? plain;
  const half = t * Math.sqrt(variance);
  return { biasDb, biasIntervalDb: [biasDb - half, biasDb + half] };
}

/** Losses, so that what is not heard lies above its limit. */
function censoredMean(counted: readonly ReceiverCheck[]): { biasDb: number; variance: number } | null {
  const fit = censoredRegression(
    counted.map(() => [1]),
    counted.map(({ differenceDb, differenceAtMostDb }) => -(differenceDb ?? differenceAtMostDb!)),
    counted.map(({ differenceDb }) => differenceDb === null),
  );
  if (fit === null) return null;
  const enlarged = counted.length / (counted.length - 1);
  return { biasDb: -fit.coefficients[0]!, variance: fit.covariance[0]![0]! * enlarged };
}

function verdictOn(bias: Bias | null): RoomCheck["verdict"] {
  if (bias === null) return "not-judged";
  const [low, high] = bias.biasIntervalDb;
  if (Math.abs(bias.biasDb) < ROOM_BIAS_DB - SLACK || (low <= 0 && high >= 0)) return "as-planned";
  return bias.biasDb < 0 ? "low" : "high";
}
