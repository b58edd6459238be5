import { jobAvailability } from "../quality/index.js";
import type { JobAvailability } from "../quality/index.js";

/** What the share of positions, which is per receiver, means for all receivers of the job. */
export interface JobPlan extends JobAvailability {
  readonly receiverCount: number;
  /** Share of positions for each receiver, 0..1. */
  readonly reliability: number;
  /** Was that share set so that all receivers hold with a stated chance? */
  readonly setForAll: boolean;
}

/** The whole job, or null with the reason. */
export interface JobAnswer {
  readonly job: JobPlan | null;
  readonly jobReason: string | null;
  /** Where the number is not stated, what the share means for twenty: an example. */
  readonly exampleJob: JobPlan | null;
}

/**
 * The expected number of receivers in a hole and the chance that all hold.
 * @param terms receiverCount null: the number of receivers was not stated
 * @throws {ArgumentError} when the count is not whole and from 1 to 1e6, or the share not in 0..1
 * @validity receivers fade independently of each other: see `jobAvailability`
 * @example planJob({ receiverCount: 20, reliability: 0.99, setForAll: false }).job.receiverCount; // => 20
 */
export function planJob(terms: {
  readonly receiverCount: number | null;
  readonly reliability: number;
  readonly setForAll: boolean;
}): JobAnswer {
  const { receiverCount, reliability, setForAll } = terms;
  const jobOf = (count: number): JobPlan => ({
    receiverCount: count,
    reliability,
    ...jobAvailability({ receiverCount: count, reliability }),
    setForAll,
  });
  if (receiverCount !== null) return { job: jobOf(receiverCount), jobReason: null, exampleJob: null };
  const jobReason = "the number of receivers was not stated";
  return { job: null, jobReason, exampleJob: jobOf(EXAMPLE_COUNT) };
}

const EXAMPLE_COUNT = 20;
