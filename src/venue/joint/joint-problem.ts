import { dbToRatio, toMw } from "../../units/index.js";
import type { AssignmentProblem } from "../channels/assignment-problem.js";
import type { VenueSite } from "../venue-site.js";
import type { JointAlone, JointSystem } from "./joint-system.js";
import { systemIntoReceiverDbm } from "./system-into-receiver.js";
import { hopShareRatio } from "./system-overlap.js";
import type { SystemOverlap } from "./system-overlap.js";

/** One receiver of the joint problem. */
export interface JointRow {
  /** Of its system among those with a channel to choose. */
  readonly systemIndex: number;
  readonly alone: JointAlone;
  /** On the system's middle channel, dBm: couplings belong to it. */
  readonly wantedDbm: number;
  /** [channel] interference and noise exceeded for no more than the busy share, and what hopping systems add, mW. */
  readonly outsideMw: readonly number[];
  /** [other system with a channel to choose] on one and the same channel, the middle one, mW. */
  readonly couplingMw: readonly number[];
  /** [hopping system] all of its power, mW. */
  readonly hopCouplingMw: readonly number[];
}

/** The systems of a venue as one problem. */
export interface JointProblem {
  /** [row] */
  readonly rows: readonly JointRow[];
  /** The receivers' rows, then one more a system: sensitivity as its cap, channel by channel. */
  readonly problem: AssignmentProblem;
  /** The receivers' rows alone: what is to spare over interference, whatever the sensitivity. */
  readonly interferenceOnly: AssignmentProblem;
}

/**
 * Systems with a channel to choose as one assignment problem: of every receiver the outside as the scans have it,
 * hopping systems spread evenly over their hop frequencies, and what each other system puts there while it is on the
 * air, added as if it always were. A level moves with frequency as the receiver's wanted level does.
 * @param fixed systems on one channel each
 * @param hopping systems that hop
 */
export function jointProblem(
  site: VenueSite,
  fixed: readonly JointSystem[],
  hopping: readonly JointSystem[],
  overlap: SystemOverlap,
): JointProblem {
  const rows = fixed.flatMap((own, systemIndex) =>
    own.receivers.map((alone) => jointRow(site, { own, systemIndex, alone }, fixed, hopping, overlap)),
  );
  const choice = {
    overlap: [],
    overlapOf: (r: number, c: number, o: number, d: number): number =>
      overlap(
        fixed[r]!.system,
        fixed[o]!.system,
        fixed[r]!.channels[c]!.centreMhz - fixed[o]!.channels[d]!.centreMhz,
      ),
    fixedChannels: fixed.map(({ system, channels }) => {
      const index = channels.findIndex(({ channel }) => channel === system.channel);
      return index < 0 ? undefined : index;
    }),
  };
  const interferenceOnly = { ...rowTerms(rows), ...choice };
  const caps = fixed.map(({ channels, receivers }) => channels.map((_, c) => capLoadRatio(receivers, c)));
  return {
    rows,
    interferenceOnly,
    problem: {
      ...choice,
      wantedDbm: [...interferenceOnly.wantedDbm, ...caps.map(() => 0)],
      requiredCiDb: [...interferenceOnly.requiredCiDb, ...caps.map(() => 0)],
      allowanceDb: [...interferenceOnly.allowanceDb, ...caps.map(() => 0)],
      baseMw: [...interferenceOnly.baseMw, ...caps],
      couplingMw: [...interferenceOnly.couplingMw, ...caps.map(() => fixed.map(() => 0))],
      systemOf: [...interferenceOnly.systemOf, ...caps.map((_, r) => r)],
    },
  };
}

function rowTerms(rows: readonly JointRow[]) {
  return {
    wantedDbm: rows.map(({ wantedDbm }) => wantedDbm),
    requiredCiDb: rows.map(({ alone }) => alone.channels[0]!.budget.requiredCiDb),
    allowanceDb: rows.map(({ alone }) => alone.channels[0]!.budget.fadeAllowanceDb),
    baseMw: rows.map(({ alone, wantedDbm, outsideMw }) =>
      alone.channels.map(({ budget }, c) => outsideMw[c]! * dbToRatio(wantedDbm - budget.receivedDbm)),
    ),
    couplingMw: rows.map(({ couplingMw }) => couplingMw),
    systemOf: rows.map(({ systemIndex }) => systemIndex),
  };
}

/** The load that stands for sensitivity less fading at the receiver with the least of it: no margin counts beyond. */
function capLoadRatio(receivers: readonly JointAlone[], channelIndex: number): number {
  return receivers.reduce((most, { channels }) => {
    const { sensitivityMarginDb, fadeAllowanceDb } = channels[channelIndex]!.budget;
    return Math.max(most, dbToRatio(fadeAllowanceDb - sensitivityMarginDb));
  }, 0);
}

function jointRow(
  site: VenueSite,
  { own, systemIndex, alone }: { own: JointSystem; systemIndex: number; alone: JointAlone },
  fixed: readonly JointSystem[],
  hopping: readonly JointSystem[],
  overlap: SystemOverlap,
): JointRow {
  const middle = alone.channels[Math.floor((alone.channels.length - 1) / 2)]!;
  const into = (other: JointSystem): number =>
    other === own
      ? 0
      : toMw(systemIntoReceiverDbm(site, other, own.system, alone.receiver, middle.centreMhz));
  const wantedDbm = middle.budget.receivedDbm;
  const hopCouplingMw = hopping.map(into);
  const outsideMw = alone.channels.map(({ budget, centreMhz }) => {
    const moved = dbToRatio(budget.receivedDbm - wantedDbm);
    return hopping.reduce(
      (sum, hops, h) => sum + hopCouplingMw[h]! * moved * hopShareRatio(overlap, own.system, hops, centreMhz),
      toMw(budget.interferenceDbm),
    );
  });
  return { systemIndex, alone, wantedDbm, outsideMw, couplingMw: fixed.map(into), hopCouplingMw };
}
