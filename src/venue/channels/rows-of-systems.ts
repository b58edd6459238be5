import type { AssignmentProblem } from "./assignment-problem.js";

/** @returns [system] its rows in their order; one a system where the problem has no `systemOf` */
export function rowsOfSystems({
  wantedDbm,
  systemOf,
}: Pick<AssignmentProblem, "wantedDbm" | "systemOf">): number[][] {
  if (systemOf === undefined) return wantedDbm.map((_, row) => [row]);
  const rows: number[][] = [];
  systemOf.forEach((system, row) => {
    while (rows.length <= system) rows.push([]);
    rows[system]!.push(row);
  });
  return rows;
}
