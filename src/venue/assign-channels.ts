import { ArgumentError, requirePositive, tellProgress } from "../issues/index.js";
import type { LongWork } from "../issues/index.js";
import { ratioToDb } from "../units/index.js";
import { assignmentLoads } from "./channels/assignment-loads.js";
import type { AssignmentProblem } from "./channels/assignment-problem.js";
import { AssignmentSearch } from "./channels/assignment-search.js";
import type { SearchAllowance } from "./channels/assignment-search.js";
import { evaluateAssignment } from "./channels/evaluate-assignment.js";
import type { AssignmentValues } from "./channels/evaluate-assignment.js";
import { goodAssignment, quietestChannels } from "./channels/improve-assignment.js";
import { interchangeableSystems } from "./channels/interchangeable-systems.js";
import { proveAssignment } from "./channels/prove-assignment.js";
import { refineAssignment } from "./channels/refine-assignment.js";
import { requireAssignmentProblem } from "./channels/require-assignment-problem.js";
import { smallestEqual } from "./channels/smallest-equal.js";

/** When to end, and how far to go. Whatever comes first ends the search; the best so far is returned with its bound. */
export interface AssignChannelsOptions extends LongWork {
  /** Go on to the second smallest value, the third, … when the smallest is proved; true by default. */
  readonly refine?: boolean | undefined;
  /** Nodes of all search trees together, 200,000 by default: the same result on a fast and a slow machine. */
  readonly nodeLimitCount?: number | undefined;
  /** Seconds of `nowMs` from the start; needs `nowMs`. */
  readonly timeLimitS?: number | undefined;
  /** A clock, milliseconds from any origin. */
  readonly nowMs?: (() => number) | undefined;
  /** Asked every few nodes; true ends the search with the best so far. A signal ends it with nothing. */
  readonly shouldStop?: (() => boolean) | undefined;
}

/** The channels, what they are worth, and what is proved. */
export interface ChannelAssignment extends AssignmentValues {
  /** [system] channel. */
  readonly assignment: number[];
  /** Is no smallest value greater than minMarginDb (by more than 1e-9 dB)? */
  readonly optimal: boolean;
  /** No assignment has a smallest value above this, dB; minMarginDb where optimal. */
  readonly boundDb: number;
  /** So many of the values, from the smallest up, are proved the greatest possible, each given those below it. */
  readonly provedCount: number;
  /** Is it the smallest, in order of systems, of all that are equal so far (to 1e-9 dB)? */
  readonly smallestOfEquals: boolean;
}

const DEFAULT_NODES = 200_000;

/**
 * One channel for each system, so that the smallest value over all systems is the greatest possible; then the next
 * smallest, … (see {@link AssignmentProblem} for what a value is). Exact: a depth-first search with propagation over
 * everything that could be better than the best known, after a local search for a good one. Ties, to 1e-9 dB, go to
 * the smallest assignment in order of systems. Small problems are settled whole; where a limit ends the search,
 * `boundDb` says how much could be left.
 * @returns assignment, values, proof; with `nowMs` or `shouldStop` it may depend on when they ended it
 * @throws {ArgumentError} when the arrays don't fit together, a level is not finite, a base not > 0, a coupling or
 *   share not ≥ 0, a channel not one of its system's, a fixed one not allowed, or a time limit has no clock
 * @throws the signal's reason when it is aborted
 * @source the definition of the problem; propagation over sums and pairs, weights from contradictions (Boussemart et
 *   al., ECAI 2004) and large neighbourhoods (Shaw, CP 1998) as in the literature of constraint programming
 * @validity dozens of systems; the time to prove grows exponentially where many systems are all strongly coupled
 * @example const plan = assignChannels({ wantedDbm: [-60, -60], requiredCiDb: [14, 14], overlap: [1, 0.01],
 *   baseMw: [[1e-9, 2e-9], [1e-9, 1e-9]], couplingMw: [[0, 1e-8], [1e-8, 0]] });
 * plan.assignment; // => [0, 1]
 * plan.minMarginDb; // => 15.586073148417748
 * plan.optimal; // => true
 */
export function assignChannels(
  problem: AssignmentProblem,
  options: AssignChannelsOptions = {},
): ChannelAssignment {
  requireAssignmentProblem(problem);
  const loads = assignmentLoads(problem);
  const allowance = allowanceOf(options);
  const search = new AssignmentSearch(loads, interchangeableSystems(loads));
  const proof = proveAssignment(loads, search, goodAssignment(loads, allowance), allowance);
  let { channels } = proof;
  let provedCount = proof.optimal ? 1 : 0;
  if (proof.optimal && options.refine !== false)
    ({ channels, provedCount } = refineAssignment(loads, search, channels, allowance));
  const keptCount = options.refine === false ? 1 : loads.systemCount;
  const smallest = proof.optimal ? smallestEqual(loads, search, channels, keptCount, allowance) : undefined;
  const assignment = Array.from(smallest?.channels ?? channels);
  const values = evaluateAssignment(problem, assignment);
  return {
    assignment,
    ...values,
    optimal: proof.optimal,
    boundDb: proof.optimal ? values.minMarginDb : Math.max(values.minMarginDb, -ratioToDb(proof.boundRatio)),
    provedCount,
    smallestOfEquals: smallest?.proved === true,
  };
}

/**
 * The naive plan: each system on its own best channel, as if the others were off; the lowest of equals.
 * @returns [system] channel
 * @throws {ArgumentError} as assignChannels
 * @example assignEachAlone({ wantedDbm: [-60, -60], requiredCiDb: [14, 14], overlap: [1, 0.01],
 *   baseMw: [[1e-9, 2e-9], [1e-9, 1e-9]], couplingMw: [[0, 1e-8], [1e-8, 0]] }); // => [0, 0]
 */
export function assignEachAlone(problem: AssignmentProblem): number[] {
  requireAssignmentProblem(problem);
  return Array.from(quietestChannels(assignmentLoads(problem)));
}

function allowanceOf(options: AssignChannelsOptions): SearchAllowance {
  const { nodeLimitCount = DEFAULT_NODES, timeLimitS, nowMs, shouldStop } = options;
  if (!(nodeLimitCount >= 0)) throw new ArgumentError("nodeLimitCount", "a number ≥ 0", nodeLimitCount);
  if (timeLimitS !== undefined) requirePositive("timeLimitS", timeLimitS);
  if (timeLimitS !== undefined && nowMs === undefined)
    throw new ArgumentError("nowMs", "a clock for timeLimitS", nowMs);
  const endMs = timeLimitS === undefined ? Infinity : nowMs!() + timeLimitS * 1000;
  let lookCount = 0;
  return {
    leftCount: nodeLimitCount,
    shouldStop: () => {
      tellProgress(options, "search", lookCount++, null);
      return shouldStop?.() === true || (endMs < Infinity && nowMs!() >= endMs);
    },
  };
}
