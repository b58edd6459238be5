import { ratioToDb, SLACK } from "../../units/index.js";
import { loadsOf } from "../channels/assignment-loads.js";
import type { AssignmentLoads } from "../channels/assignment-loads.js";
import { compareLoads, descending } from "../channels/load-levels.js";
import type { JointSystem } from "./joint-system.js";

/** A fallback may be this much worse than the plan, dB, before distance from the same trouble stops counting. */
const WITHIN_DB = 6;
/** Far enough that no one 20 MHz transmitter sits on both, MHz. */
const APART_MHZ = 25;

/** Where a system goes if its channel is spoilt; the others stay. */
export interface FallbackChannel {
  readonly channel: number | null;
  readonly reason: string | null;
  /** The system's own working margin there, dB. */
  readonly workingMarginDb: number | null;
}

/**
 * The next best channel of each system with the others held, by the values of the whole plan: among those within
 * 6 dB of its own in the plan the best that is 25 MHz away or more; else the best.
 * @param assignment [system] channel of the plan
 * @returns [system]
 */
export function fallbackChannels(
  systems: readonly JointSystem[],
  loads: AssignmentLoads,
  assignment: readonly number[],
): FallbackChannel[] {
  const planned = loadsOf(loads, assignment);
  return systems.map(({ channels }, r) => {
    const others = channels
      .map((one, c) => {
        const moved = loadsOf(
          loads,
          assignment.map((channel, o) => (o === r ? c : channel)),
        );
        return { ...one, c, ratios: descending(moved), ownDb: -ratioToDb(moved[r]!) };
      })
      .filter(({ c }) => c !== assignment[r])
      .sort((a, b) => compareLoads(a.ratios, b.ratios) || a.channel - b.channel);
    const best = others[0];
    if (best === undefined)
      return { channel: null, reason: "it has no other channel to choose", workingMarginDb: null };
    const plannedMhz = channels[assignment[r]!]!.centreMhz;
    const leastDb = -ratioToDb(planned[r]!) - WITHIN_DB - SLACK;
    const far = others.find(
      ({ ownDb, centreMhz }) => ownDb >= leastDb && Math.abs(centreMhz - plannedMhz) >= APART_MHZ - SLACK,
    );
    const chosen = far ?? best;
    return { channel: chosen.channel, reason: null, workingMarginDb: chosen.ownDb };
  });
}
