import type { LinkBudget } from "../../propagation/index.js";
import { dbToRatio, SLACK, toDbm } from "../../units/index.js";
import type { VenueReceiver } from "../venue-system.js";
import type { JointProblem, JointRow } from "./joint-problem.js";

/** One receiver in a plan of all systems. */
export interface JointReceiver {
  readonly receiver: string;
  readonly room: string;
  readonly sensitivityMarginDb: number;
  /** Against everything from outside and the other systems. */
  readonly interferenceMarginDb: number;
  readonly fadeAllowanceDb: number;
  readonly workingMarginDb: number;
  readonly limit: "range" | "interference";
}

/** @returns [system with a channel to choose] its receivers in a plan, the weakest first; equal ones by name */
export function jointMargins(
  { rows, problem }: JointProblem,
  assignment: readonly number[],
): JointReceiver[][] {
  const bySystem: JointReceiver[][] = assignment.map(() => []);
  for (const row of rows) bySystem[row.systemIndex]!.push(receiverIn(row, problem.overlapOf!, assignment));
  return bySystem.map((receivers) => receivers.sort(byWeakness));
}

function receiverIn(
  row: JointRow,
  overlapOf: NonNullable<JointProblem["problem"]["overlapOf"]>,
  assignment: readonly number[],
): JointReceiver {
  const r = row.systemIndex;
  const c = assignment[r]!;
  const moved = dbToRatio(row.alone.channels[c]!.budget.receivedDbm - row.wantedDbm);
  const totalMw = assignment.reduce(
    (sum, d, o) => (o === r ? sum : sum + row.couplingMw[o]! * moved * overlapOf(r, c, o, d)),
    row.outsideMw[c]!,
  );
  return jointReceiver(row.alone.receiver, row.alone.channels[c]!.budget, totalMw);
}

/** @param totalMw interference, noise and the other systems at the receiver, mW */
export function jointReceiver(
  { name, room }: VenueReceiver,
  budget: LinkBudget,
  totalMw: number,
): JointReceiver {
  const { receivedDbm, sensitivityMarginDb, requiredCiDb, fadeAllowanceDb } = budget;
  const interferenceMarginDb = receivedDbm - toDbm(totalMw) - requiredCiDb;
  return {
    receiver: name,
    room,
    sensitivityMarginDb,
    interferenceMarginDb,
    fadeAllowanceDb,
    workingMarginDb: Math.min(sensitivityMarginDb, interferenceMarginDb) - fadeAllowanceDb,
    limit: interferenceMarginDb < sensitivityMarginDb - SLACK ? "interference" : "range",
  };
}

/** Weakest first; equal ones by name. */
export function byWeakness(a: JointReceiver, b: JointReceiver): number {
  return a.workingMarginDb - b.workingMarginDb || (a.receiver < b.receiver ? -1 : 1);
}
