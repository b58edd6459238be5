import type { Vector3 } from "../propagation/index.js";
import type { Interval } from "./fit-estimate.js";

/** What the plan expects a receiver to read. */
export interface ReceiverPrediction {
  readonly receiver: string;
  readonly room: string;
  readonly predictedDbm: number;
  /** Where one reading will lie, dBm. */
  readonly intervalDbm: Interval;
  /** The plan's working margin, dB; null: not known, then no margin is worked out. */
  readonly workingMarginDb?: number | null | undefined;
  /** Tells its neighbours, m; without it they are all others of the room. */
  readonly at?: Vector3 | null | undefined;
}

/** One reading at a receiver; a `WalkReading` fits. */
export interface ReceiverReading {
  readonly receiver: string | null;
  /** dBm; null where it was not heard. */
  readonly receivedDbm: number | null;
  /** Of a reading not heard: the level that it stayed below, dBm; null where nothing tells. */
  readonly floorDbm: number | null;
}

/**
 * What a receiver's readings say.
 * - `as-planned`: within the interval, or not heard where the interval reaches below the floor
 * - `low`, `high`: outside it
 * - `not-heard`: expected above the floor, and nothing came
 * - `antenna-suspect`: far below its neighbours, which agree with each other: a loose antenna or a null
 * - `not-read`: no reading names it
 */
export type ReceiverVerdict = "as-planned" | "low" | "high" | "not-heard" | "antenna-suspect" | "not-read";

/** Why one receiver may be low among good neighbours, the likelier first, and how far it is below them. */
export interface AntennaSuspicion {
  readonly causes: readonly ("loose-antenna" | "null")[];
  /** Below the neighbours' median difference from the plan, dB; of one not heard at least so much. */
  readonly belowNeighboursDb: number;
  readonly neighbourCount: number;
}

/** A receiver's readings against the plan. */
export interface ReceiverCheck {
  readonly receiver: string;
  readonly room: string;
  readonly predictedDbm: number;
  readonly intervalDbm: Interval;
  readonly readingCount: number;
  readonly notHeardCount: number;
  /** Median of its readings, dBm; null where at least half of them were not heard, or there is none. */
  readonly measuredDbm: number | null;
  /** Measured − predicted, dB; null where there is no measured level. */
  readonly differenceDb: number | null;
  /** Of one not heard: the difference is no more than this, dB; else null. */
  readonly differenceAtMostDb: number | null;
  readonly isWithinInterval: boolean | null;
  /** The plan's working margin with the measured level in place of the predicted, dB; null where either lacks. */
  readonly measuredMarginDb: number | null;
  readonly verdict: ReceiverVerdict;
  readonly suspicion: AntennaSuspicion | null;
}
