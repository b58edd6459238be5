import { toDbm } from "../../units/index.js";
import type { AssignmentProblem } from "./assignment-problem.js";
import { rowsOfSystems } from "./rows-of-systems.js";
import { requireAssignment, requireAssignmentProblem } from "./require-assignment-problem.js";

/** What an assignment of channels is worth to each system. */
export interface AssignmentValues {
  /** [system] C/(I + N) less the required C/I, of the row whose value is least, dB. */
  readonly marginsDb: readonly number[];
  /** [system] the least of its rows' min(cap, margin) − allowance, dB. */
  readonly valuesDb: readonly number[];
  /** [system] the row whose value is least; of equal ones the first. */
  readonly weakestRows: readonly number[];
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
  const weakest = rowsOfSystems(problem).map((rows, r) =>
    rows
      .map((row) => rowValue(problem, assignment, r, row))
      .reduce((least, one) => (one.valueDb < least.valueDb ? one : least)),
  );
  const valuesDb = weakest.map(({ valueDb }) => valueDb);
  return {
    marginsDb: weakest.map(({ marginDb }) => marginDb),
    valuesDb,
    weakestRows: weakest.map(({ row }) => row),
    minMarginDb: Math.min(...valuesDb),
  };
}

/** One row's margin and value. */
interface RowValue {
  readonly row: number;
  readonly marginDb: number;
  readonly valueDb: number;
}

function rowValue(
  problem: AssignmentProblem,
  assignment: readonly number[],
  r: number,
  row: number,
): RowValue {
  const channel = assignment[r]!;
  let totalMw = problem.baseMw[row]![channel]!;
  assignment.forEach((other, o) => {
    const couplingMw = problem.couplingMw[row]![o]!;
    if (o === r || couplingMw === 0) return;
    const share = problem.overlapOf?.(r, channel, o, other) ?? problem.overlap[Math.abs(channel - other)]!;
    totalMw += couplingMw * share;
  });
  const marginDb = problem.wantedDbm[row]! - toDbm(totalMw) - problem.requiredCiDb[row]!;
  const { capDb, allowanceDb } = problem;
  return { row, marginDb, valueDb: Math.min(capDb?.[row] ?? Infinity, marginDb) - (allowanceDb?.[row] ?? 0) };
}
