import { ArgumentError, requireRatio, requireWhole } from "../issues/index.js";

/** What a share that is meant for each receiver means for all of them. */
export interface JobAvailability {
  /** Receivers expected in a hole, on average over such jobs. */
  readonly expectedInHoleCount: number;
  /** The chance that every receiver holds, 0..1. */
  readonly allHoldProbability: number;
}

/**
 * A share R of positions is for one receiver. Of N, N·(1 − R) are expected in a hole and all hold with chance R^N.
 * @param job receiverCount, N, whole, 1 … 1e6; reliability, R, the share of positions for each receiver, 0..1
 * @throws {ArgumentError} when the count is not whole or out of range, or the share not in 0..1
 * @source binomial distribution
 * @validity receivers fade independently: true of small-scale fading more than half a wave (6 cm) apart, not of a
 *   wall or a crowd that shadows several at once (then fewer jobs have holes, but more of them)
 * @example jobAvailability({ receiverCount: 2, reliability: 0.9 }); // => { expectedInHoleCount: 0.2, allHoldProbability: 0.81 }
 */
export function jobAvailability(job: {
  readonly receiverCount: number;
  readonly reliability: number;
}): JobAvailability {
  const { receiverCount, reliability } = job;
  requireWhole("receiverCount", receiverCount, 1, MOST_RECEIVERS);
  requireRatio("reliability", reliability);
  return {
    expectedInHoleCount: receiverCount * (1 - reliability),
    allHoldProbability: reliability ** receiverCount,
  };
}

/**
 * The share of positions for each receiver that gives the whole job a chance: R = P^(1/N), the inverse of
 * {@link jobAvailability}.
 * @param job receiverCount, N, whole, 1 … 1e6; allHoldProbability, P, above 0 and below 1
 * @returns R, above 0 and below 1, as a fade allowance needs it
 * @throws {ArgumentError} when the count is not whole or out of range, the chance not above 0 and below 1, or so
 *   near to 1 that R can't be told from 1
 * @source as jobAvailability
 * @validity as jobAvailability
 * @example reliabilityForAll({ receiverCount: 2, allHoldProbability: 0.81 }); // => 0.9
 */
export function reliabilityForAll(job: {
  readonly receiverCount: number;
  readonly allHoldProbability: number;
}): number {
  const { receiverCount, allHoldProbability } = job;
  requireWhole("receiverCount", receiverCount, 1, MOST_RECEIVERS);
  const reliability =
    allHoldProbability > 0 && allHoldProbability < 1 ? allHoldProbability ** (1 / receiverCount) : NaN;
  if (!(reliability < 1))
    throw new ArgumentError("allHoldProbability", "a number above 0 and clearly below 1", allHoldProbability);
  return reliability;
}

const MOST_RECEIVERS = 1e6;
