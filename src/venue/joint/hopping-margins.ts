import { dbToRatio, toMw } from "../../units/index.js";
import type { VenueSite } from "../venue-site.js";
import { byWeakness, jointReceiver } from "./joint-margins.js";
import type { JointReceiver } from "./joint-margins.js";
import type { JointAlone, JointSystem } from "./joint-system.js";
import { systemIntoReceiverDbm } from "./system-into-receiver.js";
import { hopShareRatio } from "./system-overlap.js";
import type { SystemOverlap } from "./system-overlap.js";

/** The other systems of a plan. */
export interface PlannedOthers {
  readonly fixed: readonly { readonly system: JointSystem; readonly centreMhz: number }[];
  readonly hopping: readonly JointSystem[];
}

/**
 * The receivers of a hopping system, alone or beside the others of a plan: each at its hop frequency of (lower)
 * median working margin.
 * @returns the weakest first; equal ones by name
 */
export function hoppingMargins(
  site: VenueSite,
  own: JointSystem,
  { fixed, hopping }: PlannedOthers,
  overlap: SystemOverlap,
): JointReceiver[] {
  const othersAt = (alone: JointAlone): ((centreMhz: number) => number) => {
    const middleMhz = own.channels[Math.floor((own.channels.length - 1) / 2)]!.centreMhz;
    const intoMw = (other: JointSystem): number =>
      toMw(systemIntoReceiverDbm(site, other, own.system, alone.receiver, middleMhz));
    const parts = [
      ...fixed.map(({ system, centreMhz }) => ({
        powerMw: intoMw(system),
        share: (tunedMhz: number) => overlap(own.system, system.system, tunedMhz - centreMhz),
      })),
      ...hopping
        .filter((other) => other !== own)
        .map((other) => ({
          powerMw: intoMw(other),
          share: (tunedMhz: number) => hopShareRatio(overlap, own.system, other, tunedMhz),
        })),
    ];
    return (tunedMhz) => parts.reduce((sum, { powerMw, share }) => sum + powerMw * share(tunedMhz), 0);
  };
  return own.receivers.map((alone) => middleOf(alone, othersAt(alone))).sort(byWeakness);
}

function middleOf({ receiver, channels }: JointAlone, othersMw: (tunedMhz: number) => number): JointReceiver {
  const middle = channels[Math.floor((channels.length - 1) / 2)]!;
  const rising = channels
    .map(({ budget, centreMhz }) => {
      const moved = dbToRatio(budget.receivedDbm - middle.budget.receivedDbm);
      const totalMw = toMw(budget.interferenceDbm) + othersMw(centreMhz) * moved;
      return jointReceiver(receiver, budget, totalMw);
    })
    .sort((a, b) => a.workingMarginDb - b.workingMarginDb);
  return rising[Math.floor((rising.length - 1) / 2)]!;
}
