import {
  ArgumentError,
  requireFinite,
  requireNonNegative,
  requirePositive,
  requireWhole,
} from "../../issues/index.js";
import type { AssignmentProblem } from "./assignment-problem.js";

/** @throws {ArgumentError} unless the arrays fit together and their figures are what they should be */
export function requireAssignmentProblem(problem: AssignmentProblem): void {
  const { wantedDbm, requiredCiDb, baseMw, couplingMw, overlap } = problem;
  const count = wantedDbm.length;
  if (count === 0) throw new ArgumentError("wantedDbm", "at least one system", "none");
  requireFigures("wantedDbm", wantedDbm, count, requireFinite);
  requireFigures("requiredCiDb", requiredCiDb, count, requireFinite);
  requireLength("baseMw", baseMw, count);
  for (const [r, row] of baseMw.entries()) {
    if (row.length === 0) throw new ArgumentError(`baseMw[${r}]`, "at least one channel", "none");
    requireFigures(`baseMw[${r}]`, row, row.length, requirePositive);
  }
  requireLength("couplingMw", couplingMw, count);
  couplingMw.forEach((row, r) => requireFigures(`couplingMw[${r}]`, row, count, requireNonNegative));
  overlap.forEach((share, distance) => requireNonNegative(`overlap[${distance}]`, share));
  const mostChannels = baseMw.reduce((most, row) => Math.max(most, row.length), 0);
  if (problem.overlapOf === undefined && overlap.length < mostChannels)
    throw new ArgumentError("overlap", `a share for each distance 0…${mostChannels - 1}`, overlap.length);
  if (problem.capDb) requireFigures("capDb", problem.capDb, count, requireCap);
  if (problem.allowanceDb) requireFigures("allowanceDb", problem.allowanceDb, count, requireFinite);
  requireChoices(problem);
}

function requireCap(argument: string, capDb: number): void {
  if (capDb !== Infinity) requireFinite(argument, capDb);
}

function requireLength(argument: string, list: readonly unknown[], count: number): void {
  if (list.length !== count)
    throw new ArgumentError(argument, `one for each of ${count} systems`, list.length);
}

function requireFigures(
  argument: string,
  values: readonly number[],
  count: number,
  requireOne: (argument: string, value: number) => void,
): void {
  requireLength(argument, values, count);
  for (let k = 0; k < count; k++) requireOne(`${argument}[${k}]`, values[k]!);
}

function requireChoices({ baseMw, allowedChannels, fixedChannels }: AssignmentProblem): void {
  if (allowedChannels) requireLength("allowedChannels", allowedChannels, baseMw.length);
  if (fixedChannels) requireLength("fixedChannels", fixedChannels, baseMw.length);
  baseMw.forEach((row, r) => {
    const allowed = allowedChannels?.[r];
    const fixed = fixedChannels?.[r];
    if (allowed?.length === 0)
      throw new ArgumentError(`allowedChannels[${r}]`, "at least one channel", "none");
    allowed?.forEach((channel, k) => requireWhole(`allowedChannels[${r}][${k}]`, channel, 0, row.length - 1));
    if (fixed === undefined) return;
    requireWhole(`fixedChannels[${r}]`, fixed, 0, row.length - 1);
    if (allowed?.includes(fixed) === false)
      throw new ArgumentError(`fixedChannels[${r}]`, "one of its allowed channels", fixed);
  });
}

/** @throws {ArgumentError} unless there is a channel for each system */
export function requireAssignment({ baseMw }: AssignmentProblem, assignment: readonly number[]): void {
  requireLength("assignment", assignment, baseMw.length);
  baseMw.forEach((row, r) => requireWhole(`assignment[${r}]`, assignment[r]!, 0, row.length - 1));
}
