import { wallLoss } from "../propagation/index.js";
import type { WallPlanningLoss } from "../propagation/index.js";
import type { WallBuild } from "./venue-room.js";

/** The loss of a kind of build (by its index) at an incidence, given as the cosine from the wall's normal. */
export type BuildLosses = (buildIndex: number, cosineRatio: number) => WallPlanningLoss;

/**
 * Planning losses of some builds, each worked out once for each incidence: exact, nothing is rounded.
 * @throws {ArgumentError} as `wallLoss`; the function returned, for a cosine not above 0 (a path along the wall)
 * @source ITU-R P.2040 slabs, mean over 2400–2483.5 MHz (see `slabPlanningLoss`)
 * @example buildLosses([{ lossDb: 3 }])(0, 0.5).lossDb; // => 3
 */
export function buildLosses(builds: readonly WallBuild[]): BuildLosses {
  const known = builds.map(() => new Map<number, WallPlanningLoss>());
  return (buildIndex, cosineRatio) => {
    const losses = known[buildIndex]!;
    const found = losses.get(cosineRatio);
    if (found !== undefined) return found;
    const incidenceDeg = (Math.acos(Math.min(1, cosineRatio)) * 180) / Math.PI;
    const loss = wallLoss([{ ...builds[buildIndex]!, incidenceDeg }]).crossings[0]!;
    losses.set(cosineRatio, loss);
    return loss;
  };
}
