import {
  ArgumentError,
  requireFinite,
  requireNonNegative,
  requirePositive,
  requireWhole,
} from "../../issues/index.js";
import type { AssignmentProblem } from "./assignment-problem.js";
import { rowsOfSystems } from "./rows-of-systems.js";

/** @throws {ArgumentError} unless the arrays fit together and their figures are what they should be */
export function requireAssignmentProblem(problem: AssignmentProblem): void {
  const { wantedDbm, requiredCiDb, baseMw, couplingMw, overlap } = problem;
  const count = wantedDbm.length;
  if (count === 0) throw new ArgumentError("wantedDbm", "at least one system", "none");
  const systems = requireRows(problem);
  requireFigures("wantedDbm", wantedDbm, count, requireFinite);
  requireFigures("requiredCiDb", requiredCiDb, count, requireFinite);
  requireLength("baseMw", baseMw, count);
  for (const [r, row] of baseMw.entries()) {
    if (row.length === 0) throw new ArgumentError(`baseMw[${r}]`, "at least one channel", "none");
    requireFigures(`baseMw[${r}]`, row, row.length, requirePositive);
  }
  requireLength("couplingMw", couplingMw, count);
  couplingMw.forEach((row, r) => requireFigures(`couplingMw[${r}]`, row, systems.length, requireNonNegative));
  overlap.forEach((share, distance) => requireNonNegative(`overlap[${distance}]`, share));
  const mostChannels = baseMw.reduce((most, row) => Math.max(most, row.length), 0);
  if (problem.overlapOf === undefined && overlap.length < mostChannels)
    throw new ArgumentError("overlap", `a share for each distance 0…${mostChannels - 1}`, overlap.length);
  if (problem.capDb) requireFigures("capDb", problem.capDb, count, requireCap);
  if (problem.allowanceDb) requireFigures("allowanceDb", problem.allowanceDb, count, requireFinite);
  requireChoices(problem, systems);
}

/** @returns [system] its rows */
function requireRows(problem: AssignmentProblem): number[][] {
  const { systemOf, wantedDbm, baseMw } = problem;
  if (systemOf !== undefined) {
    requireFigures("systemOf", systemOf, wantedDbm.length, (argument, system) =>
      requireWhole(argument, system, 0, wantedDbm.length - 1),
    );
  }
  const systems = rowsOfSystems(problem);
  systems.forEach((rows, r) => {
    if (rows.length === 0) throw new ArgumentError("systemOf", `a row for system ${r}`, "none");
    for (const row of rows)
      if (baseMw[row]?.length !== baseMw[rows[0]!]?.length)
        throw new ArgumentError(
          `baseMw[${row}]`,
          "as many channels as its system's other rows",
          baseMw[row]?.length,
        );
  });
  return systems;
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

function requireChoices(
  { baseMw, allowedChannels, fixedChannels }: AssignmentProblem,
  systems: readonly (readonly number[])[],
): void {
  if (allowedChannels) requireLength("allowedChannels", allowedChannels, systems.length);
  if (fixedChannels) requireLength("fixedChannels", fixedChannels, systems.length);
  systems.forEach((rows, r) => {
    const row = baseMw[rows[0]!]!;
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
export function requireAssignment(problem: AssignmentProblem, assignment: readonly number[]): void {
  const systems = rowsOfSystems(problem);
  requireLength("assignment", assignment, systems.length);
  systems.forEach((rows, r) =>
    requireWhole(`assignment[${r}]`, assignment[r]!, 0, problem.baseMw[rows[0]!]!.length - 1),
  );
}
