import { dbToRatio, ratioToDb, toDbm } from "../../units/index.js";
import { loadsOf } from "../channels/assignment-loads.js";
import type { AssignmentLoads } from "../channels/assignment-loads.js";
import type { JointProblem, JointRow } from "./joint-problem.js";
import type { JointSystem } from "./joint-system.js";
import { hopShareRatio } from "./system-overlap.js";
import type { SystemOverlap } from "./system-overlap.js";

/** What one system puts into another, at the receiver that it troubles most. */
export interface SystemCoupling {
  /** The system that hears it. */
  readonly into: string;
  readonly from: string;
  readonly receiver: string;
  /** In the receiver, if both were on one channel, dBm; all of a hopping system's power. */
  readonly sameChannelDbm: number;
  /** In the receiver's channel in the plan, dBm; null where nothing gets there. */
  readonly inChannelDbm: number | null;
  /** Wanted level over it, dB; to be compared with the required C/I. */
  readonly carrierToOtherDb: number | null;
  readonly requiredCiDb: number;
  /** Working margin that the hearing system would gain without it, dB. */
  readonly costDb: number;
}

/** All that who-hears-whom is worked out from. */
export interface CouplingTerms {
  readonly fixed: readonly JointSystem[];
  readonly hopping: readonly JointSystem[];
  readonly joint: JointProblem;
  readonly loads: AssignmentLoads;
  readonly overlap: SystemOverlap;
}

/**
 * Who hears whom in a plan: every pair of a system with a channel and another system, the dearest first, then the
 * loudest.
 * @param withoutHops the loads with hopping system h left out
 */
export function systemCouplings(
  terms: CouplingTerms,
  assignment: readonly number[],
  withoutHops: (hopIndex: number) => AssignmentLoads,
): SystemCoupling[] {
  const { fixed, hopping, joint, loads } = terms;
  const planned = loadsOf(loads, assignment);
  const pairs = fixed.flatMap((own, r) => {
    const rows = joint.rows.filter(({ systemIndex }) => systemIndex === r);
    const costDb = (without: Float64Array): number => ratioToDb(planned[r]! / without[r]!);
    const toFixed = fixed.flatMap((other, o) =>
      o === r
        ? []
        : [
            pair(own, other, rows, assignment[r]!, {
              couplingMw: (row) => row.couplingMw[o]!,
              share: joint.problem.overlapOf!(r, assignment[r]!, o, assignment[o]!),
              costDb: costDb(loadsOf(without(loads, o), assignment)),
            }),
          ],
    );
    const { centreMhz } = own.channels[assignment[r]!]!;
    const toHopping = hopping.map((other, h) =>
      pair(own, other, rows, assignment[r]!, {
        couplingMw: (row) => row.hopCouplingMw[h]!,
        share: hopShareRatio(terms.overlap, own.system, other, centreMhz),
        costDb: costDb(loadsOf(withoutHops(h), assignment)),
      }),
    );
    return [...toFixed, ...toHopping];
  });
  const cOverI = ({ carrierToOtherDb }: SystemCoupling): number => carrierToOtherDb ?? Infinity;
  return pairs.sort((a, b) => b.costDb - a.costDb || (cOverI(a) === cOverI(b) ? 0 : cOverI(a) - cOverI(b)));
}

function pair(
  own: JointSystem,
  other: JointSystem,
  rows: readonly JointRow[],
  channelIndex: number,
  terms: { couplingMw: (row: JointRow) => number; share: number; costDb: number },
): SystemCoupling {
  const carrierToOther = (row: JointRow): number => row.wantedDbm - toDbm(terms.couplingMw(row));
  const worst = rows.reduce((most, row) => (carrierToOther(row) < carrierToOther(most) ? row : most));
  const { budget } = worst.alone.channels[channelIndex]!;
  const moved = dbToRatio(budget.receivedDbm - worst.wantedDbm);
  const sameChannelDbm = toDbm(terms.couplingMw(worst) * moved);
  const inChannelDbm = terms.share === 0 ? null : sameChannelDbm + ratioToDb(terms.share);
  return {
    into: own.system.name,
    from: other.system.name,
    receiver: worst.alone.receiver.name,
    sameChannelDbm,
    inChannelDbm,
    carrierToOtherDb: inChannelDbm === null ? null : budget.receivedDbm - inChannelDbm,
    requiredCiDb: budget.requiredCiDb,
    costDb: terms.costDb,
  };
}

/** The same loads with one system's transmitter silent. */
function without(loads: AssignmentLoads, other: number): AssignmentLoads {
  const gainRatios = loads.gainRatios.map((gain, k) => (k % loads.systemCount === other ? 0 : gain));
  return { ...loads, gainRatios };
}
