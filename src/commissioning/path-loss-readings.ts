import { ArgumentError, requireFinite, requireNonNegative, requirePositive } from "../issues/index.js";

/** Losses measured on a walk, one entry in each list for a reading. */
export interface PathLossReadings {
  /** 3-D antenna separation, m, > 0. */
  readonly distanceM: readonly number[];
  /** Path loss, dB; of a reading that was not heard the least that it must have been, by the receiver's floor. */
  readonly lossDb: readonly number[];
  /** Was it not heard? All were unless given. */
  readonly censored?: readonly boolean[] | undefined;
  /** Walls that the straight line crosses; no wall loss is fitted unless given. */
  readonly wallCount?: readonly number[] | undefined;
  /** d₀ of the model, m, > 0; 1 unless given. */
  readonly referenceDistanceM?: number | undefined;
  /** Of the intervals; 0.95 unless given. */
  readonly confidenceRatio?: number | undefined;
}

/** The readings with everything that was not given. */
export type CheckedReadings = Required<{
  [K in keyof PathLossReadings]: NonNullable<PathLossReadings[K]>;
}> & {
  readonly hasWalls: boolean;
};

/**
 * @returns the readings, checked, with everything that was not given
 * @throws {ArgumentError} when lists differ in length or a figure is out of range
 */
export function checkedReadings(readings: PathLossReadings): CheckedReadings {
  const { distanceM, lossDb, referenceDistanceM = 1, confidenceRatio = 0.95 } = readings;
  const censored = readings.censored ?? distanceM.map(() => false);
  const wallCount = readings.wallCount ?? distanceM.map(() => 0);
  for (const [name, list] of Object.entries({ lossDb, censored, wallCount }))
    if (list.length !== distanceM.length)
      throw new ArgumentError(name, `${distanceM.length} entries, as distanceM has`, list.length);
  distanceM.forEach((each, index) => requirePositive(`distanceM[${index}]`, each));
  lossDb.forEach((each, index) => requireFinite(`lossDb[${index}]`, each));
  wallCount.forEach((each, index) => requireNonNegative(`wallCount[${index}]`, each));
  requirePositive("referenceDistanceM", referenceDistanceM);
  requireConfidence(confidenceRatio);
  // Through the same number of walls everywhere, their loss can't be told from the reference loss.
  const hasWalls = wallCount.some((each) => each !== wallCount[0]);
  return { distanceM, lossDb, censored, wallCount, referenceDistanceM, confidenceRatio, hasWalls };
}

/** @throws {ArgumentError} unless it is from 0.5 to 0.9999 */
export function requireConfidence(confidenceRatio: number): void {
  if (!(confidenceRatio >= 0.5 && confidenceRatio <= 0.9999))
    throw new ArgumentError("confidenceRatio", "a number from 0.5 to 0.9999", confidenceRatio);
}
