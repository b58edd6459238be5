import { toDbm } from "../../units/index.js";
import type { AssignmentProblem } from "./assignment-problem.js";
import { requireAssignment, requireAssignmentProblem } from "./require-assignment-problem.js";

/** What an assignment of channels is worth to each system. */
export interface AssignmentValues {
  /** [system] C/(I + N) less the required C/I, dB. */
  readonly marginsDb: readonly number[];
  /** [system] min(cap, margin) − allowance, dB. */
  readonly valuesDb: readonly number[];
  /** The smallest value, dB. */
  readonly minMarginDb: number;
}

/**
 * Margins of all systems where each is on a given channel: the naive plan (each on its own best) beside the joint one.
 * @param assignment [system] channel
 * @throws {ArgumentError} as assignChannels, and when a channel isn't one of its system's
 * @source the definition in {@link AssignmentProblem}
 * @example evaluateAssignment({ wantedDbm: [-60, -60], requiredCiDb: [14, 14], baseMw: [[1e-9, 1e-9], [1e-9, 1e-9]],
 *   couplingMw: [[0, 9e-9], [9e-9, 0]], overlap: [1, 0] }, [0, 0]).valuesDb; // => [6, 6]
 */
export function evaluateAssignment(
  problem: AssignmentProblem,
  assignment: readonly number[],
): AssignmentValues {
  requireAssignmentProblem(problem);
  requireAssignment(problem, assignment);
  const marginsDb = assignment.map((_, r) => marginDb(problem, assignment, r));
  const valuesDb = marginsDb.map(
    (margin, r) => Math.min(problem.capDb?.[r] ?? Infinity, margin) - (problem.allowanceDb?.[r] ?? 0),
  );
  return { marginsDb, valuesDb, minMarginDb: Math.min(...valuesDb) };
}

function marginDb(problem: AssignmentProblem, assignment: readonly number[], r: number): number {
  const channel = assignment[r]!;
  let totalMw = problem.baseMw[r]![channel]!;
  assignment.forEach((other, o) => {
    const couplingMw = problem.couplingMw[r]![o]!;
    if (o === r || couplingMw === 0) return;
    const share = problem.overlapOf?.(r, channel, o, other) ?? problem.overlap[Math.abs(channel - other)]!;
    totalMw += couplingMw * share;
  });
  return problem.wantedDbm[r]! - toDbm(totalMw) - problem.requiredCiDb[r]!;
}
