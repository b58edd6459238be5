import { assignChannels } from "../assign-channels.js";
import type { AssignChannelsOptions } from "../assign-channels.js";
import { assignmentLoads } from "../channels/assignment-loads.js";
import type { AssignmentLoads } from "../channels/assignment-loads.js";
import type { VenueSite } from "../venue-site.js";
import { bestAlone } from "./best-alone.js";
import { fallbackChannels } from "./fallback-channels.js";
import type { FallbackChannel } from "./fallback-channels.js";
import { jointMargins } from "./joint-margins.js";
import { jointProblem } from "./joint-problem.js";
import type { JointProblem } from "./joint-problem.js";
import type { JointSystem } from "./joint-system.js";
import { systemCouplings } from "./system-couplings.js";
import type { SystemCoupling } from "./system-couplings.js";
import type { SystemOverlap } from "./system-overlap.js";
import { widenSpare } from "./widen-spare.js";

/** How good a plan is, and how sure that is. */
export interface JointProof {
  /** Smallest working margin over all systems with a channel, dB. */
  readonly minMarginDb: number;
  /** No plan has a greater one than this, dB. */
  readonly boundDb: number;
  readonly optimal: boolean;
  /**
   * So many systems' margins, from the smallest up, are proved the greatest possible, each given those below it; all
   * but the smallest to 0.25 dB, which they may have given up.
   */
  readonly provedCount: number;
  /** Smallest working margin with each system on its own best channel, dB. */
  readonly naiveMinMarginDb: number;
}

/** The channels of the systems that have one to choose. */
export interface ChosenChannels {
  readonly joint: JointProblem;
  readonly assignment: readonly number[];
  readonly aloneChannels: readonly number[];
  readonly fallbacks: readonly FallbackChannel[];
  readonly couplings: readonly SystemCoupling[];
  readonly proof: JointProof;
}

/** The systems of a venue that can be planned. */
export interface JointSystems {
  readonly site: VenueSite;
  /** Those that have a channel to choose. */
  readonly fixed: readonly JointSystem[];
  readonly hopping: readonly JointSystem[];
  readonly overlap: SystemOverlap;
}

/** When the search is to end. */
export type SearchTerms = Pick<
  AssignChannelsOptions,
  "timeLimitS" | "nowMs" | "shouldStop" | "signal" | "onProgress"
>;

/** Solves the joint problem of the systems with a channel to choose, at least one, and looks at it from all sides. */
export function chooseChannels(
  { site, fixed, hopping, overlap }: JointSystems,
  search: SearchTerms,
): ChosenChannels {
  const joint = jointProblem(site, fixed, hopping, overlap);
  const loads = assignmentLoads(joint.problem);
  const found = assignChannels(joint.problem, searchOptions(search));
  const assignment = widenSpare(loads, assignmentLoads(joint.interferenceOnly), found.assignment);
  const aloneChannels = fixed.map(bestAlone);
  const withoutHops = (hopIndex: number): AssignmentLoads =>
    assignmentLoads(
      jointProblem(
        site,
        fixed,
        hopping.filter((_, h) => h !== hopIndex),
        overlap,
      ).problem,
    );
  const minMarginDb = leastDb(joint, assignment);
  return {
    joint,
    assignment,
    aloneChannels,
    fallbacks: fallbackChannels(fixed, loads, assignment),
    couplings: systemCouplings({ fixed, hopping, joint, loads, overlap }, assignment, withoutHops),
    proof: {
      minMarginDb,
      boundDb: found.optimal ? minMarginDb : Math.max(minMarginDb, found.boundDb),
      optimal: found.optimal,
      provedCount: found.provedCount,
      naiveMinMarginDb: leastDb(joint, aloneChannels),
    },
  };
}

function searchOptions({
  timeLimitS,
  nowMs,
  shouldStop,
  signal,
  onProgress,
}: SearchTerms): AssignChannelsOptions {
  return {
    ...(timeLimitS !== undefined && { timeLimitS, nodeLimitCount: Infinity }),
    nowMs,
    shouldStop,
    signal,
    onProgress,
  };
}

function leastDb(joint: JointProblem, assignment: readonly number[]): number {
  return Math.min(...jointMargins(joint, assignment).map(([weakest]) => weakest!.workingMarginDb));
}
